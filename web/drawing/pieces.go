package drawing

import (
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// manyWhole is how many whole tiles a drawing keeps apart; more than that on
// one wall become one path.
const manyWhole = 2000

// CutKind sorts a piece into its colour: by its least face over the tile.
func CutKind(p piece.Piece) Kind {
	switch {
	case p.Whole:
		return Whole
	case p.Sliver || p.Share.Num*5 < p.Share.Den:
		return CutLeast
	case p.Share.Num*3 < p.Share.Den:
		return CutFifth
	case p.Share.Num*2 < p.Share.Den:
		return CutThird
	}
	return CutHalf
}

// pieces draws the tiles of a wall: whole ones first, so that the heavier
// edges of the cuts lie on top.
func (b *board) pieces(f frame, pieces []piece.Piece) {
	whole := 0
	for _, p := range pieces {
		if p.Whole {
			whole++
		}
	}
	b.whole(f, pieces, whole > manyWhole)
	for _, p := range pieces {
		if !p.Whole {
			k := CutKind(p)
			b.path(Tag{Kind: k, Wall: f.wall, Piece: p.ID}, cutInk(k), f.rings(p.Face)...)
		}
	}
	b.cutEdges(f, pieces)
}

// cutEdges draws the edges that are cut, heavier than the factory edges.
func (b *board) cutEdges(f frame, pieces []piece.Piece) {
	var all [][]Point
	for _, p := range pieces {
		if p.Whole {
			continue
		}
		edges(p.Face, func(s plane.Side) bool { return s != 0 }, func(a, z plane.Corner) {
			all = append(all, []Point{f.at(a.X, a.Y), f.at(z.X, z.Y)})
		})
	}
	if len(all) > 0 {
		b.Elements = append(b.Elements, Path{Tag: Tag{Kind: Cut, Wall: f.wall}, Ink: line(Black, 500), Rings: all, Open: true})
	}
}

// sizes writes in every cut piece what it is cut to.
func (b *board) sizes(f frame, pieces []piece.Piece) {
	for _, p := range pieces {
		b.written(f, p)
	}
}

func (b *board) whole(f frame, pieces []piece.Piece, merge bool) {
	var all [][]Point
	for _, p := range pieces {
		if !p.Whole {
			continue
		}
		rings := f.rings(p.Face)
		if merge {
			all = append(all, rings...)
			continue
		}
		b.path(Tag{Kind: Whole, Wall: f.wall, Piece: p.ID}, cutInk(Whole), rings...)
	}
	if merge {
		b.path(Tag{Kind: Whole, Wall: f.wall}, cutInk(Whole), all...)
	}
}

// written puts a cut piece's size, and on a sheet its id, inside the piece
// where they fit.
func (b *board) written(f frame, p piece.Piece) {
	if p.Whole {
		return
	}
	text, face := b.cutSize(p), f.rings(p.Visible)
	tag := Tag{Kind: Size, Wall: f.wall, Piece: p.ID}
	ground := cutInk(CutKind(p)).Fill
	both := Label{Tag: tag, Text: p.ID + apart + text, Colour: textOn(ground)}
	only := Label{Tag: tag, Text: text, Colour: textOn(ground)}
	if b.texts.id > 0 && b.fits(both, face, b.texts.id, b.texts.id, ground) {
		return
	}
	b.fits(only, face, b.texts.size, b.texts.least, ground)
}

// cutSize is the size or sizes a piece was cut to.
func (b *board) cutSize(p piece.Piece) string {
	narrow, low := p.Wide < p.Tile.Right-p.Tile.Left, p.High < p.Tile.Top-p.Tile.Bottom
	switch {
	case narrow && low:
		return b.figure(p.Wide) + " × " + b.figure(p.High)
	case low:
		return b.figure(p.High)
	case narrow:
		return b.figure(p.Wide)
	}
	return "hole"
}

// fits tries a label level, then reading up, at falling sizes, and draws it at
// the first place inside the face.
func (b *board) fits(l Label, face [][]Point, from, to Micron, ground Colour) bool {
	for size := from; size >= to; size -= 500 {
		for _, up := range []bool{false, true} {
			l.Size, l.Up = size, up
			if at, ok := room(l, face); ok {
				b.plate(l, at, ground)
				return true
			}
		}
	}
	return false
}

// room finds where a label lies wholly inside a face: its middle, or
// another of 25 places spread over it.
func room(l Label, face [][]Point) (Point, bool) {
	if len(face) == 0 || l.Text == "" {
		return Point{}, false
	}
	w, h := TextWidth(l.Text, l.Size)+l.Size/2, l.Size*5/4
	if l.Up {
		w, h = h, w
	}
	lo, hi := extent(face)
	eighths := []Micron{4, 2, 6, 1, 7}
	for _, v := range eighths {
		for _, u := range eighths {
			at := Point{lo.X + (hi.X-lo.X)*u/8, lo.Y + (hi.Y-lo.Y)*v/8}
			if clear(face, Point{at.X - w/2, at.Y - h/2}, Point{at.X + w/2, at.Y + h/2}) {
				return at, true
			}
		}
	}
	return Point{}, false
}

func extent(face [][]Point) (lo, hi Point) {
	lo, hi = face[0][0], face[0][0]
	for _, ring := range face {
		for _, p := range ring {
			lo = Point{min(lo.X, p.X), min(lo.Y, p.Y)}
			hi = Point{max(hi.X, p.X), max(hi.Y, p.Y)}
		}
	}
	return lo, hi
}

// clear tells whether the box a, b lies inside the face: no edge runs through
// it and its middle is inside.
func clear(face [][]Point, a, b Point) bool {
	mid, in := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, false
	for _, ring := range face {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if crosses(p, q, a, b) {
				return false
			}
			if (p.Y > mid.Y) != (q.Y > mid.Y) && (mid.X < p.X+(q.X-p.X)*(mid.Y-p.Y)/(q.Y-p.Y)) {
				in = !in
			}
		}
	}
	return in
}

// crosses tells whether the segment p, q has a part inside the open box a, b.
func crosses(p, q, a, b Point) bool {
	if max(p.X, q.X) <= a.X || min(p.X, q.X) >= b.X || max(p.Y, q.Y) <= a.Y || min(p.Y, q.Y) >= b.Y {
		return false
	}
	var left, right bool
	for _, c := range corners(a, b) {
		side := (q.X-p.X)*(c.Y-p.Y) - (q.Y-p.Y)*(c.X-p.X)
		left, right = left || side > 0, right || side < 0
	}
	return left && right
}

// edges calls do for every edge of a region that lies on a boundary so named.
func edges(r plane.Region, on func(plane.Side) bool, do func(a, b plane.Corner)) {
	for _, ring := range r {
		for i, c := range ring {
			if on(c.On) {
				do(c, ring[(i+1)%len(ring)])
			}
		}
	}
}
