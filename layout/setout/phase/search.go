package phase

import (
	"context"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/effort"
	"coursewright/layout/survey"
)

// Work is how much one search counts before it settles for the best found.
const Work = 400_000

// weight is what one unit of Work is in effort: as much of a processor's time.
const weight = 9

type solver struct {
	ctx   context.Context
	room  *survey.Room
	order merit.Order
	walls []*Wall
	limit int
	ended bool
}

// Room is the best set-out of a room laid in a pattern with the joint it has. The
// error is the context's.
func Room(ctx context.Context, room *survey.Room) (Result, error) { return Within(ctx, room, Work) }

// Within is Room for whoever has less than Work for it.
func Within(ctx context.Context, room *survey.Room, work int) (Result, error) {
	s := &solver{ctx: ctx, room: room, order: merit.OrderFor(room.Prefer), limit: work}
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

// Spent is how much was counted for a result so far.
func (r *Result) Spent() int { return r.work() }

// search takes the most promising stretch of lines first, divides it until it is
// a single line, and looks on that line at the most promising starts of each wall.
// What comes first with every wall counted cannot be beaten by what is behind it, unless the walls
// are judged together: then what they may give together is gathered on it.
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
	var found *setOut
	for !q.empty() {
		t := q.take()
		switch {
		case found != nil && !s.order.Better(&t.bound, &found.merit):
			return s.result(found.taken(), nil)
		case t.done() && !s.shared():
			return s.result(t, nil)
		case s.stopped():
			q.add(t)
			return s.settle(&q, best, found)
		case t.done():
			var done bool
			if found, done = fitsOn(t, s).gather(found); !done {
				q.add(t)
			}
			continue
		case t.marks > 1:
			for k := range t.marks {
				q.add(s.trial(t.line+k*s.room.Tape, 1))
			}
			continue
		}
		s.closer(t, &q)
		if t.done() && !s.shared() && (best == nil || s.order.Better(&t.bound, &best.bound)) {
			best = t
		}
		q.add(t)
	}
	return s.result(found.taken(), nil)
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
