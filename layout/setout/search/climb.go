package search

import (
	"slices"

	"coursewright/layout/length"
)

// climb betters the best of some trials by a step, and the best that stands on a line far from its own, which takes other
// starts there first, or its line would only slip back to where the best stands; then the better of the two step by step
// as far as the work given for that goes.
func climb(s *solver, from []*trial, effort int) *trial {
	slices.SortStableFunc(from, func(a, b *trial) int {
		order, _ := s.order.Compare(&a.merit, &b.merit)
		return order
	})
	until := s.work() + effort
	best, before := from[0].step(s), from[0]
	far := (s.room.Tile.Height + s.room.Joint) / 32
	if k := slices.IndexFunc(from, func(t *trial) bool { return max(t.line-from[0].line, from[0].line-t.line) > far }); k > 0 {
		if t := from[k].restarted(s, 3*s.fresh).step(s); s.order.Better(&t.merit, &best.merit) {
			best, before = t, nil
		}
	}
	for best != before && !s.ended && s.work() < until {
		best, before = best.step(s), best
	}
	return best
}

// step is the best of a trial and of what comes of slipping its line under its starts, of other starts on its
// line, and of all places of their marks.
func (t *trial) step(s *solver) *trial {
	turns, walls := turnsOf(s.room, s.hand), t.walls
	for _, some := range [...][]length.Length{turns[:1], turns[1:]} { // within the pitch, and beyond it
		t = (&slipper{s, walls, some}).best(t)
	}
	return t.restarted(s, 3*s.fresh).placedAnew(s)
}
