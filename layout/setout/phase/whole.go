package phase

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
)

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
		if walls[i-1].right.share.Less(third) && walls[i].left.share.Less(third) {
			m.Corners++
		}
	}
	if len(walls) == 3 && s.walls[0].Found.Right.Meets && s.walls[2].Found.Left.Meets {
		m.Facing = (walls[0].right.least - walls[2].left.least).Abs().FloorTo(s.room.Tape)
	}
	return m
}

// With is what another start of one wall would give on the line of the result, and
// the merit of the room with it.
func (r *Result) With(wall int, edge length.Length) (Counted, merit.Merit) {
	c := r.walls[wall].Count(Setting{Line: r.Line, Edge: edge, Placed: r.Walls[wall].Placed})
	walls := append([]Counted(nil), r.Walls...)
	walls[wall] = c
	return c, r.whole(walls)
}
