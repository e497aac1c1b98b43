package phase

import (
	"slices"
)

// looked is how many options of an axis are counted in the end, where it is not proven that
// none is better.
const looked = 6

// placeAnew moves the marks of a wall to where they serve best, unless rim and head of the room are to be alike and are less so then.
func (s *solver) placeAnew(walls []Counted, i int) {
	was, old := s.whole(walls), walls[i]
	walls[i] = s.placeMarks(s.walls[i], old)
	if is := s.whole(walls); s.shared() && s.order.Better(&was, &is) {
		walls[i] = old
	}
}

// placeMarks moves the marks of one axis of a wall after another to where they serve the
// phase best, until none is better or each was moved twice. What stands afterwards is no
// worse than what stood before.
func (s *solver) placeMarks(w *Wall, c Counted) Counted {
	for range 2 {
		better := false
		for _, a := range w.axes {
			options := w.options(a, w.Pattern.Origin(c.Line, c.Edge), finely)
			slices.SortStableFunc(options, func(a, b option) int { return a.compare(w.order, &b) })
			for i := range options[:min(looked, len(options))] {
				if s.ended = s.ended || s.ctx.Err() != nil; s.ended {
					return c
				}
				p := c.Placed
				p.Openings = slices.Clone(p.Openings)
				if a.set(&p, &options[i]); !apart(p.Openings) {
					continue
				}
				if n := w.Count(Setting{c.Line, c.Edge, p}); s.order.Better(&n.Merit, &c.Merit) {
					c, better = n, true
				}
			}
		}
		if !better {
			break
		}
	}
	return c
}
