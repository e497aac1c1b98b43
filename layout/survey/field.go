package survey

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// TileField is a box round what a wall has for tile between its ends, its base and its head, whatever openings take of it.
type TileField struct {
	most, least plane.Rect // where free ends and a free head leave most and least of it
	wall        WallFound
}

// TileField is that of the wall; of one without openings nothing is known.
func (w WallFound) TileField(units length.System) TileField {
	if !slices.ContainsFunc(w.Openings, func(o OpeningFound) bool { return o.Kind != Pipe }) {
		return TileField{wall: w}
	}
	w.Openings = nil
	f := TileField{wall: w}
	f.most = w.Shape(units, Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.To, Head: w.Head.Stops.To}).Solid.Bounds()
	f.least = f.Placed(Placed{Left: w.Left.Stops.To, Right: w.Right.Stops.From, Head: w.Head.Stops.From})
	return f
}

// Placed is the box with the free marks placed.
func (f *TileField) Placed(p Placed) plane.Rect {
	box := f.most
	if e := f.wall.Left; !e.Meets && e.Stops.Free() {
		box.Left += p.Left - e.Stops.From
	}
	if e := f.wall.Right; !e.Meets && e.Stops.Free() {
		box.Right -= e.Stops.To - p.Right
	}
	if h := f.wall.Head; !h.Meets && h.Stops.Free() {
		box.Top -= h.Stops.To - p.Head
	}
	return box
}

// Least is the box wherever they are placed.
func (f *TileField) Least() plane.Rect { return f.least }

// Sides tells in one direction which edges of an opening have tile of a field beyond them: those that have none
// cut no tile there.
type Sides struct{ Low, High bool }

// TiledAcross tells it of the edges of an opening along the wall.
func (o *OpeningFound) TiledAcross(e Edges, field plane.Rect) Sides {
	return Sides{e.Left > field.Left, e.Right < field.Right}
}

// TiledUp tells it of the lower and the upper edge. There is none under a doorway.
func (o *OpeningFound) TiledUp(e Edges, field plane.Rect) Sides {
	return Sides{e.Bottom > field.Bottom && !o.Doorway, e.Top < field.Top}
}

// AsMeasured is where the edges of an opening stand that is measured.
func (o *OpeningFound) AsMeasured() Edges {
	return Edges{Left: o.Left.From, Right: o.Left.From + o.Width.From, Bottom: o.Bottom.From, Top: o.Bottom.From + o.Height.From}
}
