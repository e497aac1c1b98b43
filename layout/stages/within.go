package stages

import (
	"cmp"
	"maps"
	"slices"

	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// strips are the steps of the strips of a wall, each upwards.
func (o ordering) strips(wall int) (out []Step) {
	w := &o.Walls[wall]
	for i := range w.Strips {
		s := &w.Strips[i]
		out = append(out, o.on(wall, InStrip, s.Opening, &s.Face)...)
	}
	return out
}

// within are the steps inside the niches and windows of a wall: the back first, then
// sill and top, and the sides on the sill.
func (o ordering) within(wall int) (out []Step) {
	w := &o.Walls[wall]
	for i := range w.Insides {
		in := &w.Insides[i]
		for _, is := range []survey.FaceName{survey.BackFace, survey.SillFace, survey.TopFace, survey.LeftFace, survey.RightFace} {
			if f := in.Find(is); f != nil {
				out = append(out, o.on(wall, Within, in.Opening, f)...)
			}
		}
	}
	return out
}

// tops are the steps of the top of a wall, from its front edge back.
func (o ordering) tops(wall int) []Step {
	if t := o.Walls[wall].Top; t != nil {
		return o.on(wall, OnTop, -1, &t.Face)
	}
	return nil
}

// on are the steps of a flat thing of its own, row by row from its lower edge.
func (o ordering) on(wall int, part Part, opening int, f *plan.Face) (out []Step) {
	sheets, onSheet := o.sheets(wall, &f.Wall, func(p piece.Piece) int64 { return int64(p.Course) }, func(int64) Part { return part })
	slices.SortStableFunc(sheets, func(a, b CourseOfSheets) int { return cmp.Compare(a.level, b.level) })
	for _, c := range sheets {
		out = append(out, c.steps(Step{Wall: wall, On: f, Opening: opening})...)
	}
	rows := map[int][]piece.Piece{}
	for _, p := range f.Pieces {
		if !onSheet[p.ID] {
			rows[p.Course] = append(rows[p.Course], p)
		}
	}
	o.found, o.Room.Joint = false, f.Joint
	for _, n := range slices.Sorted(maps.Keys(rows)) {
		for _, pieces := range o.course(&f.Wall, rows[n]) {
			out = append(out, Step{Wall: wall, Part: part, Pieces: pieces, On: f, Opening: opening})
		}
	}
	return out
}

// edging are the steps of the trim of a wall, then of its top, of bars or of pieces.
func (o ordering) edging(wall int, bars bool) []Step {
	w := &o.Walls[wall]
	out := along(Step{Wall: wall}, w.Trim, bars)
	if w.Top != nil {
		out = append(out, along(Step{Wall: wall, On: &w.Top.Face, Opening: -1}, w.Top.Trim, bars)...)
	}
	return out
}

// along are the steps of some trim, in the order of its numbers: whole pieces beside
// each other in one go.
func along(on Step, all []trim.Piece, bars bool) (out []Step) {
	on.Part = Edging
	if bars {
		on.Part = Profiles
	}
	var last *trim.Piece
	for i := range all {
		p := &all[i]
		if p.Trim.Bar() != bars {
			continue
		}
		if last != nil && !bars && last.Whole && p.Whole && last.Edge == p.Edge {
			s := &out[len(out)-1]
			s.Pieces = append(s.Pieces, asPiece(p))
		} else {
			next := on
			next.Pieces, next.Trim = []piece.Piece{asPiece(p)}, p
			out = append(out, next)
		}
		last = p
	}
	return out
}

// asPiece is a piece of trim as what is set: its place, and whether it is cut.
func asPiece(p *trim.Piece) piece.Piece {
	box := p.Face.Bounds()
	return piece.Piece{ID: p.ID, Tile: box, Face: p.Face, Visible: p.Face, Whole: !p.Cut(), Wide: box.Width(), High: box.Height(),
		Least: min(box.Width(), box.Height()), Share: piece.Part(p.Long, cmp.Or(p.Trim.Length, p.Long, 1))}
}
