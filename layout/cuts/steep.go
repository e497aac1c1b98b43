package cuts

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// cornered tells whether a raked base or head takes a corner off a piece of a course, or leaves it a point: two
// heights do not say then where on the tile the cut begins and ends, so that it is told by marks, as those of a
// pattern are. A cut that runs from side to side, but for near, is a taper.
func (w work) cornered(near length.Length) bool {
	if w.piece.Kind&(piece.Notch|piece.Hole) != 0 || len(w.face) != 1 {
		return false
	}
	left, right, bottom, top := w.sides()
	point := left == 0 || right == 0 || bottom == 0 || top == 0
	ring := w.face[0]
	for i, c := range ring {
		if ring[(i+len(ring)-1)%len(ring)].On == c.On || !w.raked(c.On) {
			continue
		}
		if end := alongFrom(ring, i); slants(c.Point, end) && (point || !w.spans(c.Point, end, near)) {
			return true
		}
	}
	return false
}

// raked tells whether a cut is along a base or a head.
func (w work) raked(on plane.Side) bool {
	return on > 0 && int(on) < len(w.wall.Shape.Sides) && level(w.wall.Shape.Sides[on])
}

// alongFrom is where the boundary ends that a ring follows from one of its corners on.
func alongFrom(ring plane.Ring, first int) plane.Point {
	i := first
	for n := 0; n < len(ring) && ring[i].On == ring[first].On; n++ {
		i = (i + 1) % len(ring)
	}
	return ring[i].Point
}

// spans tells whether a cut runs from side to side of the piece, the way it mostly goes.
func (w work) spans(a, b plane.Point, near length.Length) bool {
	wide, high := (b.X - a.X).Abs(), (b.Y - a.Y).Abs()
	if wide >= high {
		return w.box.Width()-wide <= near
	}
	return w.box.Height()-high <= near
}
