package phase

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// other is a boundary beside an edge that may cut a tile that the edge cuts: what lies in a box, and
// if it is straight and slants, on a line.
type other struct {
	box  plane.Rect
	line plane.Line // or none
}

// findOthers lists beside every edge that stands those of the wall, and the pipes, that are
// no farther than a tile reaches, but for the edges that leave its ends and go away from it.
func (w *Wall) findOthers(s survey.Shape) {
	far := w.reach()
	for i := range w.edges {
		e := &w.edges[i]
		reach := between(e.line.P, e.end(), far)
		for _, ring := range s.Solid {
			for k, c := range ring {
				d := ring[(k+1)%len(ring)]
				o := boundary(c, d)
				if c.On != 0 && !w.moves(c.On) && !e.goesAway(c.Point, d.Point) && o.box.Overlaps(reach) {
					e.others = append(e.others, o)
				}
			}
		}
		for _, a := range w.axes {
			if a.opening >= 0 && a.hull.Overlaps(reach) {
				e.others = append(e.others, other{box: a.hull})
			}
		}
		for _, pipe := range w.rule.Pipes {
			if b := between(pipe.Centre, pipe.Centre, pipe.Radius+pipe.Radius/64+rounded); b.Overlaps(reach) {
				e.others = append(e.others, other{box: b})
			}
		}
	}
}

// end is where the edge ends.
func (e *edge) end() plane.Point {
	return plane.Point{X: e.line.P.X + e.line.D.X, Y: e.line.P.Y + e.line.D.Y}
}

// upright is how much of its height a boundary may lean over an edge that it meets, as the margin of
// inside allows: 1 in 32.
const upright = 32

// goesAway tells whether a boundary from c to d is the edge itself, or begins at one of its ends and does
// not come back over it: a tile that stands before the edge from end to end is not cut by it.
func (e *edge) goesAway(c, d plane.Point) bool {
	from, to := e.line.P, e.end()
	away := func(at, next plane.Point, way int64) bool {
		x, y := int64(next.X-at.X), int64(next.Y-at.Y)
		along := way * (int64(e.line.D.X)*x + int64(e.line.D.Y)*y)
		across := int64(e.line.D.X)*y - int64(e.line.D.Y)*x
		return along <= max(across, -across)/upright
	}
	switch {
	case c == from && d == to:
		return true
	case c == to:
		return away(c, d, -1)
	case d == from:
		return away(d, c, 1)
	}
	return false
}

// shared tells whether another boundary may cut a tile in a box, however it moves.
func (e *edge) shared(box *plane.Rect, beside length.Length) bool {
	for i := range e.others {
		if e.others[i].near(box, beside) {
			return true
		}
	}
	return false
}

// crosses tells whether a free opening may come to a boundary that stands: where it then ends that boundary, and which
// tiles lie beyond, hangs on where it is placed, so that nothing is taken to be cut by its edges alone.
func (w *Wall) crosses(a *axis) bool {
	if a.opening < 0 {
		return false
	}
	without := w.outer
	without.Openings = slices.Clone(without.Openings)
	for _, b := range w.axes {
		if b.opening >= 0 {
			without.Openings[b.opening] = survey.Edges{Left: -2 * far, Right: -far, Bottom: -2 * far, Top: -far}
		}
	}
	for _, ring := range w.Found.Shape(w.room.Units, without).Solid {
		for i, c := range ring {
			o := boundary(c, ring[(i+1)%len(ring)])
			if c.On != 0 && !w.moves(c.On) && o.near(&a.hull, 0) {
				return true
			}
		}
	}
	return false
}

// far is beyond any wall.
const far = length.Longest / 4

// boundary is what lies between two corners.
func boundary(c, d plane.Corner) other {
	o := other{between(c.Point, d.Point, rounded), plane.Line{}}
	if c.X != d.X && c.Y != d.Y {
		o.line = plane.Through(c.Point, d.Point)
	}
	return o
}

// near tells whether the boundary comes to a box, or nearer than so much to it.
func (o *other) near(at *plane.Rect, beside length.Length) bool {
	box := *at
	if o.box.Left > box.Right+beside || o.box.Right+beside < box.Left || o.box.Bottom > box.Top+beside || o.box.Top+beside < box.Bottom {
		return false
	}
	if o.line.D == (plane.Point{}) {
		return true
	}
	box = wider(box, beside+rounded)
	left, right := false, false
	for _, p := range [...]plane.Point{{X: box.Left, Y: box.Bottom}, {X: box.Right, Y: box.Bottom}, {X: box.Left, Y: box.Top}, {X: box.Right, Y: box.Top}} {
		s := o.line.Side(p)
		left, right = left || s >= 0, right || s <= 0
	}
	return left && right
}
