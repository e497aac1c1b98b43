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

// EndWidths are the widths of the pieces at both ends by course; a course
// without a piece at an end has none there. It is for level courses.
func (w *Wall) EndWidths(s Setting) (left, right map[int]length.Length) {
	left, right = map[int]length.Length{}, map[int]length.Length{}
	g := w.ground(s.Placed)
	f := g.profile
	if len(w.free) > 0 {
		f = f.with(s.Placed)
	}
	shape := lazy{w: w, ground: g, placed: s.Placed}
	for _, row := range w.rowsOver(s, g.box) {
		at, plain := w.plainWidths(f, g.box, row)
		if !plain {
			at = w.cutRow(g, &shape, row).ends
		}
		put(left, row.Course, at[0])
		put(right, row.Course, at[1])
	}
	return left, right
}

func put(m map[int]length.Length, course int, wide length.Length) {
	if wide != absent {
		m[course] = wide
	}
}

// plainWidths are the widths of a plain row, by arithmetic.
func (w *Wall) plainWidths(f *profile, box plane.Rect, row bond.Row) (widths, bool) {
	if f.band(row.Low, row.High) < 0 {
		return noWidths, false
	}
	in, ok := f.row(row.Low, row.High, nil)
	at, sealed := noWidths, false
	ok = ok && w.stubs(in, row.First, func(s stub) {
		sealed = sealed || s.sealed()
		var cut [2]bool
		for i, c := range s.cuts {
			cut[i] = c != nil && c.edge.Side() == [...]plane.Side{survey.SideLeft, survey.SideRight}[i]
		}
		n := length.DivFloor(s.left-row.First, row.Pitch)
		tile := plane.Rect{Left: row.First + length.Length(n)*row.Pitch, Bottom: row.Low, Top: row.High}
		tile.Right = tile.Left + row.Width
		w.addEnds(&at, cut, plane.Rect{Left: s.left, Right: s.right}, tile, box, s.wide)
	})
	return at, ok && !sealed
}

// pieceEnds adds a piece to the widths of its row.
func (w *Wall) pieceEnds(at *widths, p *piece.Piece, box plane.Rect) {
	var cut [2]bool
	for _, e := range p.Across {
		cut[0] = cut[0] || e.Side() == survey.SideLeft
		cut[1] = cut[1] || e.Side() == survey.SideRight
	}
	w.addEnds(at, cut, p.Face.Bounds(), p.Tile, box, p.Wide)
}

// addEnds adds what stands at the ends: what they cut, and what ends at a corner by
// the tile's own edge.
func (w *Wall) addEnds(at *widths, cut [2]bool, seen, tile, box plane.Rect, wide length.Length) {
	far := w.room.Sealant + w.room.Joint
	if cut[0] || seen.Left == tile.Left && w.leftAt(tile.Bottom, tile.Top, box.Left) >= tile.Left-far {
		at.add(0, wide)
	}
	if cut[1] || seen.Right == tile.Right && w.rightAt(tile.Bottom, tile.Top, box.Right) <= tile.Right+far {
		at.add(1, wide)
	}
}

// leftAt is how far right the left end of the tile field stands between two
// heights, rightAt how far left the right end does.
func (w *Wall) leftAt(low, high, usual length.Length) length.Length {
	return w.endAt(survey.SideLeft, low, high, usual, func(a, b length.Length) length.Length { return max(a, b) })
}

func (w *Wall) rightAt(low, high, usual length.Length) length.Length {
	return w.endAt(survey.SideRight, low, high, usual, func(a, b length.Length) length.Length { return min(a, b) })
}

func (w *Wall) endAt(side plane.Side, low, high, usual length.Length, worse func(a, b length.Length) length.Length) length.Length {
	out := usual
	for _, ring := range w.field.Solid {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.On == side && min(a.Y, b.Y) < high && max(a.Y, b.Y) > low {
				out = worse(out, worse(a.X, b.X))
			}
		}
	}
	return out
}
