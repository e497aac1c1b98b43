package elevation

import (
	"fmt"
	"strconv"
	"strings"

	"coursewright/web/drawing"
)

// Tiles writes whole tiles as one path: a line as broad as a tile is high,
// broken where the joints are, one stretch to each run. data-runs names, in the
// order of the stretches, the first tile of each and how many follow beside it;
// the dashes are the tile's length and the joint.
func (p *pen) Tiles(e drawing.Tiles) {
	p.among(e.Tag)
	p.end()
	long, broad := e.Wide, e.High
	if e.Up {
		long, broad = broad, long
	}
	var d, runs strings.Builder
	count := 0
	for i, r := range e.Runs {
		reach := e.Reach(r)
		if e.Up {
			fmt.Fprintf(&d, "M%s %sv%s", places(r.X), places(r.Y), places(-reach))
		} else {
			fmt.Fprintf(&d, "M%s %sh%s", places(r.X), places(r.Y), places(reach))
		}
		if i > 0 {
			runs.WriteByte(' ')
		}
		fmt.Fprintf(&runs, "%s:%d", r.First, r.Count)
		count += r.Count
	}
	a := tags(e.Tag) + fmt.Sprintf(` fill="none" stroke="%s" stroke-width="%s" stroke-dasharray="%s %s"`,
		colour(e.Fill), places(broad), places(long), places(e.Gap))
	if p.pieces != nil {
		a += " " + attr("data-runs", runs.String()) + " " + attr("data-course", p.pieces.Course) + ` role="option" ` + attr("aria-label", strconv.Itoa(count)+" whole tiles")
	}
	p.canvas.Path(d.String(), a)
}

// places writes micrometres to a tenth, so that a long run ends where it should.
func places(x float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(x, 'f', 1, 64), ".0")
}
