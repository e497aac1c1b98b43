package search

import (
	"slices"

	"coursewright/layout/setout/count"
)

// nearby is the best of a trial and of what comes of its starts on the lines next to its own,
// where one wall after the other is looked at, as far as the work for that goes.
func (t *trial) nearby(s *solver) *trial {
	best, lines := t, s.lines()
	at := slices.Index(lines, t.line)
	for _, by := range [...]int{-1, 1, -2, 2} {
		n := at + by
		if s.ended || at < 0 || n < 0 || n >= len(lines) {
			continue
		}
		var walls []count.Counted
		s.limit = s.work() + s.fresh/4
		for i, w := range s.walls {
			walls = append(walls, *s.place(w, lines[n], t.walls[i].Edge, nil, nil, fewTries))
		}
		if next := s.wallByWall(trialOf(s, lines[n], walls), s.fresh/2).placedAnew(s); s.order.Better(&next.merit, &best.merit) {
			best = next
		}
	}
	return best
}
