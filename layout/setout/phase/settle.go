package phase

import "container/heap"

// When the search settles, so many lines are finished, on each of which so many glances are taken at every
// wall.
const (
	finished = 6
	glances  = 128
)

// settle gives the best that is known when the work is spent, after it has looked
// to their end at lines that promise most and, in turn with them, at lines that kept what they
// promised longest: those at whose walls most was looked. Then it looks further.
func (s *solver) settle(q *queue[*trial], best *trial, found *setOut) Result {
	bound := q.first().bound
	if found != nil {
		best = found.taken()
	}
	var tried []*trial
	if best != nil {
		tried = append(tried, best)
	}
	for n := 0; n < finished && !q.empty() && !(s.ended && best != nil); n++ {
		t := q.take()
		if n%2 == 1 {
			q.add(t)
			t = mostLooked(q)
		}
		if t.marks > 1 {
			t = s.trial(t.line, 1)
		}
		s.finish(t, glances)
		if tried = append(tried, t); best == nil || s.order.Better(&t.bound, &best.bound) {
			best = t
		}
	}
	return s.result(s.further(tried, best), &bound)
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
