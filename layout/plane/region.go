package plane

import "coursewright/layout/length"

// Area2 is twice the area: positive for an outer ring, negative for a hole.
func (r Ring) Area2() length.Area {
	var sum length.Area
	if len(r) == 0 {
		return 0
	}
	o := r[0].Point
	a := r[0]
	for _, b := range r[1:] { // edges at the first corner span nothing with it
		sum += length.Area(a.X-o.X)*length.Area(b.Y-o.Y) - length.Area(b.X-o.X)*length.Area(a.Y-o.Y)
		a = b
	}
	return sum
}

// Area2 is twice the area of the region, holes taken off.
func (r Region) Area2() length.Area {
	var sum length.Area
	for _, ring := range r {
		sum += ring.Area2()
	}
	return sum
}

// Bounds is the smallest upright rectangle round the region; empty for none.
func (r Region) Bounds() Rect {
	var b Rect
	first := true
	for _, ring := range r {
		for _, c := range ring {
			if first {
				b, first = Rect{c.X, c.Y, c.X, c.Y}, false
			}
			b.Left, b.Right = min(b.Left, c.X), max(b.Right, c.X)
			b.Bottom, b.Top = min(b.Bottom, c.Y), max(b.Top, c.Y)
		}
	}
	return b
}

// Width and Height of a rectangle.
func (r Rect) Width() length.Length  { return r.Right - r.Left }
func (r Rect) Height() length.Length { return r.Top - r.Bottom }

// Empty tells whether the rectangle has no area.
func (r Rect) Empty() bool { return r.Left >= r.Right || r.Bottom >= r.Top }

// Overlaps tells whether two rectangles share area.
func (r Rect) Overlaps(s Rect) bool {
	return r.Left < s.Right && s.Left < r.Right && r.Bottom < s.Top && s.Bottom < r.Top
}

// Holds tells whether a rectangle lies in this one.
func (r Rect) Holds(s Rect) bool {
	return r.Left <= s.Left && s.Right <= r.Right && r.Bottom <= s.Bottom && s.Top <= r.Top
}

// Ring is the rectangle as an outer ring, every edge on side on.
func (r Rect) Ring(on Side) Ring {
	return Ring{
		{Point{r.Left, r.Bottom}, on}, {Point{r.Right, r.Bottom}, on},
		{Point{r.Right, r.Top}, on}, {Point{r.Left, r.Top}, on},
	}
}

// Transposed swaps x and y, and keeps outer rings counter-clockwise.
func (r Rect) Transposed() Rect { return Rect{r.Bottom, r.Left, r.Top, r.Right} }

// Transposed swaps x and y, and keeps outer rings counter-clockwise and every
// edge on its side. Twice is the same region.
func (r Region) Transposed() Region {
	if r == nil {
		return nil
	}
	out := make(Region, len(r))
	for i, ring := range r {
		n := len(ring)
		t := make(Ring, n)
		for k, c := range ring {
			before := ring[(k+n-1)%n]
			t[(n-k)%n] = Corner{Point{c.Y, c.X}, before.On}
		}
		out[i] = t
	}
	return out
}

// Parts splits a region into its connected parts, each an outer ring with the
// holes inside it, in the order of the outer rings.
func (r Region) Parts() []Region {
	if len(r) == 1 {
		return []Region{r}
	}
	var parts []Region
	for _, ring := range r {
		if ring.Area2() > 0 {
			parts = append(parts, Region{ring})
		}
	}
	if len(parts) == 1 {
		return []Region{r}
	}
	for _, ring := range r {
		if ring.Area2() > 0 {
			continue
		}
		for i, p := range parts {
			if p[0].surrounds(ring) {
				parts[i] = append(p, ring)
				break
			}
		}
	}
	return parts
}

// surrounds tells whether a hole that does not cross the outer ring lies in it:
// by its first corner that is not on the ring.
func (r Ring) surrounds(hole Ring) bool {
	for _, c := range hole {
		if in, on := r.contains(c.Point); !on {
			return in
		}
	}
	return true
}

// contains tells whether p is inside the ring, or on it.
func (r Ring) contains(p Point) (in, on bool) {
	for i, a := range r {
		b := r[(i+1)%len(r)]
		s := Through(a.Point, b.Point).Side(p)
		if s == 0 && between(a.X, p.X, b.X) && between(a.Y, p.Y, b.Y) {
			return false, true
		}
		if (a.Y > p.Y) != (b.Y > p.Y) && (s > 0) == (b.Y > a.Y) {
			in = !in
		}
	}
	return in, false
}

func between(a, x, b length.Length) bool { return min(a, b) <= x && x <= max(a, b) }

// Mark says that factory edges along the plumb line at x lie on a side.
func (r Region) Mark(x length.Length, on Side) Region {
	if on == 0 {
		return r
	}
	out := make(Region, len(r))
	for i, ring := range r {
		out[i] = append(Ring(nil), ring...)
		for k, c := range ring {
			if c.On == 0 && c.X == x && ring[(k+1)%len(ring)].X == x {
				out[i][k].On = on
			}
		}
	}
	return out
}
