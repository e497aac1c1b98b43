package search

// placedAnew is a trial with the free marks of one wall after the other at the best of all their
// placings, the others as they are, as far as the work for that goes.
func (t *trial) placedAnew() *trial {
	s := t.solver
	for i, w := range s.walls {
		s.allow(s.fresh / len(s.walls))
		if got := s.place(w, t.line, t.walls[i].Edge, nil, t.beside(i), tries); got != nil {
			t = t.with(i, got)
		}
	}
	return t
}
