package search

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
)

// trial is one course line on trial. Its merit is exact, or what it cannot beat.
type trial struct {
	solver *solver // with its hand of the bond
	line   length.Length
	merit  merit.Merit
	depth  depth
	dead   bool // it cannot be as good as what is known
	begun  int  // of how many walls the starts were looked at
	hunts  []*hunt
	walls  []count.Counted
}

// hunt is the search for the best starts of one wall on one course line.
type hunt struct {
	*solver
	wall   *count.Wall
	line   length.Length
	groups []count.Group
	next   []int // by group, the start that is next to be taken
	queue  queue[*candidate]
	ties   []count.Counted // the best so far, equal before the terms that walls share
	steps  int
	own    int          // the work done for its steps
	missed *merit.Merit // what no start or placing can beat that was not looked at; nil where all were
	done   bool
	depth  depth // how closely the first start in the queue is looked at, for the bound
	shared bool  // by lines that are whole courses apart
}

// candidate is one start on the line with what it cannot beat there.
type candidate struct {
	edge  length.Length
	merit merit.Merit
	group int
	depth depth
}

// cutoff is what the wall i of a line must reach to be worth while.
func (s *solver) cutoff(t *trial, i int) *cutoff {
	if s.known == nil {
		return nil
	}
	var rest merit.Merit
	for k, h := range t.hunts {
		if k != i && (h.shared || !t.hunts[i].shared) { // what is shared must hold for every line
			m := h.bound()
			rest = rest.Plus(&m)
		}
	}
	return &cutoff{rest: &rest, known: s.known}
}

// trial begins with what a line cannot beat wherever its walls start.
func (s *solver) trial(line length.Length) *trial {
	t := &trial{solver: s, line: line}
	t.promise()
	return t
}

// promise works out what the line cannot beat, with the best start on each wall of which they were looked at.
func (t *trial) promise() {
	t.merit = merit.Merit{}
	for i, w := range t.solver.walls {
		m := w.Bounds.Along(t.line)
		if i < t.begun {
			m = first(t.solver.order, w.Starts.Groups(t.line))
		}
		t.merit = t.merit.Plus(&m)
	}
}

// begin looks at the starts of the next wall; false where those of all were.
func (t *trial) begin() bool {
	if t.begun == len(t.solver.walls) {
		return false
	}
	t.begun++
	t.promise()
	return true
}

// closer looks at a line one step more closely: at the starts of one wall after the other; at the most promising start of
// one wall after the other, first of the one that turned out worse on the line before, then at the
// next start of the first wall whose best starts are not known yet. Once they all are, its
// merit is exact.
func (s *solver) closer(t *trial) {
	if t.begin() {
		return
	}
	if t.hunts == nil {
		for _, w := range s.walls {
			key, shared := sharedLine(s, w, t.line)
			h := s.shared[key]
			switch {
			case !shared:
				h = s.hunt(w, t.line)
			case h == nil:
				h = s.hunt(w, key.line)
				h.shared, s.shared[key] = true, h
			}
			t.hunts = append(t.hunts, h)
		}
	}
	if i, to := s.shallow(t); to > guessed {
		h := t.hunts[i]
		before := h.bound()
		h.depth = to
		if after := h.bound(); s.order.Better(&before, &after) {
			s.worst = i
		}
	} else {
		for i, h := range t.hunts {
			if !h.done {
				h.step(s.cutoff(t, i))
				break
			}
		}
	}
	t.merit = merit.Merit{}
	done := true
	for _, h := range t.hunts {
		if h.done && len(h.ties) == 0 {
			t.dead = true
			return
		}
		m := h.bound()
		t.merit = t.merit.Plus(&m)
		done = done && h.done
	}
	if done {
		s.miss(t.hunts)
		t.hunts = onLine(s, t)
		t.walls, t.merit = s.together(t.hunts)
		t.depth = exact
	}
}

// shallow is the wall of a line to look at more closely, and how closely; guessed where
// all were.
func (s *solver) shallow(t *trial) (int, depth) {
	for _, to := range [...]depth{refined, based} {
		for k := range t.hunts {
			if i := (s.worst + k) % len(t.hunts); t.hunts[i].depth < to {
				return i, to
			}
		}
	}
	return 0, guessed
}

// miss notes what no set-out of a line can beat of which something was not looked at.
func (s *solver) miss(hunts []*hunt) {
	var m merit.Merit
	missed := false
	for _, h := range hunts {
		best := &h.ties[0].Merit
		if h.missed != nil {
			missed = true
			if h.order.Better(h.missed, best) {
				best = h.missed
			}
		}
		m = m.Plus(best)
	}
	if missed && (s.missed == nil || s.order.Better(&m, s.missed)) {
		s.missed = &m
	}
}

// first is what the most promising start of some groups cannot beat.
func first(order merit.Order, groups []count.Group) merit.Merit {
	var best merit.Merit
	for i, g := range groups {
		if m := g.Starts[0].Merit.Plus(&g.Offset); i == 0 || order.Better(&m, &best) {
			best = m
		}
	}
	return best
}

func (s *solver) hunt(w *count.Wall, line length.Length) *hunt {
	h := &hunt{solver: s, wall: w, line: line, groups: w.Starts.Groups(line)}
	if s.spread {
		h.groups = s.spreadAlike(h.groups)
	}
	h.queue.before = h.before
	h.next = make([]int, len(h.groups))
	for i := range h.groups {
		h.feed(i)
	}
	return h
}

// feed puts the next start of a group into the queue.
func (h *hunt) feed(group int) {
	g, n := &h.groups[group], h.next[group]
	if n < len(g.Starts) {
		h.queue.add(&candidate{edge: g.Starts[n].Edge, merit: g.Starts[n].Merit.Plus(&g.Offset), group: group})
		h.next[group]++
	}
}

func (h *hunt) before(a, b *candidate) bool {
	if order, _ := h.order.Compare(&a.merit, &b.merit); order != 0 {
		return order < 0
	}
	return a.edge < b.edge
}

// bound is what no start on the line can beat: the best so far, or what is next
// in the queue with the edges where they stand.
func (h *hunt) bound() merit.Merit {
	for !h.done && h.queue.first().depth < h.depth && !h.stopped() {
		h.closer(h.queue.first())
	}
	switch {
	case h.done:
		return h.ties[0].Merit
	case len(h.ties) == 0 || h.order.Better(&h.queue.first().merit, &h.ties[0].Merit):
		return h.queue.first().merit
	}
	return h.ties[0].Merit
}

// closer looks at the first start in the queue more closely: with the edges where rows
// stand, when the next start of its group comes into the queue, then with the rows
// themselves, and then with those cut that no free opening touches.
func (h *hunt) closer(c *candidate) {
	c.depth++
	switch c.depth {
	case edged:
		h.worsen(c, h.wall.Bounds.OfBoth(h.line, c.edge))
		h.queue.settle()
		h.feed(c.group)
	case refined:
		h.worsen(c, h.wall.Bounds.Plainly(h.line, c.edge))
		h.queue.settle()
	case based:
		if h.wall.FixedEnds() {
			h.worsen(c, h.base(h.wall, h.line, c.edge))
		}
		h.queue.settle()
	}
}

// base is what a start on a line cannot beat wherever the free marks go: the best
// that the places of the ends and the head allow in the rows that no free opening
// touches, with the best place of each opening.
func (s *solver) base(w *count.Wall, line, edge length.Length) merit.Merit {
	return sum(s.placer(w, line, edge, nil).first(tries))
}

// worsen notes what a start cannot beat, where that is worse than what was known.
func (h *hunt) worsen(c *candidate, m merit.Merit) {
	if h.order.Better(&c.merit, &m) {
		c.merit = m
	}
}

// mostTies bounds how many equal starts of a wall are settled together, mostSteps
// how many starts are looked at on one line, and lateShare of the work how much is counted for it
// once those left can only be better out of sight or quicker to cut.
const (
	mostTies  = 64
	mostSteps = 240
	lateShare = 2
)

// step looks at the start that is next in the queue, and tells by done when all
// are known that are equal before the terms that walls share.
func (h *hunt) step(cut *cutoff) {
	before := h.work()
	defer func() { h.own += h.work() - before }()
	h.depth = based
	h.bound()
	c := h.queue.take()
	if c.depth < edged { // the work is spent, and nobody has looked at it: the next of its group comes in its place
		h.feed(c.group)
	}
	h.short = false
	if got := h.place(h.wall, h.line, c.edge, h.limit(), cut, mostTries); got != nil {
		h.keep(*got)
	}
	switch {
	case h.short && h.stopped(): // it is taken up again if there is more work for it
		h.queue.add(c)
	case h.short:
		h.miss(c.merit)
	}
	h.steps++
	if h.done = h.queue.empty() || h.past(); !h.done && h.spent() {
		h.done = true
		h.miss(h.queue.first().merit)
	}
}

// limit is what a start must reach to be worth while: what the best so far gives.
func (h *hunt) limit() *merit.Merit {
	if len(h.ties) == 0 {
		return nil
	}
	return &h.ties[0].Merit
}

// miss notes what cannot be beaten of what is not looked at.
func (h *hunt) miss(m merit.Merit) {
	if h.missed == nil || h.order.Better(&m, h.missed) {
		h.missed = &m
	}
}

// spent tells whether enough starts were looked at.
func (h *hunt) spent() bool {
	if len(h.ties) == 0 || h.steps < mostSteps && h.own < h.most/lateShare {
		return false
	}
	order, _ := h.order.Until(&h.queue.first().merit, &h.ties[0].Merit, merit.HiddenBare)
	return order >= 0 || h.steps >= mostSteps
}

// past tells whether nothing that is left in the queue is as good as the best so far.
func (h *hunt) past() bool {
	if len(h.ties) == 0 {
		return false
	}
	for {
		c := h.queue.first()
		if order, _ := h.order.Until(&c.merit, &h.ties[0].Merit, h.order.Shared()); order > 0 {
			return true
		}
		if c.depth == based || h.stopped() {
			return false
		}
		h.closer(c)
	}
}

// keep keeps a start that is no worse than those kept, and drops those it beats.
func (h *hunt) keep(c count.Counted) {
	if len(h.ties) > 0 {
		switch order, _ := h.order.Until(&c.Merit, &h.ties[0].Merit, h.order.Shared()); order {
		case 1:
			return
		case -1:
			h.ties = h.ties[:0]
		}
	}
	h.ties = append(h.ties, c)
	slices.SortStableFunc(h.ties, func(a, b count.Counted) int {
		order, _ := h.order.Compare(&a.Merit, &b.Merit)
		return order
	})
	if len(h.ties) > mostTies {
		h.miss(h.ties[mostTies].Merit)
		h.ties = h.ties[:mostTies]
	}
}
