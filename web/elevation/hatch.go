package elevation

import (
	"fmt"

	"coursewright/web/drawing"
)

// hatch is a ground and the lines over it; each used one becomes a pattern.
type hatch struct {
	fill  drawing.Colour
	hatch drawing.Hatch
}

func (p *pen) hatchID(fill drawing.Colour, h drawing.Hatch) string {
	if fill == drawing.None {
		return fmt.Sprintf("%s-h%d", p.id, h)
	}
	return fmt.Sprintf("%s-h%d-%06x", p.id, h, int32(fill))
}

// hatches writes the patterns of the scene, in the order of first use. Where
// the drawing is taken apart by walls, they are always the same ones, so that a
// wall that changes finds its own.
func (p *pen) hatches(s drawing.Scene) {
	seen := map[hatch]bool{}
	p.canvas.Def()
	use := func(h hatch) {
		if h.hatch != drawing.Plain && !seen[h] {
			seen[h] = true
			p.pattern(h)
		}
	}
	if len(s.Parts) > 0 {
		for _, k := range []drawing.Kind{drawing.CutThird, drawing.CutFifth, drawing.CutLeast} {
			ink := drawing.CutInk(k)
			use(hatch{ink.Fill, ink.Hatch})
		}
		use(hatch{drawing.None, drawing.Earth})
	}
	for _, e := range s.Elements {
		if path, ok := e.(drawing.Path); ok {
			use(hatch{path.Fill, path.Hatch})
		}
	}
	p.canvas.DefEnd()
}

func (p *pen) pattern(h hatch) {
	step, both := h.hatch.Step()
	turn := "rotate(45)"
	if h.hatch == drawing.Earth {
		turn = "rotate(-45)"
	}
	n := int(step)
	p.canvas.Pattern(p.hatchID(h.fill, h.hatch), 0, 0, n, n, "user", attr("patternTransform", turn))
	if h.fill != drawing.None {
		p.canvas.Rect(0, 0, n, n, `class="ground"`, attr("fill", colour(h.fill)))
	}
	d := fmt.Sprintf("M0 %dh%d", n/2, n)
	if both {
		d += fmt.Sprintf("M%d 0v%d", n/2, n)
	}
	p.canvas.Path(d, `class="hatch" fill="none"`, attr("stroke", colour(drawing.HatchColour(h.fill))),
		number("stroke-width", drawing.HatchWidth))
	p.canvas.PatternEnd()
}
