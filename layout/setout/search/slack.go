package search

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
)

// slackened gives the set-outs of the walls of a line, each begun where its start may
// slip farthest among those with which the room is as good in every other term.
func (s *solver) slackened(t *trial) []count.Counted {
	walls := slices.Clone(t.walls)
	for i, h := range t.hunts {
		if len(h.ties) < 2 {
			continue
		}
		var alike []count.Counted
		for _, c := range h.ties {
			others := slices.Clone(walls)
			others[i] = c
			m := s.whole(others)
			if order, _ := s.order.Until(&m, &t.merit, merit.Slack); order == 0 {
				alike = append(alike, c)
			}
		}
		if len(alike) > 1 {
			walls[i] = mostSlack(alike, s.pitch(), s.room.Tape)
		}
	}
	return walls
}

// pitch is after how much the starts of a wall repeat.
func (s *solver) pitch() length.Length {
	pitch := s.room.Tile.Width + s.room.Joint
	if s.room.Bond.Plumb {
		pitch *= length.Length(max(1, s.room.Bond.Den))
	}
	return pitch
}

// mostSlack is the set-out whose start may slip farthest to either side without leaving
// those that are as good, which follow one another by no more than a mark of the tape
// and repeat every pitch; of several the one furthest left.
func mostSlack(alike []count.Counted, pitch, tape length.Length) count.Counted {
	slices.SortStableFunc(alike, func(a, b count.Counted) int { return cmp.Compare(a.Edge, b.Edge) })
	n := len(alike)
	at := func(i int) length.Length { // the starts, round and round
		turn := length.Length(length.DivFloor(length.Length(i), length.Length(n)))
		return alike[length.Mod(length.Length(i), length.Length(n))].Edge + turn*pitch
	}
	reach := func(i, step int) length.Length {
		k := i
		for k-i < n && i-k < n && (at(k+step)-at(k)).Abs() <= tape {
			k += step
		}
		return (at(k) - at(i)).Abs()
	}
	best, most := 0, length.Length(-1)
	for i := range alike {
		if slack := min(reach(i, 1), reach(i, -1)).FloorTo(tape); slack > most {
			best, most = i, slack
		}
	}
	return alike[best]
}
