package sheet

import "coursewright/web/drawing"

// hatch draws a path's hatch as lines clipped to it. Lines stand at fixed
// places of the page, so those of neighbours meet.
func (p *Pen) hatch(e drawing.Path) {
	step, both := e.Hatch.Step()
	lo, hi, ok := box(e.Rings)
	if !ok {
		return
	}
	p.pdf.RawWriteStr("q ")
	p.trace(e.Rings, false)
	p.pdf.DrawPath("W* n")
	p.line(drawing.Ink{Line: drawing.HatchColour(e.Fill), Width: drawing.HatchWidth})
	across := step * 1414 / 1000 // the step along the level, for lines at 45°
	if e.Hatch == drawing.Earth || both {
		for c := (lo.X + lo.Y) / across * across; c <= hi.X+hi.Y; c += across {
			p.stroke(drawing.Point{X: c - lo.Y, Y: lo.Y}, drawing.Point{X: c - hi.Y, Y: hi.Y})
		}
	}
	if e.Hatch != drawing.Earth {
		for c := (lo.X - hi.Y) / across * across; c <= hi.X-lo.Y; c += across {
			p.stroke(drawing.Point{X: c + lo.Y, Y: lo.Y}, drawing.Point{X: c + hi.Y, Y: hi.Y})
		}
	}
	p.pdf.RawWriteStr("Q\n")
}

func (p *Pen) stroke(a, b drawing.Point) {
	p.trace([][]drawing.Point{{a, b}}, true)
	p.pdf.DrawPath("D")
}

// box is the smallest upright box round the rings.
func box(rings [][]drawing.Point) (lo, hi drawing.Point, ok bool) {
	for _, ring := range rings {
		for _, q := range ring {
			if !ok {
				lo, hi, ok = q, q, true
			}
			lo = drawing.Point{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
			hi = drawing.Point{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
		}
	}
	return lo, hi, ok
}
