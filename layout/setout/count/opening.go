package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// boxOf is what an opening takes from the wall, a pipe with its clearance.
func (w *facts) boxOf(i int, o survey.OpeningFound, p survey.Placed) plane.Rect {
	if o.Kind == survey.Pipe {
		r := (o.Diameter + 2*survey.PipeClear(w.room.Units) + 1) / 2
		return plane.Rect{Left: o.At - r, Right: o.At + r, Bottom: o.Up - r, Top: o.Up + r}
	}
	e := p.Openings[i]
	return plane.Rect{Left: e.Left, Right: e.Right, Bottom: e.Bottom, Top: e.Top}
}

// hull is where a free opening may come to stand, in the frame of the rows.
func (w *facts) hull(i int) plane.Rect {
	o := w.found.Openings[i]
	r := plane.Rect{Left: o.Left.From, Right: o.Left.To + o.Width.To, Bottom: o.Bottom.From, Top: o.Bottom.To + o.Height.To}
	return w.frame.rect(r)
}

// without is the setting without its free openings.
func (w *facts) without(p survey.Placed) survey.Placed {
	if len(w.free) == 0 {
		return p
	}
	openings := make([]survey.Edges, len(p.Openings))
	copy(openings, p.Openings)
	for _, i := range w.free {
		openings[i] = Away
	}
	p.Openings = openings
	return p
}

// touched tells whether a free opening may come to stand between two heights of
// the frame of the rows.
func (w *facts) touched(low, high length.Length) bool {
	for _, i := range w.free {
		if h := w.hull(i); h.Bottom < high && h.Top > low {
			return true
		}
	}
	return false
}

// freeIn tells whether a free opening may come to stand in a part of the wall, in the
// frame of the rows.
func (w *facts) freeIn(r plane.Rect) bool {
	return slices.ContainsFunc(w.free, func(i int) bool { return w.hull(i).Overlaps(r) })
}

// Away is where an opening stands that takes nothing from a wall.
var Away = survey.Edges{Left: -100 * length.Metre, Right: -99 * length.Metre, Bottom: -100 * length.Metre, Top: -99 * length.Metre}
