package phase

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
)

// When nothing is proven, so many lines spread evenly are looked at, at every wall so often; then the best lines
// of all are looked at more closely, for as much work as the search had, each for a part of what is left; at the end the best
// of all for a part of it more.
const (
	spread = 16
	brief  = 32
	part   = 3 // a third
)

// further betters what was found where the work was spent: lines that promise little at first sight may be good, and of
// the best lines not every start was looked at. Where that is soon done, it goes on with more lines between.
func (s *solver) further(tried []*trial, best *trial) *trial {
	best = s.moreLines(tried, best, s.work()+s.limit)
	s.deepen(best, best.bound, s.work()+s.limit/part)
	return best
}

// moreLines is the best of some lines and of ever more between them, until the work is done.
func (s *solver) moreLines(tried []*trial, best *trial, end int) *trial {
	_, marks := s.lines()
	for lines := min(spread, marks); ; lines = min(2*lines, marks) {
		fresh := s.spread(lines, tried, best)
		if tried = append(tried, fresh...); lines > spread {
			best = s.deepenBest(fresh, best, end)
		} else {
			best = s.deepenBest(slices.Clone(tried), best, end)
		}
		if lines == marks || s.work() >= end || s.over() {
			return best
		}
	}
}

// spread looks briefly at so many lines spread evenly, but for those that were tried and those that cannot be better than
// the best.
func (s *solver) spread(lines length.Length, tried []*trial, best *trial) (out []*trial) {
	line, marks := s.lines()
	for n := range lines {
		at := line + marks*n/lines*s.room.Tape
		if s.over() {
			break
		}
		if !slices.ContainsFunc(tried, func(t *trial) bool { return t.line == at }) {
			if t := s.trial(at, 1); s.order.Better(&t.bound, &best.bound) {
				s.finish(t, brief)
				out = append(out, t)
			}
		}
	}
	return out
}

// deepenBest looks more closely at some lines, the best first, until the work is done.
func (s *solver) deepenBest(lines []*trial, best *trial, end int) *trial {
	slices.SortStableFunc(lines, func(a, b *trial) int { c, _ := s.order.Compare(&a.bound, &b.bound); return c })
	for _, t := range lines {
		if s.order.Better(&t.bound, &best.bound) {
			best = t
		}
	}
	for _, t := range lines {
		if s.work() >= end || s.over() {
			break
		}
		s.deepen(t, best.bound, s.work()+(end-s.work())/part)
		if s.order.Better(&t.bound, &best.bound) {
			best = t
		}
	}
	return best
}

// deepen looks on at the walls of a line, each for its share of the work, as long as the line may be better than the best.
func (s *solver) deepen(t *trial, best merit.Merit, end int) {
	have := make([]*Counted, len(t.hunts))
	for i, h := range t.hunts {
		have[i], h.best = h.best, nil
	}
	for i, h := range t.hunts {
		mine := s.work() + (end-s.work())/(len(t.hunts)-i)
		for h.best == nil && s.work() < mine && !s.over() {
			if t.sum(s); !s.order.Better(&t.bound, &best) {
				break
			}
			s.look(h)
		}
	}
	for i, h := range t.hunts {
		s.bestCounted(h)
		if s.order.Better(&have[i].Merit, &h.best.Merit) {
			h.best = have[i]
		}
	}
	s.total(t, have)
}

// over tells whether nobody waits any more.
func (s *solver) over() bool {
	s.ended = s.ended || s.ctx.Err() != nil
	return s.ended
}
