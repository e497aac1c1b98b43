package drawing

import (
	"slices"

	"coursewright/layout/length"
)

// besideWall is where the course line is held on a wall of its own: left of it, right
// of it, or on it, where it meets no text.
func (h hands) besideWall(left, right, line length.Length) Point {
	l, r := h.f.at(left, line), h.f.at(right, line)
	for _, x := range []Micron{l.X - handlesApart, r.X + handlesApart} {
		if at := (Point{x, l.Y}); h.vacant(gripRoom("y", at)) {
			return at
		}
	}
	return h.onLine(l, r)
}

// onLine is where the course line is held on the wall, from one end to the other: where it meets no text and no
// start; the lines themselves, which are thin, may run through it.
func (h hands) onLine(from, to Point) Point {
	thin, start := Micron(1000), h.f.at(h.w.Start.X, h.line()).X
	for x := from.X + handlesApart; x < to.X-handlesApart; x += gripStep {
		grip := gripRoom("y", Point{x, from.Y})
		over := slices.ContainsFunc(h.taken, func(t box) bool { return t.to.Y-t.from.Y > thin && grip.meets(t) })
		if !over && max(x-start, start-x) >= handlesApart && !h.atReading(Point{x, from.Y}) {
			return Point{x, from.Y}
		}
	}
	return Point{from.X - handlesApart, from.Y}
}

// atReading tells whether a place is at a handle of what was measured of the base.
func (h hands) atReading(at Point) bool {
	for _, s := range h.w.Found.Base {
		for _, r := range s.Readings {
			p := h.f.at(r.At, r.Value)
			if max(p.X-at.X, at.X-p.X)+max(p.Y-at.Y, at.Y-p.Y) < handlesApart {
				return true
			}
		}
	}
	return false
}
