package phase

import (
	"container/heap"

	"coursewright/layout/merit"
)

// When the search settles, so many lines are finished, on each of which so many
// glances are taken at every wall, and so many of the starts seen are counted.
const (
	finished = 6
	glances  = 128
	counted  = 5
)

// settle gives the best that is known when the work is spent, after it has looked
// to their end at lines that promise most and, in turn with them, at lines that kept what they
// promised longest: those at whose walls most was looked.
func (s *solver) settle(q *queue[*trial], best *trial) Result {
	bound := q.first().bound
	for n := 0; n < finished && !q.empty() && !(s.ended && best != nil); n++ {
		t := q.take()
		if n%2 == 1 {
			q.add(t)
			t = mostLooked(q)
		}
		if t.marks > 1 {
			t = s.trial(t.line, 1)
		}
		s.finish(t)
		if best == nil || s.order.Better(&t.bound, &best.bound) {
			best = t
		}
	}
	return s.result(best, &bound)
}

// finish looks at the most promising starts of every wall of a line, and takes the best
// that was counted. Of those whose corners alone were cut it counts the most promising.
func (s *solver) finish(t *trial) {
	t.bound = merit.Merit{}
	for _, h := range t.hunts {
		for steps := 0; h.best == nil && steps < glances; steps++ {
			s.look(h)
		}
		for n := 0; h.best == nil && n < counted; n++ {
			if x := s.nearest(h, n == 0); x != nil {
				c := h.wall.Count(*x.at)
				x.exact, x.merit = &c, c.Merit
			}
		}
		if h.best == nil {
			for _, x := range h.queue.items {
				if x.exact != nil && (h.best == nil || s.order.Better(&x.merit, &h.best.Merit)) {
					h.best = x.exact
				}
			}
		}
		t.bound = t.bound.Plus(&h.best.Merit)
	}
}

// nearest is the most promising start that is not counted, of those looked at most
// closely: those with their corners cut. Where there is none it is the first, if any is needed.
func (s *solver) nearest(h *hunt, needed bool) (best *stretch) {
	for _, x := range h.queue.items {
		if x.close && x.exact == nil && (best == nil || s.order.Better(&x.merit, &best.merit)) {
			best = x
		}
	}
	if best == nil && needed {
		best = s.placedFirst(h)
	}
	return best
}

// placedFirst is the most promising start with its marks placed, where they may stand.
func (s *solver) placedFirst(h *hunt) *stretch {
	x := *h.queue.first()
	if x.choice == nil && len(h.wall.axes) > 0 {
		x.choice = h.wall.choose(&x, h)
	}
	if x.choice != nil {
		x.choice.ready()
	}
	if x.choice != nil && x.pick == nil {
		x.pick = make([]int, len(h.wall.axes))
	}
	x.at, x.close = &Setting{Line: h.line, Edge: x.edge, Placed: h.wall.outer}, true
	if x.choice != nil {
		if p, ok := x.choice.placed(x.pick); ok {
			x.at.Placed = p
		}
	}
	h.queue.items = append(h.queue.items, &x)
	return &x
}

// mostLooked takes the line at whose walls the most was looked.
func mostLooked(q *queue[*trial]) *trial {
	most, which := -1, 0
	for i, t := range q.items {
		looks := 0
		for _, h := range t.hunts {
			looks += h.looks
		}
		if looks > most {
			most, which = looks, i
		}
	}
	return heap.Remove(q, which).(*trial)
}
