package phase

import (
	"container/heap"

	"coursewright/layout/length"
	"coursewright/layout/merit"
)

// blocks is into how many stretches the lines and the starts are divided first.
const blocks = 24

// trial is a stretch of lines, from line on so many marks.
type trial struct {
	line  length.Length
	marks length.Length
	bound merit.Merit
	hunts []*hunt // one to a wall, for a single line
}

// hunt is the search for the best start of one wall on one line.
type hunt struct {
	wall  *Wall
	line  length.Length
	queue queue[*stretch]
	best  *Counted
	looks int
}

// stretch is some starts of one wall, from edge on so many marks. A single one is
// exact once it is counted.
type stretch struct {
	edge   length.Length
	marks  length.Length
	merit  merit.Merit
	at     *Setting // with its free marks placed
	choice *choice  // how free marks may be placed, and which way this is
	pick   []int    // the option of every axis
	last   int      // the axis that was changed last
	close  bool     // its corners were cut
	exact  *Counted
}

// trial is a stretch of lines with what it cannot beat.
func (s *solver) trial(line, marks length.Length) *trial {
	t := &trial{line: line, marks: marks}
	middle := line + (marks-1)*s.room.Tape/2
	up := (marks - 1) * s.room.Tape / 2
	for _, w := range s.walls {
		h := s.hunt(w, middle, up)
		t.hunts = append(t.hunts, h)
	}
	t.sum(s)
	if marks > 1 {
		t.hunts = nil
	}
	return t
}

func (t *trial) done() bool {
	for _, h := range t.hunts {
		if h.best == nil {
			return false
		}
	}
	return t.hunts != nil
}

// sum adds up what the walls cannot beat.
func (t *trial) sum(s *solver) {
	t.bound = merit.Merit{}
	for _, h := range t.hunts {
		t.bound = t.bound.Plus(&h.queue.first().merit)
	}
}

// hunt lists the starts of a wall in stretches, on lines that are no farther than up.
func (s *solver) hunt(w *Wall, line, up length.Length) *hunt {
	h := &hunt{wall: w, line: line, queue: queue[*stretch]{before: func(a, b *stretch) bool {
		if c, _ := s.order.Compare(&a.merit, &b.merit); c != 0 {
			return c < 0
		}
		return a.edge < b.edge
	}}}
	first, marks := w.starts(s.room.Tape)
	step := max(1, (marks+blocks-1)/blocks)
	h.queue.items = make([]*stretch, 0, 2*blocks+len(w.classic))
	for at := length.Length(0); at < marks; at += step {
		h.queue.items = append(h.queue.items, s.stretch(h, first+at*s.room.Tape, min(step, marks-at), up))
	}
	for _, edge := range w.classic {
		h.queue.items = append(h.queue.items, s.stretch(h, edge, 1, up))
	}
	heap.Init(&h.queue)
	return h
}

func (s *solver) stretch(h *hunt, edge, marks, up length.Length) *stretch {
	along := (marks - 1) * s.room.Tape / 2
	return &stretch{edge: edge, marks: marks, merit: h.wall.AtBest(h.line, edge+along, along, up)}
}

// closer looks one step more closely at a wall whose best start on the line is not known yet: the one
// at which a look most likely shows, for its work, that the line is no better than those in the queue.
func (s *solver) closer(t *trial, q *queue[*trial]) {
	var next *hunt
	for _, h := range t.hunts {
		if h.best == nil && (next == nil || h.promise() > next.promise()) {
			next = h
		}
	}
	o, before := next.odds(), next.wall.Work
	s.look(next)
	t.sum(s)
	hit := q.empty() || s.order.Better(&q.first().bound, &t.bound)
	o.note(next.wall.Work-before, hit)
	next.wall.all.note(next.wall.Work-before, hit)
}

// look takes the most promising of a wall's starts one step further.
func (s *solver) look(h *hunt) {
	top, w := h.queue.take(), h.wall
	h.looks++
	switch top.next(w) {
	case known:
		h.best = top.exact
	case divide:
		for k := range top.marks {
			h.queue.add(s.stretch(h, top.edge+k*s.room.Tape, 1, 0))
		}
		return
	case cutTurns:
		if top.choice == nil {
			top.choice = w.choose(top, h)
		}
		top.choice.closer(h.next())
		top.merit = top.choice.least()
	case listEnds:
		s.first(h, top, &w.ends, (*choice).listEnds)
	case cutApart:
		s.first(h, top, &w.apart, func(c *choice) { c.closer(h.next()) })
	case list:
		if !top.choice.sharpen(allCut) { // few starts are still worth it once the best options listed are cut
			top.choice.list()
		}
		top.merit = top.choice.least()
	case pick:
		if s.sharpen(top) {
			break
		}
		top.pick = make([]int, len(w.axes))
		top.merit = top.choice.bound(top.pick, 0)
	case place:
		if !s.place(h, top) {
			return
		}
	case cutTouched:
		if top.choice != nil {
			top.merit, top.close = top.choice.closely(*top.at, h.next())
		} else {
			top.merit, top.close = w.Closely(*top.at, h.next())
		}
	case countAll:
		c := w.Count(*top.at)
		top.exact, top.merit = &c, c.Merit
	}
	h.queue.add(top)
}

// sharpen cuts the best options of a start until they show something, and tells whether any was not yet cut.
func (s *solver) sharpen(x *stretch) bool {
	before := x.merit
	for steps := range mostSteps {
		if !x.choice.sharpen(allCut) {
			return steps > 0
		}
		x.merit = x.choice.least()
		if c, _ := s.order.Compare(&before, &x.merit); c != 0 {
			break
		}
	}
	return true
}

// mostSteps is after how many steps that show nothing another wall may be looked at.
const mostSteps = 8

// first takes a step at a start of which it is learned whether it is worth to be taken first: what showed
// bare wall or small pieces, and its work.
func (s *solver) first(h *hunt, x *stretch, o *odds, step func(*choice)) {
	before, work := x.merit, h.wall.Work
	for next := h.next(); ; {
		step(x.choice)
		x.merit = x.choice.least()
		if x.choice.ended || o != &h.wall.ends || next != nil && s.order.Better(next, &x.merit) {
			break
		}
	}
	_, term := s.order.Compare(&before, &x.merit)
	o.note(h.wall.Work-work, term <= merit.Slivers)
}

// place places the marks of a start, and lists the ways that come after this one before it weighs what they cut
// together: other ways may do better by that. It tells whether the marks may stand so.
func (s *solver) place(h *hunt, x *stretch) bool {
	x.at = &Setting{Line: h.line, Edge: x.edge, Placed: h.wall.outer}
	if x.choice == nil {
		return true
	}
	for _, next := range x.choice.next(x) {
		h.queue.add(next)
	}
	var ok bool
	x.at.Placed, ok = x.choice.placed(x.pick)
	x.merit = x.choice.bound(x.pick, len(x.pick))
	return ok
}

// next is the merit of the most promising start that waits, or nil.
func (h *hunt) next() *merit.Merit {
	if h.queue.empty() {
		return nil
	}
	return &h.queue.first().merit
}
