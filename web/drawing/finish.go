package drawing

import (
	"maps"
	"slices"

	"coursewright/layout"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// finished draws a wall as it will look: tile and grout in their colours, and
// nothing that tells a cut from a whole tile.
func (b *board) finished(f frame, w layout.Wall) {
	tile, grout := Colour(b.plan.Room.Tile.Colour), Colour(b.plan.Room.Grout)
	b.joints(f, w, grout)
	var whole []*piece.Piece
	cut := map[tint][][]Point{}
	for i := range w.Pieces {
		if p := &w.Pieces[i]; p.Whole {
			whole = append(whole, p)
		} else {
			cut[tintOf(p)] = append(cut[tintOf(p)], f.rings(p.Face)...)
		}
	}
	b.whole(f, whole, tile)
	for _, t := range slices.SortedFunc(maps.Keys(cut), compareTints) {
		b.path(Tag{Kind: Finish, Wall: f.wall}, b.jointed(f, t.laid, b.colourOf(f.wall, t, tile)), cut[t]...)
	}
	b.trimFinished(f, w, tile)
	b.turnedFinished(f, w, tile)
	b.stripsFinished(f, w)
	for i, o := range w.Found.Openings {
		switch e := placed(w, i); {
		case o.Kind == "pipe":
			b.disc(Tag{Kind: Hole, Wall: f.wall}, Ink{Fill: Pale, Line: Grey, Width: 350}, f.at(o.At, o.Up), max(f.scale.On(o.Diameter)/2, leastHole))
		case o.Strip != nil:
		case o.Kind == survey.SoapDish:
			b.path(Tag{Kind: Niche, Wall: f.wall}, Ink{Fill: Pale, Line: Grey, Width: 350}, f.rect(plane.Rect(e)))
		case e.Left < e.Right && e.Bottom < e.Top:
			b.recess(f, o, e, tile)
			b.finishedWithin(f, w, i)
		}
	}
	for _, ring := range f.rings(w.Shape.Region) {
		if area(ring) > 0 {
			b.path(Tag{Kind: Outline, Wall: f.wall}, line(Grey, 350), ring)
		}
	}
}

// jointed is the ink of cut pieces: their joints are as wide as those of whole tiles, which are
// never too thin to be seen.
func (b *board) jointed(f frame, laid int, tile Colour) Ink {
	i := fill(tile)
	if less := thinJoint - f.exact(b.plan.Room.Laid(laid).Joint); less > 0 {
		i.Line, i.Width = Colour(b.plan.Room.Grout), Micron(less)
	}
	return i
}

// recess draws a niche or a window as a frame with its inside in shade.
func (b *board) recess(f frame, o survey.OpeningFound, e survey.Edges, tile Colour) {
	kind, shade := Niche, tile.darker()
	if o.Kind == "window" {
		kind, shade = Window, Pale
	}
	a, z := f.at(e.Left, e.Top), f.at(e.Right, e.Bottom)
	tag, rim := Tag{Kind: kind, Wall: f.wall}, min(6*px, (z.X-a.X)/4, (z.Y-a.Y)/4)
	b.path(tag, Ink{Fill: shade.darker(), Line: Grey, Width: 350}, corners(a, z))
	b.path(tag, fill(shade), corners(Point{a.X + rim, a.Y + rim}, Point{z.X - rim, z.Y - rim}))
}

// darker is a colour in shade.
func (c Colour) darker() Colour {
	return (c>>16&0xff)*85/100<<16 | (c>>8&0xff)*85/100<<8 | (c&0xff)*85/100
}
