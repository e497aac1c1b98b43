package drawing

import (
	"cmp"
	"slices"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// A small picture counts in about half pixels, so that its figures are short.
const (
	ThumbWidth  Micron = 400
	ThumbHeight Micron = 250
	thumbEdge          = 6
	thumbGap           = 15
	thumbLine          = 3
	mostPatches        = 130 // more pieces than the small picture can tell apart
)

// Thumb draws the wrap of a plan as a small picture: outlines, openings, the level
// line and the cut pieces in their colours. It bears no text. A page shows it at
// any size. A plan without walls gives an empty scene.
func Thumb(plan layout.Plan) Scene {
	if len(plan.Walls) == 0 {
		return Scene{}
	}
	b := &board{plan: plan}
	b.Title, b.Width, b.Height = "The walls of "+plan.Room.Title, ThumbWidth, ThumbHeight
	var over plane.Rect
	wide := length.Length(0)
	for _, w := range plan.Walls {
		r := extents(w)
		over.Top, over.Bottom = max(over.Top, r.Top), min(over.Bottom, r.Bottom)
		wide += r.Width()
	}
	gaps := Micron(len(plan.Walls)-1) * thumbGap
	b.Scale = fit(wide, max(ThumbWidth-2*thumbEdge-gaps, ThumbWidth/4)).or(fit(over.Height(), ThumbHeight-2*thumbEdge))
	used := b.Scale.On(wide) + gaps
	x, zero := (ThumbWidth-used)/2, thumbEdge+b.Scale.On(over.Top)+(ThumbHeight-2*thumbEdge-b.Scale.On(over.Height()))/2
	left := mostPatches
	for i, w := range plan.Walls {
		r := extents(w)
		left = b.thumbWall(left, frame{wall: i, scale: b.Scale, origin: Point{x - b.Scale.On(r.Left), zero}}, w)
		x += b.Scale.On(r.Width()) + thumbGap
	}
	b.chain(Tag{Kind: LevelLine, Wall: -1}, line(Red, thumbLine), Point{(ThumbWidth - used) / 2, zero}, Point{(ThumbWidth + used) / 2, zero})
	b.Scale = Scale{} // nothing is to be measured on it
	return b.Scene
}

// thumbWall draws one wall, the pieces of one colour as one shape, left of them at
// the most, and gives how many more may be drawn.
func (b *board) thumbWall(left int, f frame, w layout.Wall) int {
	b.path(Tag{Kind: Outline, Wall: -1}, Ink{Fill: White, Line: Black, Width: thumbLine}, outer(f.rings(w.Shape.Solid))...)
	patches := map[Kind][]box{}
	for _, p := range w.Pieces {
		if k := b.kind(f, p); k != Whole {
			r := f.rect(p.Face.Bounds())
			patches[k] = append(patches[k], box{r[0], r[2]})
		}
	}
	joint := b.Scale.On(b.plan.Room.Joint) + 1
	for _, k := range []Kind{CutLeast, CutFifth, CutThird, CutHalf, Set} {
		var rings [][]Point
		for _, p := range joinedUp(patches[k], joint) {
			if left > 0 && p.from.X < p.to.X && p.from.Y < p.to.Y {
				rings = append(rings, corners(p.from, p.to))
				left--
			}
		}
		if len(rings) > 0 {
			b.path(Tag{Kind: k, Wall: -1}, fill(cutInk(k).Fill), rings...)
		}
	}
	for i := range w.Strips {
		b.path(Tag{Kind: Niche, Wall: -1}, fill(b.stripShade(i)), outer(f.rings(w.Strips[i].Shape.Solid))...)
	}
	for i, e := range w.Start.Placed.Openings {
		if e.Left < e.Right && e.Bottom < e.Top && w.Found.Openings[i].Strip == nil {
			b.path(Tag{Kind: Niche, Wall: -1}, Ink{Fill: Pale, Line: Black, Width: 1}, f.rect(plane.Rect(e)))
		}
	}
	return left
}

// outer are the rings that go round a region, without its holes.
func outer(rings [][]Point) [][]Point {
	return slices.DeleteFunc(rings, func(r []Point) bool { return area(r) <= 0 })
}

// joinedUp makes one box of boxes that stand beside or over each other, no further
// apart than a joint and equally high or wide, but for rounding.
func joinedUp(all []box, joint Micron) []box {
	near := func(a, b Micron) bool { return max(a-b, b-a) <= 1 }
	for range 2 {
		slices.SortFunc(all, func(a, b box) int {
			return cmp.Or(cmp.Compare(a.from.X, b.from.X), cmp.Compare(a.from.Y, b.from.Y), cmp.Compare(a.to.X, b.to.X))
		})
		var out []box
		for _, t := range all {
			n := slices.IndexFunc(out, func(o box) bool {
				return near(o.from.Y, t.from.Y) && near(o.to.Y, t.to.Y) && max(t.from.X-o.to.X, o.to.X-t.from.X) <= joint
			})
			if n < 0 {
				out = append(out, t)
			} else {
				out[n].to.X = max(out[n].to.X, t.to.X)
			}
		}
		for i, t := range out { // then the other way
			out[i] = box{Point{t.from.Y, t.from.X}, Point{t.to.Y, t.to.X}}
		}
		all = out
	}
	return all
}
