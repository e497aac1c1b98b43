package phase

import (
	"container/heap"
	"context"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/effort"
	"coursewright/layout/survey"
)

// Work is how much one search counts before it settles for the best found.
const Work = 200_000

// weight is what one unit of Work is in effort: as much of a processor's time.
const weight = 12

// Result is the best set-out found of a room laid in a pattern.
type Result struct {
	Line   length.Length
	Walls  []Counted // in the job's order
	Merit  merit.Merit
	Proven bool        // no marks of the tape are better, before the terms of corners
	Free   bool        // marks were free, and were placed among their options
	Bound  merit.Merit // what no set-out can beat, where it is not proven

	*solver
}

type solver struct {
	ctx   context.Context
	room  *survey.Room
	order merit.Order
	walls []*Wall
	limit int
	ended bool
}

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

// Room is the best set-out of a room laid in a pattern with the joint it has. The
// error is the context's.
func Room(ctx context.Context, room *survey.Room) (Result, error) {
	s := &solver{ctx: ctx, room: room, order: merit.OrderFor(room.Prefer), limit: Work}
	pattern := bond.For(*room, room.Bond.Hand)
	for _, found := range room.Walls {
		s.walls = append(s.walls, NewWall(room, found, pattern))
	}
	r := s.search()
	effort.Add(ctx, weight*s.work())
	if err := ctx.Err(); err != nil {
		return Result{}, err
	}
	return r, nil
}

// Wall is the wall that was counted.
func (r *Result) Wall(i int) *Wall { return r.walls[i] }

// Order is the order in which the terms were compared.
func (r *Result) Order() merit.Order { return r.order }

func (s *solver) work() int {
	sum := 0
	for _, w := range s.walls {
		sum += w.Work
	}
	return sum
}

func (s *solver) stopped() bool {
	s.ended = s.ended || s.ctx.Err() != nil
	return s.ended || s.work() > s.limit
}

// search takes the most promising stretch of lines first, divides it until it is
// a single line, and looks on that line at the most promising starts of each wall.
// What comes first with every wall counted cannot be beaten by what is behind it.
func (s *solver) search() Result {
	q := queue[*trial]{before: func(a, b *trial) bool {
		if c, _ := s.order.Compare(&a.bound, &b.bound); c != 0 {
			return c < 0
		}
		return a.line < b.line
	}}
	line, marks := s.lines()
	step := max(1, (marks+blocks-1)/blocks)
	for at := length.Length(0); at < marks; at += step {
		q.add(s.trial(line+at*s.room.Tape, min(step, marks-at)))
	}
	var best *trial
	for !q.empty() {
		t := q.take()
		switch {
		case t.done():
			return s.result(t, nil)
		case s.stopped():
			q.add(t)
			return s.settle(&q, best)
		case t.marks > 1:
			for k := range t.marks {
				q.add(s.trial(t.line+k*s.room.Tape, 1))
			}
			continue
		}
		s.closer(t, &q)
		if t.done() && (best == nil || s.order.Better(&t.bound, &best.bound)) {
			best = t
		}
		q.add(t)
	}
	panic("a room has at least one line")
}

// lines are the line to begin with and how many marks of the tape there are from it:
// the row through the middle of the widest wall's tile.
func (s *solver) lines() (length.Length, length.Length) {
	if s.room.Line != nil {
		return *s.room.Line, 1
	}
	widest := s.walls[0]
	for _, w := range s.walls {
		if w.Found.Width > widest.Found.Width {
			widest = w
		}
	}
	box, rise := widest.ground(widest.outer).box, widest.Pattern.Rise
	low := (box.Bottom + box.Top - rise).Half().CeilTo(s.room.Tape)
	return low, (rise + s.room.Tape - 1) / s.room.Tape
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

// starts are the first start and how many marks of the tape there are from it: a
// pattern's reach about the middle of the tile field.
func (w *Wall) starts(tape length.Length) (length.Length, length.Length) {
	if p := w.Found.Pin; p != nil {
		return w.pinned(p), 1
	}
	box := w.ground(w.outer).box
	from := (box.Left + box.Right - w.Pattern.Reach).Half().CeilTo(tape)
	return from, (w.Pattern.Reach + tape - 1) / tape
}

// pinned is the start that a pin gives: the left side of a tile of the first place.
func (w *Wall) pinned(p *survey.StartPin) length.Length {
	switch p.Is {
	case survey.OnTile:
		return p.X - w.Pattern.Tiles[w.Pattern.Places[0].Tile].Box.Width().Half()
	case survey.OnJoint:
		return p.X + w.room.Joint.Half()
	}
	return p.X
}

// closer looks one step more closely at a wall whose best start on the line is not known yet: the one
// at which a look most likely shows, for its work, that the line is no better than those in the queue.
func (s *solver) closer(t *trial, q *queue[*trial]) {
	var next *hunt
	for _, h := range t.hunts {
		if h.best == nil && (next == nil || h.odds().better(next.odds())) {
			next = h
		}
	}
	o, before := next.odds(), next.wall.Work
	s.look(next)
	t.sum(s)
	o.note(next.wall.Work-before, q.empty() || s.order.Better(&q.first().bound, &t.bound))
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
		top.choice = w.choose(top, h)
		top.choice.closer()
		top.merit = top.choice.least()
	case cutApart:
		top.choice.closer()
		top.merit = top.choice.least()
	case list:
		top.choice.list()
		top.merit = top.choice.least()
	case pick:
		if top.choice.sharpen() {
			top.merit = top.choice.least()
			break
		}
		top.pick = make([]int, len(w.axes))
		top.merit = top.choice.bound(top.pick)
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

// place places the marks of a start, and lists the ways that come after this one. It tells
// whether the marks may stand so.
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
	return ok
}

func (s *solver) result(t *trial, bound *merit.Merit) Result {
	r := Result{Line: t.line, Proven: bound == nil, solver: s}
	if bound != nil {
		r.Bound = *bound
	}
	for i, h := range t.hunts {
		c := *h.best
		if len(s.walls[i].axes) > 0 {
			if r.Free = true; !r.Proven {
				c = s.placeMarks(s.walls[i], c)
			}
		}
		r.Walls = append(r.Walls, c)
	}
	for i := range r.Walls {
		s.slacken(r.Walls, i)
	}
	r.Merit = s.whole(r.Walls)
	return r
}

// whole is the merit of the room with a set-out for every wall: what each gives and
// what they give together.
func (s *solver) whole(walls []Counted) merit.Merit {
	var m merit.Merit
	for i := range walls {
		m = m.Plus(&walls[i].Merit)
	}
	m.Part = false
	for i := range walls {
		if i == 0 || !s.walls[i-1].Found.Right.Meets || !s.walls[i].Found.Left.Meets {
			continue
		}
		if underThird(walls[i-1].Right, s.walls[i-1].least[0].full) && underThird(walls[i].Left, s.walls[i].least[0].full) {
			m.Corners++
		}
	}
	if len(walls) == 3 && s.walls[0].Found.Right.Meets && s.walls[2].Found.Left.Meets {
		m.Facing = (walls[0].Right - walls[2].Left).Abs().FloorTo(s.room.Tape)
	}
	return m
}

// underThird tells whether a width is under a third of the tile.
func underThird(l, full length.Length) bool { return 3*l < full }

// With is what another start of one wall would give on the line of the result, and
// the merit of the room with it.
func (r *Result) With(wall int, edge length.Length) (Counted, merit.Merit) {
	c := r.walls[wall].Count(Setting{Line: r.Line, Edge: edge, Placed: r.Walls[wall].Placed})
	walls := append([]Counted(nil), r.Walls...)
	walls[wall] = c
	return c, r.whole(walls)
}

// next is the merit of the most promising start that waits, or nil.
func (h *hunt) next() *merit.Merit {
	if h.queue.empty() {
		return nil
	}
	return &h.queue.first().merit
}
