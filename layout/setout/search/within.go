package search

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// within keeps the lines that stand where the room lets course lines stand. Where
// no mark of the tape does, the lowest lines that do are tried.
func (s *solver) within(lines []length.Length) []length.Length {
	if len(s.room.Course) == 0 {
		return lines
	}
	pitch := s.room.Tile.Height + s.room.Joint
	out := func(y length.Length) bool {
		return slices.ContainsFunc(s.room.Course, func(c survey.Span) bool { return !c.Congruent(y, pitch) })
	}
	if lines = slices.DeleteFunc(lines, out); len(lines) > 0 {
		return lines
	}
	from := s.lowest()
	for _, c := range s.room.Course {
		for n := range s.periods() {
			lines = append(lines, from+length.Mod(c.From-from, pitch)+n*pitch)
		}
	}
	return slices.DeleteFunc(unique(lines), out)
}
