package search

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/setout/count"
)

// A start that is pinned, as beside a strip, ties the courses to the line: it is tried in every
// course of the bond. A wall whose start is free stands the same on each of these lines, begun as
// its course there is. It is searched once for them all, on the lowest.

// huntOf is a wall with the lowest of the lines that are whole courses apart.
type huntOf struct {
	wall *count.Wall
	line length.Length
}

// sharedLine is the line on which a wall is searched for a line and for all that are whole courses
// off; it is false where the wall is searched on each by itself.
func sharedLine(s *solver, w *count.Wall, line length.Length) (huntOf, bool) {
	if s.room.Line != nil || s.periods() == 1 || w.Found.Pin != nil || !w.ShiftsExactly() {
		return huntOf{}, false
	}
	lowest := s.Lowest()
	return huntOf{w, lowest + length.Mod(line-lowest, s.room.Tile.Height+s.room.Joint)}, true
}

// onLine is what was found for the walls of a line as it is seen from the line.
func onLine(s *solver, t *trial) []*hunt {
	out := slices.Clone(t.hunts)
	for i, h := range out {
		if h.line == t.line {
			continue
		}
		seen := *h
		seen.line, seen.ties = t.line, nil
		for _, c := range h.ties {
			seen.ties = append(seen.ties, h.wall.From(c.Setting, t.line))
		}
		slices.SortStableFunc(seen.ties, func(a, b count.Counted) int {
			order, _ := s.order.Compare(&a.Merit, &b.Merit)
			return cmp.Or(order, cmp.Compare(a.Edge, b.Edge))
		})
		out[i] = &seen
	}
	return out
}
