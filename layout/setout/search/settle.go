package search

import (
	"slices"

	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
)

// settle gives the best that is known when the work for the search is spent, after a fresh look at the lines that promise most
// and the classic ones with their best starts and the classic starts, and at starts far apart on lines far apart;
// after bettering the best of these step by step; and after a look at every start on the line of what is best then,
// and at the lines next to it. The search may go on from there with as much work again: all that was passed over is
// before it still.
func (s *solver) settle(q queue[*trial], best *trial) *trial {
	defer func(limit int, missed, known *merit.Merit) {
		s.limit, s.missed, s.known, s.spread = 2*limit, missed, known, false
	}(s.limit, s.missed, s.known)
	s.spread = true
	q.items = slices.Clone(q.items)
	better := func(t *trial) {
		if best == nil || s.order.Better(&t.merit, &best.merit) {
			best = t
		}
	}
	until := s.work() + s.share/8
	for _, line := range s.promising(&q, best) {
		if s.ended || best != nil && s.work() > until {
			break
		}
		better(s.look(line, glance{s.fresh, promise, fewTries, based}))
	}
	if best == nil {
		return nil
	}
	far := &scout{s, s.work() + s.share/8}
	best = climb(s, append([]*trial{best}, far.lines()...), s.share)
	best = s.wallByWall(best, 2*s.fresh).placedAnew(s)
	if t := s.through(best); t != nil {
		better(t)
	}
	return best.slid(s).nearby(s).slid(s)
}

// early looks at the lines that promise most and at the classic ones, to hold all others
// to what they give.
func (s *solver) early(q *queue[*trial]) *trial {
	limit, until := s.limit, s.work()+s.share/8
	defer func() { s.limit = limit }()
	var best *trial
	for _, line := range s.promising(&queue[*trial]{slices.Clone(q.items), q.before}, nil) {
		if best != nil && s.work() > until {
			break
		}
		if t := s.look(line, glance{s.fresh / 4, fewStarts, fewTries, refined}); best == nil || s.order.Better(&t.merit, &best.merit) {
			best = t
		}
	}
	return best
}

// through looks at every start on the line of the best, as far as the work for that
// goes, and gives what is better; nil where nothing is.
func (s *solver) through(best *trial) *trial {
	s.limit, s.known = s.work()+4*s.fresh, &best.merit
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
func (s *solver) result(t *trial, bound merit.Merit) *Result {
	if t == nil {
		return nil // the context has ended before anything was known
	}
	if s.missed != nil && s.order.Better(s.missed, &bound) {
		bound = *s.missed
	}
	proven := !s.order.Better(&bound, &t.merit) && !headsTogether(s)
	r := &Result{Line: t.line, Hand: s.hand, Walls: s.slackened(t), Merit: t.merit, Proven: proven, Bound: bound, solver: s}
	r.tryClassics()
	return r
}

// headsTogether tells whether heads that are free would have to be placed together: the first and the last course of
// several walls are to be alike. Each is placed for its wall alone.
func headsTogether(s *solver) bool {
	free := func(w *count.Wall) bool { return !w.Found.Head.Meets && w.Found.Head.Stops.Free() }
	return s.order.Shared() == merit.Rim && len(s.walls) > 1 && slices.ContainsFunc(s.walls, free)
}
