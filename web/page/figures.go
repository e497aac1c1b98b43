package page

import (
	"slices"
	"strconv"

	"coursewright/layout/finding"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
)

// Tape gives a length as the person's tape shows it.
func (j Job) Tape(l length.Length) string {
	s := j.Plan.Room.Units
	return l.Format(s, j.TapeStep())
}

// TapeStep is the smallest step of the person's tape.
func (j Job) TapeStep() length.Length {
	if j.Plan.Room.Tape > 0 {
		return j.Plan.Room.Tape
	}
	return j.Plan.Room.Units.Step()
}

// Exact gives a length so that it reads back as the same one.
func (j Job) Exact(l length.Length) string { return l.Plain(j.System(), 0) }

// Percent writes a share of a tile, rounded down, in one word that no line breaks.
func Percent(s piece.Share) string {
	if s.Den == 0 {
		return "–"
	}
	return strconv.FormatInt(100*s.Num/s.Den, 10) + "\u00a0%"
}

// Slivers counts the pieces that are smaller than any should be, those that nobody can cut among them. A piece that
// only runs out to a point, as under a roof, is none.
func (j Job) Slivers() int {
	points := 0
	for _, w := range j.Plan.Walls {
		for i := range w.Pieces {
			if p := &w.Pieces[i]; p.Unworkable && !p.NoSaw() {
				points++
			}
		}
	}
	return max(0, j.Plan.Setout.Merit.Slivers+j.Plan.Setout.Merit.Unworkable-points)
}

// Figure is one figure of the answer.
type Figure struct{ Name, Value, Note, Class string }

// Figures are the answer in a few figures.
func (j Job) Figures() []Figure {
	s, slivers := j.Plan.Setout, j.Slivers()
	cut, all := plan.Count(j.Plan.Walls)
	out := []Figure{
		{"Smallest cut", s.Least.Size.Fine(j.Plan.Room.Units), j.leastNote(), ""},
		{"Slivers", strconv.Itoa(slivers), "", Bad(slivers)},
		{"Cut pieces", strconv.Itoa(cut), "of " + strconv.Itoa(all), ""},
		{"Course line", j.Tape(s.Line), "from the level line", ""},
	}
	switch {
	case s.Least.Piece == "":
		out[0].Value = "none"
	case s.Least.Point:
		out[0].Value = "a point"
	case s.Least.Size == 0:
		out[0].Value = "hidden"
	}
	if s.Merit.Bare > 0 {
		out = append(out, Figure{"Bare wall", j.Tape(s.Merit.Bare), "wider than sealant may fill", "bad"})
	}
	if off := s.OffLine(); off > 0 {
		out = append(out, Figure{"Edges off the joints", strconv.Itoa(off), "of niches and windows", ""})
	}
	return out
}

func (j Job) leastNote() string {
	l := j.Plan.Setout.Least
	if l.Piece == "" || l.Wall >= len(j.Plan.Walls) {
		return ""
	}
	if l.Point {
		return "runs out to it, " + l.Piece + " on " + j.Plan.Walls[l.Wall].Found.Name
	}
	if l.Size == 0 {
		return "beside the next wall’s tile, " + l.Piece + " on " + j.Plan.Walls[l.Wall].Found.Name
	}
	return Percent(l.Share) + " of a tile, " + l.Piece + " on " + j.Plan.Walls[l.Wall].Found.Name
}

// Bad is the class of a count that should be none.
func Bad(n int) string {
	if n > 0 {
		return "bad"
	}
	return ""
}

// FromLevel says where a height is, as people say it.
func (j Job) FromLevel(y length.Length) string {
	switch {
	case y < 0:
		return j.Tape(-y) + " under the level line"
	case y > 0:
		return j.Tape(y) + " over the level line"
	}
	return "on the level line"
}

// Cautions are those of the plan that no place of a drawing shows.
func (j Job) Cautions() []finding.Finding {
	return slices.DeleteFunc(slices.Clone(j.Plan.Findings), func(f finding.Finding) bool { return f.Grade != finding.Caution })
}
