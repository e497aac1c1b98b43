package plane

import (
	"cmp"
	"math"
	"slices"

	"coursewright/layout/length"
)

// Contains tells whether p lies inside the region; what lies on an edge may be
// taken for either.
func (r Region) Contains(p Point) bool {
	in := false
	for _, ring := range r {
		if here, on := ring.contains(p); here || on {
			in = !in
		}
	}
	return in
}

// Snapped moves every corner that is no more than some units beside a corner of
// the ring, along x and along y, onto it.
func (r Region) Snapped(ring Ring, units length.Length) Region {
	var out Region
	for _, s := range r {
		if len(r) == 1 && s.snapped(ring, units) {
			return r
		}
		t := slices.Clone(s)
		for i, c := range t {
			for _, d := range ring {
				if (c.X-d.X).Abs() <= units && (c.Y-d.Y).Abs() <= units {
					t[i].Point = d.Point
				}
			}
		}
		if t = t.tidyAll(); len(t) >= 3 && t.Area2() != 0 {
			out = append(out, t)
		}
	}
	return out
}

// Tidy drops every corner that stands where the next one does, and rings without area.
func (r Region) Tidy() Region { return r.Snapped(nil, 0) }

// snapped tells whether Snapped would change nothing.
func (r Ring) snapped(ring Ring, units length.Length) bool {
	for i, c := range r {
		if c.Point == r[(i+1)%len(r)].Point {
			return false
		}
		for _, d := range ring {
			if c.Point != d.Point && (c.X-d.X).Abs() <= units && (c.Y-d.Y).Abs() <= units {
				return false
			}
		}
	}
	return len(r) >= 3 && r.Area2() != 0
}

// tidyAll drops every corner that stands where the next one does.
func (r Ring) tidyAll() Ring {
	for {
		t := r.tidy()
		if len(t) == len(r) {
			return t
		}
		r = t
	}
}

// LeastWidth is the smallest width of a region: the smallest distance between two
// parallel lines that hold it, or, where a corner turns inwards (a notch), from
// that corner to the edge behind it, if that is less. Rounded down to the unit. It
// is 0 for none. Corners that turn inwards by less than about ten degrees, as along a
// leaning wall, are no notches.
func (r Region) LeastWidth() length.Length {
	var hull Ring
	var space [2 * room]Corner
	notches := !r.convex()
	if notches {
		hull = r.hull(space[:0])
	} else {
		hull = r[0]
	}
	if len(hull) < 3 {
		return 0
	}
	least := hull.narrowest()
	if !notches {
		return max(0, least)
	}
	for _, ring := range r {
		for i, c := range ring {
			a, b := ring[(i+len(ring)-1)%len(ring)].Point, ring[(i+1)%len(ring)].Point
			if inwards(a, c.Point, b) {
				least = min(least, r.behind(a, c.Point, b, least))
			}
		}
	}
	return least
}

// narrowest is the smallest width of a convex ring, or under 0 for a point. Edges across which it is surely wider than
// across another are passed over.
func (r Ring) narrowest() length.Length {
	least, most := length.Length(-1), math.MaxFloat64 // the square of the least width, and a little more
	a := r[len(r)-1].Point
	for _, c := range r {
		from, b := a, c.Point
		if a = b; from == b {
			continue
		}
		line, far, off := Through(from, b), from, int64(0)
		for _, d := range r {
			if s := line.Side(d.Point); max(s, -s) > off {
				far, off = d.Point, max(s, -s)
			}
		}
		square := float64(off) / float64(apart(from, b)) * float64(off)
		if square > most {
			continue
		}
		most = min(most, square*(1+1e-9)+1e-9)
		if wide := Apart(far, from, b); least < 0 || wide < least {
			least = wide
		}
	}
	return least
}

// convex tells whether the region is one ring that turns to the left at every corner.
func (r Region) convex() bool {
	if len(r) != 1 {
		return false
	}
	ring := r[0]
	for i, c := range ring {
		if Through(c.Point, ring[(i+1)%len(ring)].Point).Side(ring[(i+2)%len(ring)].Point) < 0 {
			return false
		}
	}
	return true
}

// inwards tells whether the chain a–c–b turns to the right by more than about ten degrees.
func inwards(a, c, b Point) bool {
	turn := Through(a, c).Side(b)
	size := max((c.X - a.X).Abs(), (c.Y - a.Y).Abs()).Times(max((b.X - c.X).Abs(), (b.Y - c.Y).Abs()))
	return turn < 0 && -6*turn > int64(size)
}

// behind is how far the nearest edge is from a notch's corner c, away from its two
// edges, where it is nearer than least.
func (r Region) behind(a, c, b Point, least length.Length) length.Length {
	for _, ring := range r {
		for i, d := range ring {
			e := ring[(i+1)%len(ring)].Point
			if d.Point == c || e == c {
				continue
			}
			q := foot(c, d.Point, e)
			v := Point{q.X - c.X, q.Y - c.Y}
			if dot(Point{}, Point{a.X - c.X, a.Y - c.Y}, v) <= 0 && dot(Point{}, Point{b.X - c.X, b.Y - c.Y}, v) <= 0 {
				least = min(least, Root(length.Area(apart(c, q))))
			}
		}
	}
	return least
}

// foot is the point of the edge a–b that is nearest to p, rounded to the unit.
func foot(p, a, b Point) Point {
	along, all := dot(a, b, p), dot(a, b, b)
	switch {
	case along <= 0:
		return a
	case along >= all:
		return b
	}
	return Point{a.X + share(b.X-a.X, along, all), a.Y + share(b.Y-a.Y, along, all)}
}

// hull is the convex ring round all corners, counter-clockwise, in the room of out.
func (r Region) hull(out Ring) Ring {
	all := make([]Point, 0, 2*room)
	for _, ring := range r {
		for _, c := range ring {
			all = append(all, c.Point)
		}
	}
	slices.SortFunc(all, func(a, b Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	all = slices.Compact(all)
	if len(all) < 3 {
		return nil
	}
	chain := func(points []Point) {
		start := len(out)
		for _, p := range points {
			for len(out) >= start+2 && Through(out[len(out)-2].Point, out[len(out)-1].Point).Side(p) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, Corner{Point: p})
		}
		out = out[:len(out)-1]
	}
	chain(all)
	slices.Reverse(all)
	chain(all)
	return out
}
