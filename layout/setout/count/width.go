package count

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// widths are those of the narrowest piece of a row at the left end and at the right;
// absent where there is none.
type widths [2]length.Length

var noWidths = widths{absent, absent}

func (n *widths) add(end int, wide length.Length) {
	if n[end] == absent || wide < n[end] {
		n[end] = wide
	}
}

// widths are those of a plain row, by arithmetic.
func (f *profile) widths(box plane.Rect, row bond.Row) (widths, bool) {
	if f.band(row.Low, row.High) < 0 {
		return noWidths, false
	}
	in, ok := f.row(row.Low, row.High, nil)
	at, sealed, both := noWidths, false, bothEnds{f.w, box}
	ok = ok && stubs(in, row, func(s stub) {
		sealed = sealed || s.sealed()
		n := length.DivFloor(s.left-row.First, row.Pitch)
		p := endPiece{seen: plane.Rect{Left: s.left, Right: s.right}, wide: s.wide}
		p.tile = plane.Rect{Left: row.First + length.Length(n)*row.Pitch, Bottom: row.Low, Top: row.High}
		p.tile.Right = p.tile.Left + row.Width
		for i, c := range s.cuts {
			p.cut[i] = c != nil && c.edge.Side() == [...]plane.Side{survey.SideLeft, survey.SideRight}[i]
		}
		both.add(&at, p)
	})
	return at, ok && !sealed
}

// bothEnds are the ends of a wall whose tile field a box holds.
type bothEnds struct {
	w   *facts
	box plane.Rect
}

// endPiece is a piece that may stand at an end of the wall.
type endPiece struct {
	cut        [2]bool    // by the left end and by the right one
	seen, tile plane.Rect // what is seen of the piece, and the tile it is of
	wide       length.Length
}

// addPiece adds a piece to the widths of its row.
func (e bothEnds) addPiece(to *widths, p *piece.Piece) {
	at := endPiece{seen: p.Face.Bounds(), tile: p.Tile, wide: p.Wide}
	for _, by := range p.Across {
		at.cut[0] = at.cut[0] || by.Side() == survey.SideLeft
		at.cut[1] = at.cut[1] || by.Side() == survey.SideRight
	}
	e.add(to, at)
}

// add adds what stands at the ends: what they cut, and what ends at a corner by
// the tile's own edge.
func (e bothEnds) add(to *widths, p endPiece) {
	far := e.w.room.Sealant + e.w.room.Joint
	if p.cut[0] || p.seen.Left == p.tile.Left && e.left(p.tile) >= p.tile.Left-far {
		to.add(0, p.wide)
	}
	if p.cut[1] || p.seen.Right == p.tile.Right && e.right(p.tile) <= p.tile.Right+far {
		to.add(1, p.wide)
	}
}

// left is how far right the left end of the tile field stands beside a tile, and
// right how far left the right end does.
func (e bothEnds) left(tile plane.Rect) length.Length {
	return e.beside(tile, survey.SideLeft, e.box.Left, func(a, b length.Length) length.Length { return max(a, b) })
}

func (e bothEnds) right(tile plane.Rect) length.Length {
	return e.beside(tile, survey.SideRight, e.box.Right, func(a, b length.Length) length.Length { return min(a, b) })
}

func (e bothEnds) beside(tile plane.Rect, side plane.Side, usual length.Length, worse func(a, b length.Length) length.Length) length.Length {
	out := usual
	for _, ring := range e.w.field.Solid {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.On == side && min(a.Y, b.Y) < tile.Top && max(a.Y, b.Y) > tile.Bottom {
				out = worse(out, worse(a.X, b.X))
			}
		}
	}
	return out
}
