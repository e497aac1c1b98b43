package phase

import "slices"

// When nothing is proven, so many lines spread evenly are looked at, at every wall so often; then the best lines
// of all are looked at more closely, for so much of the work once more.
const (
	spread   = 16
	brief    = 32
	deepened = 3
	more     = 3 // a third
)

// further betters what was found where the work was spent: lines that promise little at first sight may be good, and of
// the best lines not every start was looked at.
func (s *solver) further(tried []*trial, best *trial) *trial {
	line, marks := s.lines()
	for n := range min(spread, marks) {
		at := line + marks*n/min(spread, marks)*s.room.Tape
		if s.over() {
			return best
		}
		if !slices.ContainsFunc(tried, func(t *trial) bool { return t.line == at }) {
			t := s.trial(at, 1)
			s.finish(t, brief)
			tried = append(tried, t)
		}
	}
	slices.SortStableFunc(tried, func(a, b *trial) int { c, _ := s.order.Compare(&a.bound, &b.bound); return c })
	tried = tried[:min(deepened, len(tried))]
	end := s.work() + s.limit/more
	for i, t := range tried {
		s.deepen(t, s.work()+(end-s.work())/(len(tried)-i))
		if s.order.Better(&t.bound, &best.bound) {
			best = t
		}
	}
	return best
}

// deepen looks on at the walls of a line, each for its share of the work.
func (s *solver) deepen(t *trial, end int) {
	for i, h := range t.hunts {
		have, mine := h.best, s.work()+(end-s.work())/(len(t.hunts)-i)
		for h.best = nil; h.best == nil && s.work() < mine && !s.over(); {
			s.look(h)
		}
		s.bestCounted(h)
		if s.order.Better(&have.Merit, &h.best.Merit) {
			h.best = have
		}
	}
	t.bound = t.hunts[0].best.Merit
	for _, h := range t.hunts[1:] {
		t.bound = t.bound.Plus(&h.best.Merit)
	}
}

// over tells whether nobody waits any more.
func (s *solver) over() bool {
	s.ended = s.ended || s.ctx.Err() != nil
	return s.ended
}
