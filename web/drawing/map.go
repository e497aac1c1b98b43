package drawing

import (
	"fmt"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
)

// mapOf draws, of a wall laid in a pattern, the worst run against start and line: a
// field for each, in the colours that cuts of that share have on the wall. The set-out
// found is marked with a cross. It stands where the slide curve of courses does.
func mapOf(plan layout.Plan, wall int) Scene {
	b := newBoard(plan, wrapTexts)
	w := plan.Walls[wall]
	m := w.Start.Map
	b.Width, b.Height, b.Title = slideWide, mapHigh, "Map of the "+wallName(w.Found.Name)
	lo, hi := MapField()
	at := func(column, row int) Point {
		return Point{lo.X + Micron(int64(column)*int64(hi.X-lo.X)/int64(m.Columns)), hi.Y - Micron(int64(row)*int64(hi.Y-lo.Y)/int64(m.Rows()))}
	}
	b.fields(m, wall, at)
	tape := func(l length.Length) string { return l.Tape(plan.Room.Units) }
	column := int((w.Start.Edge - m.Edge + m.Across/2) / m.Across)
	row := int((plan.Setout.Line - m.Line + m.Up/2) / m.Up)
	a, z := at(column, row), at(column+1, row+1)
	b.path(Tag{Kind: Start, Wall: wall}, line(Blue, 700), corners(Point{a.X - 300, z.Y - 300}, Point{z.X + 300, a.Y + 300}))
	note := Label{Tag: Tag{Kind: Note, Wall: wall}, Size: b.texts.note, Colour: Black}
	say := func(text string, at Point, anchor Anchor, c Colour) {
		note.Text, note.At, note.Anchor, note.Colour = text, at, anchor, c
		b.label(note)
	}
	say("worst cut, by start (along) and line (up)", Point{lo.X, lo.Y - 2000}, Left, Black)
	say(tape(m.Edge), Point{lo.X, hi.Y + 4000}, Left, Black)
	say(tape(m.Edge+m.Reach), Point{hi.X, hi.Y + 4000}, Right, Black)
	say(tape(w.Start.Edge), Point{min(max((a.X+z.X)/2, lo.X+24*Millimetre), hi.X-24*Millimetre), hi.Y + 4000}, Middle, Blue)
	say(tape(m.Line), Point{lo.X - 1500, hi.Y}, Right, Black)
	say(tape(m.Line+m.Rise), Point{lo.X - 1500, lo.Y + 2500}, Right, Black)
	b.Describe = fmt.Sprintf("Worst cut against start and line over one box of phases. Chosen: start %s, line %s.", tape(w.Start.Edge), tape(plan.Setout.Line))
	return b.Scene
}

const mapHigh = slideHigh + 6*Millimetre

// MapSize is the size of a map, and MapField the corners of its field of phases.
func MapSize() Point { return Point{slideWide, mapHigh} }

// MapField gives the upper left and the lower right corner of the field of phases.
func MapField() (lo, hi Point) {
	return Point{slideLeft + 8*Millimetre, 7 * Millimetre}, Point{slideWide - slideRight, mapHigh - 6*Millimetre}
}

// fields draws the map, one path for each colour.
func (b *board) fields(m *plan.Map, wall int, at func(column, row int) Point) {
	rings := map[Kind][][]Point{}
	for row := range m.Rows() {
		for column := range m.Columns {
			_, _, share := m.At(column, row)
			k := mapKind(share, m.Unworkable[row*m.Columns+column])
			a, z := at(column, row), at(column+1, row+1)
			rings[k] = append(rings[k], corners(Point{a.X, z.Y}, Point{z.X, a.Y}))
		}
	}
	for _, k := range []Kind{CutHalf, CutThird, CutFifth, CutLeast} {
		if len(rings[k]) > 0 {
			ink := cutInk(k)
			ink.Line = None
			b.path(Tag{Kind: k, Wall: wall}, ink, rings[k]...)
		}
	}
}

// mapKind is the kind of the pieces of a share.
func mapKind(s piece.Share, unworkable int) Kind {
	part := func(n int64) piece.Share { return piece.Share{Num: 1, Den: n} }
	switch {
	case unworkable > 0 || s.Less(part(5)):
		return CutLeast
	case s.Less(part(3)):
		return CutFifth
	case s.Less(part(2)):
		return CutThird
	}
	return CutHalf
}
