package search

import (
	"slices"

	"coursewright/layout/length"
)

// promising lists the lines to look at afresh: the best so far, those first in the
// queue, and the classic ones. Those in the queue are looked at more closely as long as no more than until was counted.
func (s *solver) promising(q *queue[*trial], best *trial, until int) []length.Length {
	var out []length.Length
	add := func(y length.Length) {
		if !slices.Contains(out, y) {
			out = append(out, y)
		}
	}
	if best != nil {
		add(best.line)
	}
	for n := 0; n < 4 && !q.empty(); {
		if s.work() <= until && q.first().begin() {
			q.settle()
			continue
		}
		add(q.take().line)
		n++
	}
	if s.room.Line == nil {
		var classic []length.Length
		from, period := s.Lowest(), s.room.Tile.Height+s.room.Joint
		period *= s.periods()
		for _, c := range s.Lines() {
			classic = append(classic, from+length.Mod(c.Line-from, period))
		}
		for _, y := range s.within(classic) {
			add(y)
		}
	}
	return out[:min(len(out), 12)]
}

// glance is how closely a line is looked at.
type glance struct {
	effort int   // how much may be counted
	starts int   // that promise most, beside the classic ones
	tries  int   // placings of the free marks for each start
	depth  depth // how closely a start is looked at before it counts as promising
}

// look finds the best of a few starts on every wall of a line: the classic ones
// and those that promise most.
func (s *solver) look(line length.Length, g glance) *trial {
	t := &trial{solver: s, line: line, depth: exact}
	for _, w := range s.walls {
		h := s.hunt(w, line)
		s.allow(g.effort / len(s.walls))
		for _, edge := range h.few(g.starts, g.effort, g.depth) {
			if len(h.ties) > 0 && s.stopped() {
				break
			}
			if h.beaten(edge) {
				continue
			}
			if c := s.place(w, line, edge, h.limit(), nil, g.tries); c != nil {
				h.keep(*c)
			}
		}
		t.hunts = append(t.hunts, h)
	}
	t.walls, t.merit = s.together(t.hunts)
	return t
}

// beaten tells whether a start cannot be as good as the best so far: its rows say so before anything is cut.
func (h *hunt) beaten(edge length.Length) bool {
	limit := h.limit()
	if limit == nil {
		return false
	}
	m := h.wall.Bounds.Plainly(h.line, edge)
	order, _ := h.order.Until(&m, limit, h.order.Shared())
	return order > 0
}

// promise is how many of the starts that promise most are looked at on a line.
const promise = 12

// fewStarts is how many of them are when it only begins.
const fewStarts = 4

// fewTries is how many placings are looked at for one start when the search settles.
const fewTries = 12

// mostLooks is how often a start on one line is looked at more closely before those that promise most are taken as
// they come: a tape that is very fine has more starts than could be looked at.
const mostLooks = 6000

// few are the starts that promise most on the line, as far as may be counted for it, then the
// classic ones.
func (h *hunt) few(most, effort int, to depth) []length.Length {
	var out []length.Length
	until := h.work() + effort/len(h.walls)
	for n, looked := 0, 0; n < most && !h.queue.empty(); looked++ {
		c := h.queue.first()
		switch {
		case h.stopped() && h.ended || looked > mostLooks:
			to = guessed // as they come
		case h.work() >= until:
			to = refined // without cutting more
		}
		if c.depth < to {
			h.closer(c)
			continue
		}
		out = append(out, h.queue.take().edge)
		n++
	}
	if h.wall.Found.Pin == nil {
		for _, c := range h.wall.Starts.Classics(h.wall.Outer()) {
			out = append(out, c.Edge)
		}
	}
	return out
}
