package finding

import (
	"fmt"
	"strings"

	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// atTheEdge judges niches and windows that were placed where no tile is left on some side of them. One
// that was measured there was meant so.
func atTheEdge(in Input) []place {
	var all []place
	for _, kind := range []survey.Kind{survey.Niche, survey.Window} {
		for _, o := range in.openings(kind) {
			if open := openSides(in.Walls[o.wall], o); len(open) > 0 {
				all = append(all, onPoint(o.wall, o.middle(), fmt.Sprintf("No tile is left %s %s.", strings.Join(open, " and "), o.found.Called())).of(o.found))
			}
		}
	}
	return all
}

// openSides are the free sides on which no piece of the wall goes on past an opening.
func openSides(w plan.Wall, o opening) (out []string) {
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
	if across := found.Left.Free() || found.Width.Free(); across {
		if !beyond(func(b plane.Rect) bool { return beside(b) && b.Left < e.Left }) {
			out = append(out, "to the left of")
		}
		if !beyond(func(b plane.Rect) bool { return beside(b) && b.Right > e.Right }) {
			out = append(out, "to the right of")
		}
	}
	if up := found.Bottom.Free() || found.Height.Free(); up {
		if !beyond(func(b plane.Rect) bool { return over(b) && b.Bottom < e.Bottom }) {
			out = append(out, "under")
		}
		if !beyond(func(b plane.Rect) bool { return over(b) && b.Top > e.Top }) {
			out = append(out, "over")
		}
	}
	return out
}
