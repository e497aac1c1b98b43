package stages

import (
	"cmp"
	"slices"

	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/mosaic"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// Part is a part of the setting.
type Part uint8

// The parts, in their order.
const (
	Profiles Part = iota // trim in bars, whose leg lies under the tile
	OnBatten             // the first full course, on its batten
	Upwards              // the courses over it
	Under                // what stands under it, once the batten is off
	InStrip              // strips of other tile up a wall
	Within               // what is inside niches and windows
	OnTop                // the tops of walls
	Edging               // trim in pieces
)

// Step is what one sets in one go: whole tiles beside each other, alike cuts
// beside each other, one cut piece, or a sheet of mosaic.
type Step struct {
	Wall   int // index into the walls
	Part   Part
	Pieces []piece.Piece // of one course or sheet, in the order of setting

	On      *plan.Face  // of a strip, a niche or window, or the top of a wall: where the pieces stand; nil for the field
	Opening int         // of the wall, where On is one of its faces
	Trim    *trim.Piece // the first piece, where it is trim

	Sheet  *mosaic.Sheet // of mosaic, which is set in one go, its pieces row by row; nil for tile set one by one
	Field  *mosaic.Field // what it is a sheet of
	Beside int           // how many sheets its course has
}

// Order puts the pieces of a plan into the order in which they are set: trim in
// bars, the first full course of every wall on its batten, then each wall upwards,
// then what stands under the batten, downwards; then strips, what is inside niches
// and windows, the tops of walls, and trim in pieces. Walls go by their setting order.
// Within a course the whole tiles go from the start outwards, first to its
// right, then to its left; then come the pieces cut to openings, and last those
// at the ends. A wall that ends under the first full course of the room, as the front of a
// bench does, begins with its own (Lows), or where its base cuts all with its lowest. Mosaic goes by courses of sheets, each from the start outwards in the same
// way, its cut tiles on the sheet. What is set already is in no step.
//
// Laws, each with a test:
//  1. Every piece that is not set already is in exactly one step.
//  2. No step comes before one of an earlier part.
//  3. A piece over the batten comes after the whole tiles right under it.
//  4. In a course no cut piece that is no part of a sheet comes before a whole tile.
func Order(in Input) []Step {
	o := ordering{Input: in, size: map[string]cuts.Cut{}}
	for _, c := range in.Cuts.Cuts {
		o.size[c.Piece] = c
	}
	o.full, o.found = FirstFull(in.Room, in.courseLine(), in.Walls)
	for _, w := range in.Walls {
		own, found := o.full.On(w)
		if !found { // all of it goes upwards, since none of it stands on a batten
			own.Row, own.Bottom = own.Row-1, own.Bottom-in.Room.Tile.Height-in.Room.Joint
		}
		o.first = append(o.first, own)
	}
	walls := make([]int, len(in.Walls))
	for i := range walls {
		walls[i] = i
	}
	slices.SortStableFunc(walls, func(a, b int) int { return cmp.Compare(in.Walls[a].Found.Order, in.Walls[b].Found.Order) })
	var out []Step
	for _, steps := range []func(wall int) []Step{
		func(w int) []Step { return o.edging(w, true) },
		func(w int) []Step { return o.wall(w, OnBatten) },
		func(w int) []Step { return o.wall(w, Upwards) },
		func(w int) []Step { return o.wall(w, Under) },
		o.strips, o.within, o.tops,
		func(w int) []Step { return o.edging(w, false) },
	} {
		for _, w := range walls {
			out = append(out, steps(w)...)
		}
	}
	return out
}

// courseLine is the bottom edge of course 0, as the pieces stand; of columns,
// that of the lowest tile of column 0.
func (in Input) courseLine() (line length.Length) {
	pitch, found := in.Room.Tile.Height+in.Room.Joint, false
	for _, w := range in.Walls {
		for _, p := range w.Pieces {
			switch {
			case p.Laid > 0:
			case !in.Room.Bond.Plumb && p.Lift == 0:
				return p.Tile.Bottom - length.Length(p.Row)*pitch
			case p.Row == 0 && (!found || p.Tile.Bottom < line):
				line, found = p.Tile.Bottom, true
			}
		}
	}
	return line
}

// ordering is a plan being put in order.
type ordering struct {
	Input
	full  FullCourse
	first []FullCourse // on every wall: full, or of a low one its own
	found bool
	size  map[string]cuts.Cut // by piece
}

// level counts courses of a wall from the first full one: 0 for it, up positive. Staggered
// columns count with the course their lower edge stands in.
func (o ordering) level(p piece.Piece, wall int) int64 {
	w, first := &o.Walls[wall], o.first[wall]
	if !o.Room.Bond.Coursed() {
		if !o.found {
			first = FullCourse{Row: slices.MinFunc(w.Pieces, func(a, b piece.Piece) int { return cmp.Compare(a.Row, b.Row) }).Row}
		}
		return int64(p.Row + p.Lift - first.Row)
	}
	if !o.found { // no course is full: each wall begins with its lowest
		first.Bottom = slices.MinFunc(w.Pieces, func(a, b piece.Piece) int { return cmp.Compare(a.Tile.Bottom, b.Tile.Bottom) }).Tile.Bottom
	}
	if o.found && len(o.Room.Bands) > 0 {
		return int64(p.Row + p.Lift - first.Row)
	}
	return length.DivFloor(p.Tile.Bottom-first.Bottom, o.Room.Tile.Height+o.Room.Joint)
}

func partOf(level int64) Part {
	switch {
	case level == 0:
		return OnBatten
	case level > 0:
		return Upwards
	}
	return Under
}

// wall makes the steps of one part of a wall, away from the batten.
func (o ordering) wall(wall int, part Part) []Step {
	w := &o.Walls[wall]
	sheets, onSheet := o.sheets(wall, w, func(p piece.Piece) int64 { return o.level(p, wall) }, partOf)
	courses := map[int64][]piece.Piece{}
	var levels []int64
	for _, c := range sheets {
		if c.Part == part {
			levels = append(levels, c.level)
		}
	}
	for _, p := range w.Pieces {
		l := o.level(p, wall)
		if partOf(l) != part || w.Found.Stands(p.Row) || onSheet[p.ID] {
			continue
		}
		if courses[l] == nil {
			levels = append(levels, l)
		}
		courses[l] = append(courses[l], p)
	}
	slices.SortFunc(levels, func(a, b int64) int { return cmp.Compare(max(a, -a), max(b, -b)) })
	var out []Step
	for _, l := range slices.Compact(levels) {
		for _, c := range sheets {
			if c.Part == part && c.level == l {
				out = append(out, c.steps(Step{Wall: wall})...)
			}
		}
		for _, pieces := range o.course(w, courses[l]) {
			out = append(out, Step{Wall: wall, Part: part, Pieces: pieces})
		}
	}
	return out
}

// course puts one course in order and parts it into what is set in one go.
func (o ordering) course(w *plan.Wall, pieces []piece.Piece) [][]piece.Piece {
	from := w.Start.Edge
	if s, ok := StartTile(*w, o.full); ok {
		from = s.Tile.Left
	}
	pieces = slices.Clone(pieces)
	slices.SortStableFunc(pieces, func(a, b piece.Piece) int {
		return cmp.Or(cmp.Compare(o.turn(w, a), o.turn(w, b)), outwards(a, b, from), cmp.Compare(a.Tile.Bottom, b.Tile.Bottom))
	})
	var out [][]piece.Piece
	for i, p := range pieces {
		if i > 0 && o.together(w, pieces[i-1], p) {
			out[len(out)-1] = append(out[len(out)-1], p)
			continue
		}
		out = append(out, []piece.Piece{p})
	}
	return out
}

// outwards puts what begins at the start or right of it before what is left of
// it, and on either side the nearer first.
func outwards(a, b piece.Piece, from length.Length) int {
	half := (a.Tile.Right - a.Tile.Left).Half()
	left := func(p piece.Piece) int {
		if p.Tile.Left < from-half {
			return 1
		}
		return 0
	}
	return cmp.Or(cmp.Compare(left(a), left(b)), cmp.Compare((a.Tile.Left-from).Abs(), (b.Tile.Left-from).Abs()))
}

// The turns of a course.
const (
	wholeTiles = iota
	atOpenings
	atBase
	atEnds
)

// turn is when a piece of a course is set.
func (o ordering) turn(w *plan.Wall, p piece.Piece) int {
	if p.Whole {
		return wholeTiles
	}
	turn := atOpenings
	for _, side := range p.Cuts {
		switch w.Shape.Sides[side].Part.Is {
		case survey.LeftEnd, survey.RightEnd:
			return atEnds
		case survey.BaseSegment, survey.HeadEdge:
			turn = atBase
		}
	}
	return turn
}

// together tells whether two pieces after each other are one step: neighbours,
// both whole or cut alike.
func (o ordering) together(w *plan.Wall, a, b piece.Piece) bool {
	if a.Tile.Bottom != b.Tile.Bottom || a.Whole != b.Whole {
		return false
	}
	x, y := o.size[a.ID], o.size[b.ID]
	if !a.Whole && (x.Group != y.Group || x.Size.Width != y.Size.Width || x.Size.Left != y.Size.Left || x.Size.Right != y.Size.Right ||
		len(x.Size.Holes)+len(y.Size.Holes)+len(x.Size.Notches)+len(y.Size.Notches) > 0) {
		return false
	}
	pitch := a.Tile.Right - a.Tile.Left + o.Room.Laid(a.Laid).Joint
	beside := (a.Tile.Left - b.Tile.Left).Abs() == pitch
	turns := a.Whole && o.turnsBack(w, a, b)
	return beside || turns
}

// turnsBack tells whether b is the first whole tile left of the start, after
// the last one on its right, with nothing between the start and it.
func (o ordering) turnsBack(w *plan.Wall, a, b piece.Piece) bool {
	from := w.Start.Edge
	if s, ok := StartTile(*w, o.full); ok {
		from = s.Tile.Left
	}
	pitch := a.Tile.Right - a.Tile.Left + o.Room.Laid(a.Laid).Joint
	return a.Tile.Left >= from-pitch.Half() && b.Tile.Left < from && from-b.Tile.Left <= pitch+pitch.Half()
}
