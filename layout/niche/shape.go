package niche

import (
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// shape works out the region of a face, what bounds it, and where it lies when
// it is folded out: a side beside the back, the sill under it, the top over it.
func (b *box) shape(f *plan.Face) {
	c, deep := b.clear, b.in.Faces[f.Is].Depth
	front := b.front
	if f.Slab {
		front = 0 // a slab comes out to the face of the wall
	}
	var whole, laid plane.Rect
	switch f.Is {
	case survey.BackFace:
		whole = plane.Rect{Bottom: c.Bottom + b.rise, Right: c.Right - c.Left, Top: c.Top}
		laid = inset(whole, b.gap, b.gap, b.gap, b.gap)
		f.Origin.X = c.Left
		b.bound(f, "left", "right", "top", "sill")
		f.Soft = []plane.Side{survey.SideLeft, survey.SideRight, survey.SideHead, survey.SideBase}
	case survey.LeftFace:
		whole = plane.Rect{Bottom: c.Bottom, Right: deep, Top: c.Top}
		laid = inset(whole, front, b.gap, b.gap, b.gap)
		f.Origin.X = c.Left - deep
		b.bound(f, "front", "back", "top", "sill")
		f.Soft = b.frame(survey.SideRight, survey.SideHead, survey.SideBase)
	case survey.RightFace:
		whole = plane.Rect{Bottom: c.Bottom, Right: deep, Top: c.Top}
		laid = inset(whole, b.gap, front, b.gap, b.gap)
		f.Origin.X = c.Right
		b.bound(f, "back", "front", "top", "sill")
		f.Soft = b.frame(survey.SideLeft, survey.SideHead, survey.SideBase)
	case survey.SillFace:
		whole = plane.Rect{Right: c.Right - c.Left, Top: deep}
		laid = inset(whole, b.gap, b.gap, front, b.gap)
		f.Origin = plane.Point{X: c.Left, Y: c.Bottom - deep}
		b.bound(f, "left", "right", "back", "front")
		f.Soft = b.frame(survey.SideHead)
	case survey.TopFace:
		whole = plane.Rect{Right: c.Right - c.Left, Top: deep}
		laid = inset(whole, b.gap, b.gap, b.gap, front)
		f.Origin = plane.Point{X: c.Left, Y: c.Top}
		b.bound(f, "left", "right", "front", "back")
		f.Soft = b.frame(survey.SideBase)
	}
	f.Outline, f.Shape.Solid = plane.Region{b.raked(f.Is, whole)}, plane.Region{b.raked(f.Is, laid)}
	f.Shape.Region, f.Shape.Visible = f.Shape.Solid, f.Shape.Solid
}

// frame lists soft joints of a return: the first, at the back, is counted there
// when there is a back, and here where a window's frame stands.
func (b *box) frame(back plane.Side, others ...plane.Side) []plane.Side {
	if b.in.Faces[survey.BackFace].Tiled {
		return others
	}
	return append([]plane.Side{back}, others...)
}

// bound names the sides of a face by what stands there, in the order left,
// right, head, base. The front stops; all others meet another face, or a frame.
func (b *box) bound(f *plan.Face, names ...string) {
	parts := []survey.Part{{Is: survey.LeftEnd}, {Is: survey.RightEnd}, {Is: survey.HeadEdge}, {Is: survey.BaseSegment}}
	f.Shape.Sides = []survey.Boundary{{Name: "factory"}}
	for i, name := range names {
		side := survey.Boundary{Name: name, Part: parts[i]}
		if name != "front" {
			side.Kind, side.Meets, side.Gap = survey.Corner, true, b.gap
		}
		f.Shape.Sides = append(f.Shape.Sides, side)
	}
}

func inset(r plane.Rect, left, right, bottom, top length.Length) plane.Rect {
	return plane.Rect{Left: r.Left + left, Bottom: r.Bottom + bottom, Right: r.Right - right, Top: r.Top - top}
}

// raked is the ring of a face with its sides in their order. The foot of a side
// follows the fall of the sill.
func (b *box) raked(is survey.FaceName, r plane.Rect) plane.Ring {
	left, right := r.Bottom, r.Bottom
	switch is {
	case survey.LeftFace:
		left, right = left+b.riseAt(r.Left), right+b.riseAt(r.Right)
	case survey.RightFace:
		deep := b.in.Faces[is].Depth
		left, right = left+b.riseAt(deep-r.Left), right+b.riseAt(deep-r.Right)
	}
	corner := func(x, y length.Length, on plane.Side) plane.Corner {
		return plane.Corner{Point: plane.Point{X: x, Y: y}, On: on}
	}
	return plane.Ring{corner(r.Left, left, survey.SideBase), corner(r.Right, right, survey.SideRight),
		corner(r.Right, r.Top, survey.SideHead), corner(r.Left, r.Top, survey.SideLeft)}
}

// riseAt is how high the sill lies over its front so far behind it.
func (b *box) riseAt(behind length.Length) length.Length {
	deep := b.in.Faces[survey.SillFace].Depth
	if deep == 0 {
		return 0
	}
	return length.Length((2*int64(b.rise)*int64(behind) + int64(deep)) / (2 * int64(deep)))
}
