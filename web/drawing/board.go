package drawing

import (
	"coursewright/layout"
	"coursewright/layout/length"
)

// Options choose how much a drawing shows.
type Options struct {
	Scale   Scale // zero: fit the screen
	Sheet   bool  // for paper: larger text, and the id of every cut piece
	Handles bool  // with what a person may drag
}

func (o Options) texts() texts {
	if o.Sheet {
		return sheetTexts
	}
	return screenTexts
}

// board is a scene in the making.
type board struct {
	Scene
	plan  layout.Plan
	texts texts
}

func (b *board) path(t Tag, ink Ink, rings ...[]Point) {
	b.Elements = append(b.Elements, Path{Tag: t, Ink: ink, Rings: rings})
}

func (b *board) chain(t Tag, ink Ink, pts ...Point) {
	b.Elements = append(b.Elements, Path{Tag: t, Ink: ink, Rings: [][]Point{pts}, Open: true})
}

func (b *board) disc(t Tag, ink Ink, c Point, r Micron) {
	b.Elements = append(b.Elements, Disc{Tag: t, Ink: ink, Centre: c, Radius: r})
}

func (b *board) label(l Label) { b.Elements = append(b.Elements, l) }

// plate is a label on a ground of its own, centred on at.
func (b *board) plate(l Label, at Point, ground Colour) {
	room := plateRoom(l, at)
	kind := Plate
	if l.Kind == Size {
		kind = SizePlate
	}
	b.path(Tag{Kind: kind, Wall: l.Wall}, fill(ground),
		corners(room.from, room.to))
	b.label(centred(l, at))
}

// plateRoom is the room of the ground that a label stands on with its middle at a point.
func plateRoom(l Label, at Point) box {
	w, h := l.width()/2+l.Size/8, l.Size*62/100
	if l.Up {
		w, h = h, w
	}
	return box{Point{at.X - w, at.Y - h}, Point{at.X + w, at.Y + h}}
}

// centred puts a label's middle at a point.
func centred(l Label, at Point) Label {
	l.Anchor, l.At = Middle, Point{at.X, at.Y + drop(l.Size)}
	if l.Up {
		l.At = Point{at.X + drop(l.Size), at.Y}
	}
	return l
}

// figure writes a length as the person's tape shows it; millimetres without
// their unit, which the heading says once.
func (b *board) figure(l length.Length) string {
	u := b.plan.Room.Units
	if u == length.Metric {
		return l.Plain(u, u.Step())
	}
	return l.Tape(u)
}

// cutTo writes a size to cut as the tape shows it, rounded down as in the cut
// schedule, so that the piece is never larger than its place.
func (b *board) cutTo(l length.Length) string { return b.figure(l.FloorTo(b.plan.Room.Units.Step())) }

// signed writes a height over the level line: up +, down −.
func (b *board) signed(l length.Length) string {
	switch {
	case l > 0:
		return "+" + b.figure(l)
	case l < 0:
		return "−" + b.figure(-l)
	}
	return "±0"
}
