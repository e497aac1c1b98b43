package drawing

import (
	"slices"

	"coursewright/layout"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// TrimPiece is a piece of trim as it is bought, or a bar. One that is cut carries
// the kind of its share besides.
const TrimPiece Kind = "piece trim"

// trimKind sorts a piece of trim into its colour: by what is left of its length.
// Bars are always cut, and count as whole.
func trimKind(p trim.Piece) (class, ink Kind) {
	if !p.Cut() || p.Trim.Bar() {
		return TrimPiece, TrimPiece
	}
	ink = CutKind(piece.Piece{Share: piece.Part(p.Long, p.Trim.Length)})
	return "piece trim" + ink[len("piece"):], ink
}

// trimInk is how trim is filled.
func trimInk(k Kind) Ink {
	if k == TrimPiece {
		return Ink{Fill: Pale, Line: Black, Width: 250}
	}
	return cutInk(k)
}

// trimmed is the wall to the outer edges of its trim; nil where it has none.
func (b *board) trimmed(w layout.Wall) plane.Region {
	if len(w.Trim) == 0 {
		return nil
	}
	if b.folded != nil {
		return b.folded
	}
	return trim.Outline(w.Found, w.Start.Placed, b.plan.Room.Units, b.plan.Room.Joint)
}

// trim draws the pieces of trim along the edges of a wall.
func (b *board) trim(f frame, w layout.Wall) {
	for _, p := range w.Trim {
		class, ink := trimKind(p)
		b.path(Tag{Kind: class, Wall: f.wall, Piece: p.ID}, trimInk(ink), f.rings(p.Face)...)
	}
}

// trimFinished draws trim as it will look.
func (b *board) trimFinished(f frame, w layout.Wall, tile Colour) {
	for _, p := range w.Trim {
		ink := Ink{Fill: tile, Line: Grey, Width: 250}
		if p.Trim.Bar() {
			ink.Fill = Ground
		}
		b.path(Tag{Kind: Finish, Wall: f.wall}, ink, f.rings(p.Face)...)
	}
}

// trimSizes writes what trim is cut to, along it, where it is wide enough.
func (b *board) trimSizes(f frame, w layout.Wall) {
	for _, p := range w.Trim {
		if !p.Cut() {
			continue
		}
		_, ink := trimKind(p)
		ground := trimInk(ink).Fill
		l := Label{Tag: Tag{Kind: Size.on(ground), Wall: f.wall, Piece: p.ID}, Text: b.cutTo(p.Long), Size: b.texts.note, Colour: textOn(ground), Up: p.Edge == survey.LeftEnd || p.Edge == survey.RightEnd}
		box := p.Face.Bounds()
		a, z := f.at(box.Left, box.Top), f.at(box.Right, box.Bottom)
		at := Point{(a.X + z.X) / 2, (a.Y + z.Y) / 2}
		if room := plateRoom(l, at); room.from.X >= a.X && room.to.X <= z.X && room.from.Y >= a.Y && room.to.Y <= z.Y && b.vacant(room) {
			b.plate(l, at, ground)
		}
	}
}

// trimName says what a piece of trim is: "T-B-03, bullnose, cut to 4 3/8"".
func (b *board) trimName(p trim.Piece) string {
	name := p.ID + ", " + p.Trim.Name + ", "
	if p.Cut() {
		name += "cut to "
	}
	return name + p.Size(b.plan.Room.Units)
}

// trimHeights are the outer edges of trim along heads.
func (b *board) trimHeights(walls []layout.Wall) []station {
	var s []station
	for _, w := range walls {
		if t := w.Found.Head.Trim; t != nil && !w.Found.Head.Meets {
			s = append(s, station{l: w.Start.Placed.Head + t.Width + b.plan.Room.Joint, name: "trim " + w.Found.Letter, colour: decided(w.Found.Head.Stops.Free()), rank: rankEnd})
		}
	}
	if equal := slices.CompactFunc(slices.Clone(s), func(x, y station) bool { return x.l == y.l }); len(equal) == 1 {
		equal[0].name = "trim"
		return equal
	}
	return s
}
