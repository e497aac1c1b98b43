package search

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
)

// fresh is how much may be counted for one line when the search settles.
const fresh = Work / 16

// settle gives the best that is known when the work is spent, after a fresh look
// at the lines that promise most and the classic ones with their best starts and
// the classic starts, and, as long as that is better, at the slips of the line that
// promise most with the starts of the best, and at every start on its line. It says
// what no set-out can beat.
func (s *solver) settle(q *queue[*trial], best *trial) *Result {
	bound := q.first().merit
	better := func(t *trial) {
		if best == nil || s.order.Better(&t.merit, &best.merit) {
			best = t
		}
	}
	until := s.work() + s.share
	for _, line := range s.promising(q, best) {
		if s.ended || best != nil && s.work() > until {
			break
		}
		better(s.look(line, glance{fresh, promise, fewTries, based}))
	}
	if best == nil {
		return nil
	}
	for before := (*trial)(nil); best != before && !s.ended && (before == nil || s.work() < 2*s.share); {
		before = best
		turns := s.turns()
		better(s.bestSlip(best, before.walls, turns[:1]))
		better(s.bestSlip(best, before.walls, turns[1:]))
		if t := s.through(best); t != nil {
			better(t)
		}
	}
	return s.result(best, bound)
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
		if t := s.look(line, glance{fresh / 4, fewStarts, fewTries, refined}); best == nil || s.order.Better(&t.merit, &best.merit) {
			best = t
		}
	}
	return best
}

// through looks at every start on the line of the best, as far as the work for that
// goes, and gives what is better; nil where nothing is.
func (s *solver) through(best *trial) *trial {
	s.limit, s.known = s.work()+4*fresh, &best.merit
	t := s.trial(best.line)
	for t.depth < exact && !t.dead && !s.stopped() {
		s.closer(t)
	}
	for _, h := range t.hunts {
		if len(h.ties) == 0 {
			return nil
		}
	}
	if t.dead || t.hunts == nil {
		return nil
	}
	if t.depth < exact {
		t.walls, t.merit = s.together(t.hunts)
		t.depth = exact
	}
	return t
}

// bestSlip is the best of the slips with some turns, as far as the work for that goes,
// or what was best before.
func (s *solver) bestSlip(best *trial, walls []count.Counted, turns []length.Length) *trial {
	s.limit = s.work() + 2*fresh
	for _, p := range s.slips(walls, turns) {
		if s.stopped() || !s.order.Better(&p.merit, &best.merit) {
			break
		}
		if t := s.slipped(&p, walls, best); t != nil && s.order.Better(&t.merit, &best.merit) {
			best = t
		}
	}
	return best
}

// slip is a course line with the starts of another, all moved alike, and what that cannot beat.
type slip struct {
	line, moved length.Length
	walls       []merit.Merit
	merit       merit.Merit
}

// slips are all lines, as far as the work for that goes, with the starts that walls have
// on one, moved by some turns, the most promising first.
func (s *solver) slips(walls []count.Counted, turns []length.Length) []slip {
	var out []slip
	for _, line := range s.lines() {
		if s.stopped() {
			break
		}
		for _, moved := range turns {
			p := slip{line: line, moved: moved}
			for i, w := range s.walls {
				m := w.Bounds.OfBoth(line, p.edge(w, walls[i].Edge))
				p.walls, p.merit = append(p.walls, m), p.merit.Plus(&m)
			}
			out = append(out, p)
		}
	}
	slices.SortStableFunc(out, func(a, b slip) int {
		order, _ := s.order.Compare(&a.merit, &b.merit)
		return order
	})
	return out
}

// turns are how far every start is moved so that another course of the bond, or another
// of its columns, comes to lie on the line: a line that slips beyond its pitch comes back
// with one of them.
func (s *solver) turns() []length.Length {
	out := bond.Of(*s.room, s.hand).Shifts()
	if s.room.Bond.Plumb {
		for k := range out {
			out[k] = length.Length(k) * (s.room.Tile.Width + s.room.Joint)
		}
	}
	return out
}

// edge is where a start comes to stand, unless it is pinned.
func (p *slip) edge(w *count.Wall, from length.Length) length.Length {
	if w.Found.Pin != nil {
		return from
	}
	return from + p.moved
}

// slipped is what the line of a slip gives with its starts; nil where that is not as
// good as the best.
func (s *solver) slipped(p *slip, walls []count.Counted, best *trial) *trial {
	t := &trial{line: p.line, depth: exact}
	for i, w := range s.walls {
		var others merit.Merit
		for k, m := range p.walls {
			if k != i {
				others = others.Plus(&m)
			}
		}
		c := s.place(w, p.line, p.edge(w, walls[i].Edge), nil, &cutoff{&others, &best.merit, true}, fewTries)
		if c == nil {
			return nil
		}
		p.walls[i] = c.Merit
		t.hunts = append(t.hunts, &hunt{solver: s, wall: w, line: p.line, ties: []count.Counted{*c}})
	}
	t.walls, t.merit = s.together(t.hunts)
	return t
}

// promising lists the lines to look at afresh: the best so far, those first in the
// queue, and the classic ones.
func (s *solver) promising(q *queue[*trial], best *trial) []length.Length {
	var out []length.Length
	add := func(y length.Length) {
		if !slices.Contains(out, y) {
			out = append(out, y)
		}
	}
	if best != nil {
		add(best.line)
	}
	for range min(4, len(q.items)) {
		add(q.take().line)
	}
	if s.room.Line == nil {
		var classic []length.Length
		for _, c := range s.Lines() {
			classic = append(classic, c.Line)
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
	t := &trial{line: line, depth: exact}
	for _, w := range s.walls {
		h := s.hunt(w, line)
		s.limit = s.work() + g.effort/len(s.walls)
		for _, edge := range h.few(g.starts, g.depth) {
			if len(h.ties) > 0 && s.stopped() {
				break
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

// promise is how many of the starts that promise most are looked at on a line.
const promise = 12

// fewStarts is how many of them are when it only begins.
const fewStarts = 4

// fewTries is how many placings are looked at for one start when the search settles.
const fewTries = 12

// few are the starts that promise most on the line, then the classic ones.
func (h *hunt) few(most int, to depth) []length.Length {
	var out []length.Length
	until := h.work() + 2*fresh
	for n := 0; n < most && !h.queue.empty(); {
		c := h.queue.first()
		if h.work() >= until {
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

// result is a trial with what nothing can beat that is left: it is proven where that
// is no better, nor anything that was passed over.
func (s *solver) result(t *trial, bound merit.Merit) *Result {
	if t == nil {
		return nil // the context has ended before anything was known
	}
	if s.missed != nil && s.order.Better(s.missed, &bound) {
		bound = *s.missed
	}
	proven := !s.order.Better(&bound, &t.merit)
	r := &Result{Line: t.line, Hand: s.hand, Walls: s.slackened(t), Merit: t.merit, Proven: proven, Bound: bound, solver: s}
	r.tryClassics()
	return r
}

// tryClassics begins walls at the classic starts between the ends where they were found
// to stand, as long as that is better and the work for it goes: the middle of the tile
// field moves with a free end.
// What is found so may beat the bound, which holds for the starts that the search tries.
func (r *Result) tryClassics() {
	until := r.work() + fresh
	for i, w := range r.walls {
		if w.FixedEnds() || w.Found.Pin != nil {
			continue
		}
		for range mostMoves {
			if !r.tryClassicsOf(i, w, until) {
				break
			}
		}
	}
	if r.order.Better(&r.Merit, &r.Bound) {
		r.Bound = r.Merit
	}
}

// mostMoves is how often the ends of a wall are followed by its classic starts.
const mostMoves = 4

func (r *Result) tryClassicsOf(i int, w *count.Wall, until int) (moved bool) {
	for _, c := range w.Starts.Classics(r.Walls[i].Placed) {
		if w.Starts.Has(c.Edge) || r.work() > until {
			continue
		}
		if got, m := r.Start(i, c.Edge); r.order.Better(&m, &r.Merit) {
			r.Walls[i], r.Merit, moved = got, m, true
		}
	}
	return moved
}
