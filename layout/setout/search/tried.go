package search

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// lines lists the course lines that are tried, ascending over one period: every
// mark of the tape, with the classic lines between marks; the pinned one where
// there is one.
func (s *solver) lines() []length.Length {
	if s.room.Line != nil {
		return []length.Length{*s.room.Line}
	}
	pitch := s.room.Tile.Height + s.room.Joint
	from, period := s.Lowest(), pitch*s.periods()
	out := []length.Length{}
	for y := from.CeilTo(s.room.Tape); y < from+pitch; y += s.room.Tape {
		for _, shift := range s.shifts() {
			for n := range s.periods() { // what a start that is pinned gives on a line a course higher, others give on this one
				out = append(out, from+length.Mod(y-shift+n*pitch-from, period))
			}
		}
	}
	for _, c := range s.Lines() {
		for y := from + length.Mod(c.Line-from, pitch); y < from+period; y += pitch {
			out = append(out, y)
		}
	}
	return s.within(unique(out))
}

// distinct lists the lines that are tried without those on which every wall gives what it gives on a lower one, begun
// in another column.
func (s *solver) distinct() []length.Length {
	rise := s.walls[0].Rise()
	differs := func(w *count.Wall) bool { return w.Rise() != rise }
	if !s.room.Bond.Plumb || slices.ContainsFunc(s.walls, differs) {
		return s.lines()
	}
	known := map[length.Length]bool{}
	return slices.DeleteFunc(s.lines(), func(line length.Length) bool {
		at := length.Mod(line, rise)
		again := known[at]
		known[at] = true
		return again
	})
}

// shifts are how far the columns of the bond stand over the course line, where it has
// columns: a mark of the tape may lie under any of them.
func (s *solver) shifts() []length.Length {
	if !s.room.Bond.Plumb {
		return []length.Length{0}
	}
	return bond.Of(*s.room, s.hand).Shifts()
}

// periods is over how many pitches the line must be tried: one, unless a pinned
// start ties the courses to the line.
func (s *solver) periods() length.Length {
	for _, w := range s.room.Walls {
		if w.Pin != nil && !s.room.Bond.Plumb {
			return length.Length(max(1, s.room.Bond.Den))
		}
	}
	return 1
}

// Lowest is where the course line is looked for first: the lowest tile of the
// widest wall. A line is named by the lowest course over it, for there a setter strikes it.
func (s *solver) Lowest() length.Length {
	widest := s.walls[0]
	for _, w := range s.walls {
		if w.Found.Width > widest.Found.Width {
			widest = w
		}
	}
	return widest.Box().Bottom
}

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
	from := s.Lowest()
	for _, c := range s.room.Course {
		for n := range s.periods() {
			lines = append(lines, from+length.Mod(c.From-from, pitch)+n*pitch)
		}
	}
	return slices.DeleteFunc(unique(lines), out)
}
