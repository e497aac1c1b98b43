package search

import (
	"slices"

	"coursewright/layout/length"
)

// climb betters the best of some trials by a step, and the best that stands on a line far from its own or with another
// hand of the bond, which takes other starts there first, or its line would only slip back to where the best stands; then
// the better of the two step by step as far as the work given for that goes.
func climb(from []*trial, effort int) *trial {
	s := from[0].solver
	slices.SortStableFunc(from, func(a, b *trial) int {
		order, _ := s.order.Compare(&a.merit, &b.merit)
		return order
	})
	until := s.work() + effort
	defer func(end int) { s.end = end }(s.end)
	s.end = min(s.end, until)
	first, far := from[0], (s.room.Tile.Height+s.room.Joint)/32
	best, before := first.step(), first
	apart := func(t *trial) bool {
		return t.solver != first.solver || max(t.line-first.line, first.line-t.line) > far
	}
	if k := slices.IndexFunc(from, apart); k > 0 {
		if t := from[k].restarted(3 * s.fresh).step(); s.order.Better(&t.merit, &best.merit) {
			best, before = t, nil
		}
	}
	for best != before && !s.ended && s.work() < until {
		best, before = best.step(), best
	}
	return best
}

// step is the best of a trial and of what comes of slipping its line under its starts, of other starts on its
// line, and of all places of their marks.
func (t *trial) step() *trial {
	s := t.solver
	turns, walls := turnsOf(s.room, s.hand), t.walls
	for _, some := range [...][]length.Length{turns[:1], turns[1:]} { // within the pitch, and beyond it
		t = (&slipper{s, walls, some}).best(t)
	}
	return t.restarted(3 * s.fresh).placedAnew()
}
