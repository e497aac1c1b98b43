package drawing

import (
	"slices"

	"coursewright/layout"
	"coursewright/layout/mosaic"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
)

// Setting draws one wall small, for a phone: what is set hatched, what is to be
// set next filled, the rest white. It bears no text; the page says all of it.
// here and set hold ids of pieces. The wall must be an index into p.Walls;
// any other gives an empty scene.
func Setting(p layout.Plan, wall int, here []string, set map[string]bool) Scene {
	if wall < 0 || wall >= len(p.Walls) {
		return Scene{}
	}
	const wide, high, edge = 90 * Millimetre, 62 * Millimetre, 2500
	b := newBoard(p, wrapTexts)
	w := p.Walls[wall]
	r := extents(w)
	scale := fit(r.Width(), wide-2*edge).or(fit(r.Height(), high-2*edge-ground))
	f := frame{wall: wall, scale: scale, origin: Point{edge - scale.On(r.Left), edge + scale.On(r.Top)}}
	b.Scale, b.Width, b.Height = scale, scale.On(r.Width())+2*edge, scale.On(r.Height())+2*edge+ground
	b.base(f, w, false)
	pieces := w.All()
	for _, t := range w.Trim {
		pieces = append(pieces, piece.Piece{ID: t.ID, Face: t.Face})
	}
	b.openings(f, w)
	next := b.progress(f, pieces, here, set)
	b.sheetLines(f)
	b.outline(f, w)
	b.pipes(f, w)
	b.levelLine(-1, f.origin.Y, 500, b.Width-500)
	next()
	b.Title = "Where it stands on wall " + w.Found.Letter + ", " + w.Found.Name
	b.Describe = "Filled: what is set next. Hatched: what is set. The long level line is that of the laser."
	return b.Scene
}

// SettingFace draws one face of a niche or window, or the top of a wall, in the same way, seen
// from the room.
func SettingFace(p layout.Plan, wall int, face *plan.Face, here []string, set map[string]bool) Scene {
	if wall < 0 || wall >= len(p.Walls) {
		return Scene{}
	}
	const wide, high, edge = 90 * Millimetre, 62 * Millimetre, 2500
	b := newBoard(p, wrapTexts)
	r := face.Outline.Bounds()
	scale := fit(r.Width(), wide-2*edge).or(fit(r.Height(), high-2*edge))
	f := frame{wall: wall, scale: scale, origin: Point{edge - scale.On(r.Left), edge + scale.On(r.Top)}}
	b.Scale, b.Width, b.Height = scale, scale.On(r.Width())+2*edge, scale.On(r.Height())+2*edge
	b.path(Tag{Kind: Joints, Wall: wall}, Ink{Fill: Pale, Line: Black, Width: 500}, f.rings(face.Outline)...)
	pieces := slices.Clone(face.Pieces)
	for _, t := range face.Trim {
		pieces = append(pieces, piece.Piece{ID: t.ID, Face: t.Face})
	}
	next := b.progress(f, pieces, here, set)
	b.sheeted(f, func(m *mosaic.Field) bool { return m.Face == face })
	next()
	b.Title = "Where it stands on the " + face.Name()
	b.Describe = "The face as seen from the room. Filled: what is set next. Hatched: what is set."
	return b.Scene
}

// progress draws what is set hatched and the rest white; what it gives back draws
// what is set next.
func (b *board) progress(f frame, pieces []piece.Piece, here []string, set map[string]bool) func() {
	next := map[string]bool{}
	for _, id := range here {
		next[id] = true
	}
	b.together(f, pieces, Ink{Fill: White, Line: Grout, Width: 180}, Whole, func(p piece.Piece) bool { return !set[p.ID] && !next[p.ID] })
	b.together(f, pieces, Ink{Fill: Pale, Hatch: Narrow, Line: Black, Width: 180}, Whole, func(p piece.Piece) bool { return set[p.ID] && !next[p.ID] })
	return func() {
		b.together(f, pieces, Ink{Fill: Blue, Line: Black, Width: 500}, KeyHere, func(p piece.Piece) bool { return next[p.ID] })
	}
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
