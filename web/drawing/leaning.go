package drawing

import (
	"coursewright/layout/cuts"
	"coursewright/layout/piece"
)

// toldByLine tells whether a piece is told by its line of the cut schedule: its tile leans, so that how wide and high it
// stands on the wall is no size to cut. So is one that is cut along an edge of its tile where no corner of that is square, as
// plumb through a chevron; a fence holds a hexagon that is cut so.
func toldByLine(p *piece.Piece) bool {
	return p.Outline != nil && !boxed(p.Outline) && (p.Kind&piece.Angle != 0 || cuts.Group{Outline: p.Outline}.Slanted())
}

// lineIn writes in a piece the line of the cut schedule that it is cut by: level, or else along its tile where that
// leans by 45°.
func (b *board) lineIn(f frame, p *piece.Piece) {
	text := b.lines[p.ID]
	if text == "" {
		return
	}
	ground := cutInk(CutKind(*p)).Fill
	l := Label{Tag: Tag{Kind: Size.on(ground), Wall: f.wall, Piece: p.ID}, Colour: textOn(ground), Text: text}
	face := f.rings(p.Visible)
	for l.Size = b.texts.size; l.Size >= b.texts.least; l.Size -= px {
		for _, l.Turn = range []Turn{0, Rising, Falling} {
			if at, ok := b.roomIn(l, []string{text}, l.Turn.along(face), func(t box) bool { return l.Turn != 0 || b.vacant(t) }); ok {
				b.leaningPlate(l, at, ground)
				return
			}
		}
	}
}

// leaningPlate draws a label on its plate, its middle at a place as that lies along the label.
func (b *board) leaningPlate(l Label, at Point, ground Colour) {
	if l.Turn == 0 {
		b.plate(l, at, ground)
		return
	}
	room := plateRoom(l, at)
	plate := corners(room.from, room.to)
	for i, p := range plate {
		plate[i] = l.Turn.back(p)
	}
	b.path(Tag{Kind: SizePlate, Wall: l.Wall}, fill(ground), plate)
	l.Anchor, l.At = Middle, l.Turn.back(Point{at.X, at.Y + drop(l.Size)})
	b.label(l)
}

// Turn is how many degrees a text leans from level, to the left.
type Turn int8

// A text along a tile that leans reads up or down.
const (
	Rising  Turn = 45
	Falling Turn = -45
)

// root is 1/√2, in parts of a million.
const root = 707107

// On is a place on paper as it lies along texts that lean so.
func (t Turn) On(p Point) Point {
	switch {
	case t > 0:
		return Point{(p.X - p.Y) * root / 1_000_000, (p.X + p.Y) * root / 1_000_000}
	case t < 0:
		return Point{(p.X + p.Y) * root / 1_000_000, (p.Y - p.X) * root / 1_000_000}
	}
	return p
}

// back undoes On.
func (t Turn) back(p Point) Point { return (-t).On(p) }

func (t Turn) along(face [][]Point) [][]Point {
	if t == 0 {
		return face
	}
	out := make([][]Point, len(face))
	for i, ring := range face {
		out[i] = make([]Point, len(ring))
		for k, p := range ring {
			out[i][k] = t.On(p)
		}
	}
	return out
}
