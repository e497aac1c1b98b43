package search

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// Result is the best set-out found of a room with one joint.
type Result struct {
	Line   length.Length
	Hand   survey.Hand
	Walls  []count.Counted // in the job's order
	Merit  merit.Merit
	Proven bool        // nothing on the tape is better
	Bound  merit.Merit // what no set-out can beat, where it is not proven
	Spent  int         // how much was counted for it

	*solver
}

// Wall is the wall that was counted.
func (r *Result) Wall(i int) *count.Wall { return r.walls[i] }

// Keep gives the walls back to where they are kept. The result is not asked any more.
func (r *Result) Keep(kept *count.Kept) { giveBack(r.solver, kept) }

// Order is the order in which the terms were compared.
func (r *Result) Order() merit.Order { return r.order }

// Ended tells whether whoever asked for the result waits for no more of it.
func (r *Result) Ended() bool { return r.ctx.Err() != nil }

// Taken is a wall as a result has it.
type Taken struct {
	From *Result
	Wall int
}

// With is the result with some of its walls set out as other results of the same room on
// the same line have them.
func (r *Result) With(room *survey.Room, walls map[int]Taken) *Result {
	s, out := r.alone(), *r
	s.room, s.walls, out.Walls = room, slices.Clone(r.walls), slices.Clone(r.Walls)
	for i, t := range walls {
		s.walls[i], out.Walls[i] = t.From.walls[t.Wall], t.From.Walls[t.Wall]
	}
	out.solver, out.Merit, out.Proven = s, s.whole(out.Walls), false
	return &out
}

// Start is what another start of one wall would give on the line of the result,
// with its free marks placed at their best, and the merit of the room with it.
func (r *Result) Start(wall int, edge length.Length) (count.Counted, merit.Merit) {
	r.limit = r.work() + Work/400
	return r.begun(wall, edge)
}

// begun is Start as far as the work goes.
func (r *Result) begun(wall int, edge length.Length) (count.Counted, merit.Merit) {
	c := r.place(r.walls[wall], r.Line, edge, nil, nil, fewTries)
	walls := append([]count.Counted(nil), r.Walls...)
	walls[wall] = *c
	return *c, r.whole(walls)
}

// whole is the merit of a room with one set-out for every wall.
func (s *solver) whole(walls []count.Counted) merit.Merit {
	hunts := make([]*hunt, len(walls))
	for i, c := range walls {
		hunts[i] = &hunt{solver: s, wall: s.walls[i], ties: []count.Counted{c}}
	}
	_, m := s.together(hunts)
	return m
}

// OnLine is what another course line would give with the starts on it that promise most.
func (r *Result) OnLine(line length.Length) ([]count.Counted, merit.Merit) {
	t := r.look(line, glance{Work / 256, 2, fewTries, refined})
	return t.walls, t.merit
}

// Classic are the course lines of the trade in the room.
func (r *Result) Classic() []ClassicLine { return r.Lines() }

// tryClassics begins walls at the classic starts between the ends where they were found
// to stand, as long as that is better and the work for it goes: the middle of the tile
// field moves with a free end.
// What is found so may beat the bound, which holds for the starts that the search tries.
func (r *Result) tryClassics() {
	r.limit = r.work() + r.fresh
	for i, w := range r.walls {
		if w.FixedEnds() || w.Found.Pin != nil {
			continue
		}
		for range mostMoves {
			if !r.tryClassicsOf(i, w) {
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

func (r *Result) tryClassicsOf(i int, w *count.Wall) (moved bool) {
	for _, c := range w.Starts.Classics(r.Walls[i].Placed) {
		if w.Starts.Has(c.Edge) || r.work() > r.limit {
			continue
		}
		if got, m := r.begun(i, c.Edge); r.order.Better(&m, &r.Merit) {
			r.Walls[i], r.Merit, moved = got, m, true
		}
	}
	return moved
}
