package search

import "slices"

// placedAnew is a trial with the free marks of one wall after the other at the best of all their
// placings, the others as they are, as far as the work for that goes.
func (t *trial) placedAnew(s *solver) *trial {
	for i, w := range s.walls {
		s.limit = s.work() + s.fresh/len(s.walls)
		got := s.place(w, t.line, t.walls[i].Edge, nil, t.beside(i), tries)
		if got == nil {
			continue
		}
		walls := slices.Clone(t.walls)
		walls[i] = *got
		if m := s.whole(walls); s.order.Better(&m, &t.merit) {
			t = trialOf(s, t.line, walls)
		}
	}
	return t
}
