package search

import (
	"math"
	"slices"

	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
)

// settle gives the best that is known when half the work for the search is spent, after a fresh look with each hand of the bond;
// after bettering the best of what that gives step by step; and after a look at every start on the line of what is
// best then, and at the lines next to it. The search goes on from there with what is left of twice the work: all that was passed
// over is before it still, and most of it cannot be as good.
func (t *task) settle(q *queue[*trial], best *trial) *trial {
	defer func(missed, known *merit.Merit) {
		t.limit, t.missed, t.known, t.spread, t.end = 2*t.most, missed, known, false, math.MaxInt
	}(t.missed, t.known)
	t.spread, t.end = true, 2*t.most
	var from []*trial
	if best != nil {
		from = append(from, best)
	}
	for _, s := range t.hands {
		if own := s.own(q); best == nil || !own.empty() && !t.order.Better(&best.merit, &own.first().merit) {
			from = append(from, s.lookAfresh(own, best)...)
		}
	}
	q.sort()
	if len(from) == 0 {
		return nil
	}
	best = climb(from, t.share)
	s := best.solver
	best = s.wallByWall(best, 2*s.fresh).placedAnew()
	if through := s.through(best); through != nil && t.order.Better(&through.merit, &best.merit) {
		best = through
	}
	return best.slid().nearby().slid()
}

// own are the trials with its hand of the bond. Whoever looks at them more closely puts the queue of all in order again.
func (s *solver) own(q *queue[*trial]) queue[*trial] {
	others := func(t *trial) bool { return t.solver != s }
	own := queue[*trial]{slices.DeleteFunc(slices.Clone(q.items), others), q.before}
	own.sort()
	return own
}

// lookAfresh gives the best of the lines that promise most and the classic ones with their best starts and the
// classic starts, and what comes of starts far apart on lines far apart.
func (s *solver) lookAfresh(q queue[*trial], best *trial) []*trial {
	if best != nil && best.solver != s {
		best = nil
	}
	until := s.work() + s.share/8
	for _, line := range s.promising(&q, best, until) {
		if s.ended || best != nil && s.work() > until {
			break
		}
		if t := s.look(line, glance{s.fresh, promise, fewTries, based}); best == nil || s.order.Better(&t.merit, &best.merit) {
			best = t
		}
	}
	if best == nil {
		return nil
	}
	far := &scout{s, s.work() + s.share/8}
	return append([]*trial{best}, far.lines()...)
}

// early looks at the lines that promise most with either hand and at the classic ones, to hold all others
// to what they give.
func (t *task) early(q *queue[*trial]) *trial {
	defer func(limit int) { t.limit = limit; q.sort() }(t.limit)
	var best *trial
	for _, s := range t.hands {
		own, until := s.own(q), t.work()+t.share/8
		for _, line := range s.promising(&own, nil, until) {
			if best != nil && t.work() > until {
				break
			}
			if got := s.look(line, glance{t.fresh / 4, fewStarts, fewTries, refined}); best == nil || t.order.Better(&got.merit, &best.merit) {
				best = got
			}
		}
	}
	return best
}

// through looks at every start on the line of the best, as far as the work for that
// goes, and gives what is better; nil where nothing is.
func (s *solver) through(best *trial) *trial {
	s.known = &best.merit
	s.allow(4 * s.fresh)
	t := s.trial(best.line)
	for _, w := range s.walls {
		t.hunts = append(t.hunts, s.hunt(w, t.line))
	}
	for t.depth < exact && !t.dead && !s.stopped() {
		s.closer(t)
	}
	for _, h := range t.hunts {
		if len(h.ties) == 0 {
			return nil
		}
	}
	if t.dead {
		return nil
	}
	if t.depth < exact {
		t.walls, t.merit = s.together(t.hunts)
		t.depth = exact
	}
	return t
}

// result is a trial with what nothing can beat that is left: it is proven where that
// is no better, nor anything that was passed over.
func (t *task) result(best *trial, bound merit.Merit) *Result {
	if best == nil {
		return nil // the context has ended before anything was known
	}
	if t.missed != nil && t.order.Better(t.missed, &bound) {
		bound = *t.missed
	}
	s := best.solver
	proven := !t.order.Better(&bound, &best.merit) && !headsTogether(s)
	r := &Result{Line: best.line, Hand: s.hand, Walls: s.slackened(best), Merit: best.merit, Proven: proven, Bound: bound, solver: s}
	r.tryClassics()
	return r
}

// headsTogether tells whether heads that are free would have to be placed together: the first and the last course of
// several walls are to be alike. Each is placed for its wall alone.
func headsTogether(s *solver) bool {
	free := func(w *count.Wall) bool { return !w.Found.Head.Meets && w.Found.Head.Stops.Free() }
	return s.order.Shared() == merit.Rim && len(s.walls) > 1 && slices.ContainsFunc(s.walls, free)
}
