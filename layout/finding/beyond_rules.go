package finding

import (
	"fmt"
	"strings"

	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// atTheEdge judges niches and windows that were placed where no tile is left on some side of them.
func atTheEdge(in Input) []place {
	return in.opened(false, "", survey.Niche, survey.Window)
}

// measuredAtTheEdge judges niches that were measured where no tile is left on some side of them: that was meant so, and
// asks for an edge of its own. A window is as often as not higher than the tile, and has its casing.
func measuredAtTheEdge(in Input) []place {
	return in.opened(true, ", which was measured there", survey.Niche)
}

// opened names the openings of some kinds that have no tile on some sides, of those across and up that were measured, or
// of those that were not.
func (in Input) opened(measured bool, how string, kinds ...survey.Kind) []place {
	var all []place
	for _, kind := range kinds {
		for _, o := range in.openings(kind) {
			if open := openSides(in.Walls[o.wall], o, measured); len(open) > 0 {
				all = append(all, onPoint(o.wall, o.middle(), fmt.Sprintf("No tile is left %s %s%s.", strings.Join(open, " and "), o.found.Called(), how)).of(o.found))
			}
		}
	}
	return all
}

// openSides are the sides, measured or not, on which no piece of the wall goes on past an opening.
func openSides(w plan.Wall, o opening, measured bool) (out []string) {
	e, found := o.edges, o.found
	beyond := func(past func(plane.Rect) bool) bool {
		for _, p := range w.All() {
			if past(p.Face.Bounds()) {
				return true
			}
		}
		return false
	}
	over := func(b plane.Rect) bool { return b.Left < e.Right && b.Right > e.Left }
	beside := func(b plane.Rect) bool { return b.Bottom < e.Top && b.Top > e.Bottom }
	if free := found.Left.Free() || found.Width.Free(); free != measured {
		if !beyond(func(b plane.Rect) bool { return beside(b) && b.Left < e.Left }) {
			out = append(out, "to the left of")
		}
		if !beyond(func(b plane.Rect) bool { return beside(b) && b.Right > e.Right }) {
			out = append(out, "to the right of")
		}
	}
	if free := found.Bottom.Free() || found.Height.Free(); free != measured {
		if !beyond(func(b plane.Rect) bool { return over(b) && b.Bottom < e.Bottom }) {
			out = append(out, "under")
		}
		if !beyond(func(b plane.Rect) bool { return over(b) && b.Top > e.Top }) {
			out = append(out, "over")
		}
	}
	return out
}
