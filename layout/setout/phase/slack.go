package phase

import "coursewright/layout/length"

// slips is how many marks of the tape a start is tried to slip at most, each way.
const slips = 64

// slacken moves a start that was found at a mark of the tape to the middle of the marks beside it
// that are as good for the room, so that it may slip the farthest before any term gets worse. Free
// marks stay where they were placed.
func (s *solver) slacken(walls []Counted, i int) {
	w, c := s.walls[i], walls[i]
	tape := s.room.Tape
	if w.Found.Pin != nil || c.Edge%tape != 0 {
		return
	}
	was := s.whole(walls)
	as := func(k length.Length) (Counted, bool) {
		n := w.Count(Setting{Line: c.Line, Edge: c.Edge + k*tape, Placed: c.Placed})
		walls[i] = n
		is := s.whole(walls)
		order, _ := s.order.Compare(&is, &was)
		return n, order == 0
	}
	reach := func(way length.Length) (n length.Length) {
		for n < slips && s.ctx.Err() == nil {
			if _, good := as(way * (n + 1)); !good {
				break
			}
			n++
		}
		return n
	}
	right, left := reach(1), reach(-1)
	walls[i] = c
	if by := (right - left).Half(); by != 0 {
		walls[i], _ = as(by)
	}
}
