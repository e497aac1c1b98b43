package drawing

import (
	"coursewright/layout"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// Set is a piece that stands already, SetLine the top edge of the last course
// that does.
const (
	Set     Kind = "piece set"
	SetLine Kind = "set-line"
)

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

// pieces draws the tiles of a wall on the ground of their joints: whole ones
// first, so that the heavier edges of the cuts lie on top.
func (b *board) pieces(f frame, w layout.Wall) {
	b.joints(f, w, Grout)
	var whole []*piece.Piece
	for i := range w.Pieces {
		if p := &w.Pieces[i]; b.kind(f, *p) == Whole {
			whole = append(whole, p)
		}
	}
	b.whole(f, whole, White)
	for _, p := range w.Pieces {
		if k := b.kind(f, p); k != Whole {
			b.path(Tag{Kind: k, Wall: f.wall, Piece: p.ID}, cutInk(k), f.rings(p.Face)...)
		}
	}
	b.trim(f, w)
	b.cutEdges(f, w.Pieces)
	b.sheetLines(f)
	b.setLine(f)
}

// joints draws what shows between the tiles.
func (b *board) joints(f frame, w layout.Wall, grout Colour) {
	if r := b.trimmed(w); r != nil {
		b.path(Tag{Kind: Joints, Wall: f.wall}, fill(grout), f.rings(r)...)
		return
	}
	b.path(Tag{Kind: Joints, Wall: f.wall}, fill(grout), f.rings(w.Shape.Region)...)
}

// kind sorts a piece as it is drawn: what is set already is drawn as one thing,
// however it was cut.
func (b *board) kind(f frame, p piece.Piece) Kind {
	if b.plan.Walls[f.wall].Found.Stands(p.Row) {
		return Set
	}
	return CutKind(p)
}

// setLine draws the top edge of the courses that stand, as measured.
func (b *board) setLine(f frame) {
	w := b.plan.Walls[f.wall].Found
	if w.Set == nil {
		return
	}
	b.Elements = append(b.Elements, Path{Tag: Tag{Kind: SetLine, Wall: f.wall}, Ink: broken(Black, 500, Hidden), Open: true,
		Rings: [][]Point{{f.at(0, w.Set.Left), f.at(w.Width, w.Set.Right)}}})
}

// cutEdges draws the edges that are cut, heavier than the factory edges.
func (b *board) cutEdges(f frame, pieces []piece.Piece) {
	var all [][]Point
	for _, p := range pieces {
		if k := b.kind(f, p); k == Whole || k == Set {
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
