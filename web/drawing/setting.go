package drawing

import (
	"coursewright/layout"
	"coursewright/layout/piece"
)

// Setting draws one wall small, for a phone: what is set hatched, what is to be
// set next filled, the rest white. It bears no text; the page says all of it.
// here and set hold ids of pieces. The wall must be an index into plan.Walls;
// any other gives an empty scene.
func Setting(plan layout.Plan, wall int, here []string, set map[string]bool) Scene {
	if wall < 0 || wall >= len(plan.Walls) {
		return Scene{}
	}
	const wide, high, edge = 90 * Millimetre, 62 * Millimetre, 2500
	b := newBoard(plan, wrapTexts)
	w := plan.Walls[wall]
	r := extents(w)
	scale := fit(r.Width(), wide-2*edge).or(fit(r.Height(), high-2*edge-ground))
	f := frame{wall: wall, scale: scale, origin: Point{edge - scale.On(r.Left), edge + scale.On(r.Top)}}
	b.Scale, b.Width, b.Height = scale, scale.On(r.Width())+2*edge, scale.On(r.Height())+2*edge+ground
	b.base(f, w, false)
	next := map[string]bool{}
	for _, id := range here {
		next[id] = true
	}
	b.together(f, w.Pieces, Ink{Fill: White, Line: Grout, Width: 180}, Whole, func(p piece.Piece) bool { return !set[p.ID] && !next[p.ID] })
	b.together(f, w.Pieces, Ink{Fill: Pale, Hatch: Narrow, Line: Black, Width: 180}, Whole, func(p piece.Piece) bool { return set[p.ID] && !next[p.ID] })
	b.outline(f, w)
	b.openings(f, w)
	b.levelLine(-1, f.origin.Y, 500, b.Width-500)
	b.together(f, w.Pieces, Ink{Fill: Blue, Line: Black, Width: 500}, KeyHere, func(p piece.Piece) bool { return next[p.ID] })
	b.Title = "Where it stands on wall " + w.Found.Letter + ", " + w.Found.Name
	b.Describe = "Filled: what is set next. Hatched: what is set. The red line is the level line."
	return b.Scene
}

// together draws the faces of some pieces as one shape.
func (b *board) together(f frame, pieces []piece.Piece, ink Ink, kind Kind, which func(piece.Piece) bool) {
	var rings [][]Point
	for _, p := range pieces {
		if which(p) {
			rings = append(rings, f.rings(p.Face)...)
		}
	}
	if len(rings) > 0 {
		b.path(Tag{Kind: kind, Wall: f.wall}, ink, rings...)
	}
}
