package niche

import (
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// fitted lets the tile of each layer begin and end on a face by its own thickness (law 8), and gives what the face leaves to each.
func (b *box) fitted(f *plan.Face, layers []layer) []survey.Shape {
	out := make([]survey.Shape, len(layers))
	widest, flush := 0, b.thickness(layers[0])
	for _, l := range layers {
		if flush = min(flush, b.thickness(l)); l.tile == 0 {
			flush = b.room.Tile.Thickness
			break
		}
	}
	for i, l := range layers {
		out[i] = b.shapeOf(f, l, b.thickness(l)-flush)
		if out[i].Solid.Bounds().Width() > out[widest].Solid.Bounds().Width() {
			widest = i
		}
	}
	f.Shape = out[widest]
	most := f.Shape.Solid.Bounds()
	for i, l := range layers {
		box := out[i].Solid.Bounds()
		if box.Left > most.Left {
			f.Shape = f.Shape.Less(plane.Rect{Left: -far, Bottom: l.low, Right: box.Left, Top: l.high}, survey.SideLeft)
		}
		if box.Right < most.Right {
			f.Shape = f.Shape.Less(plane.Rect{Left: box.Right, Bottom: l.low, Right: far, Top: l.high}, survey.SideRight)
		}
	}
	return out
}

func (b *box) thickness(l layer) length.Length { return b.room.Laid(l.tile).Tile.Thickness }

// shapeOf is what a face would leave to the tile of a layer if all of it were laid in that. Beside its back the sides stand out by so much.
func (b *box) shapeOf(f *plan.Face, l layer, proud length.Length) survey.Shape {
	on, face := *b, *f
	if !b.in.Flush {
		on.front = b.thickness(l) + b.room.Joint
	}
	on.shape(&face)
	face.Shape.Sides = f.Shape.Sides
	if f.Is != survey.BackFace || proud <= 0 {
		return face.Shape
	}
	box := face.Shape.Solid.Bounds()
	if b.comesRoundTo(survey.LeftFace) {
		face.Shape = face.Shape.Less(plane.Rect{Left: -far, Bottom: -2 * far, Right: box.Left + proud, Top: 2 * far}, survey.SideLeft)
	}
	if b.comesRoundTo(survey.RightFace) {
		face.Shape = face.Shape.Less(plane.Rect{Left: box.Right - proud, Bottom: -2 * far, Right: far, Top: 2 * far}, survey.SideRight)
	}
	return face.Shape
}

// comesRoundTo tells whether bands of the wall come round to a side.
func (b *box) comesRoundTo(is survey.FaceName) bool {
	found := b.in.Faces[is]
	return found.Tiled && found.Slab == 0 && !found.Own() && !found.AtSill
}
