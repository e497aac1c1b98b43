package setout

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// outline is a row's shape when it runs from one plumb or leaning end to
// another between a lower and an upper edge, which may be raked.
type outline struct {
	fromOut, from length.Length // the left end, at its outermost and innermost
	to, toOut     length.Length // the right end, innermost and outermost
	left, right   plane.Side
	lower, upper  []plane.Point // left to right
	under, over   plane.Side    // what the long edges lie on
}

// outlineOf reads a ring of that shape; anything else is not ok.
func outlineOf(r plane.Region) (o outline, ok bool) {
	if len(r) != 1 {
		return o, false
	}
	ring := r[0]
	first := -1
	for i, c := range ring {
		d := ring[(i+1)%len(ring)]
		if steep(c, d) && d.Y < c.Y {
			if first >= 0 {
				return o, false
			}
			first = i
		}
	}
	if first < 0 {
		return o, false
	}
	return walk(ring, first)
}

// walk follows a ring from its left end: down it, along the lower edge, up the
// right end and back along the upper edge.
func walk(ring plane.Ring, first int) (o outline, ok bool) {
	n := len(ring)
	at := func(i int) plane.Corner { return ring[(first+i)%n] }
	a, b := at(0), at(1)
	o.left, o.fromOut, o.from = a.On, min(a.X, b.X), max(a.X, b.X)
	i := 1
	o.lower = append(o.lower, at(1).Point)
	for ; i < n && !steep(at(i), at(i+1)); i++ {
		if at(i+1).X <= at(i).X {
			return o, false
		}
		o.lower = append(o.lower, at(i+1).Point)
		if i > 1 && o.under != at(i).On {
			return o, false
		}
		o.under = at(i).On
	}
	if i >= n {
		return o, false
	}
	c, d := at(i), at(i+1)
	o.right, o.to, o.toOut = c.On, min(c.X, d.X), max(c.X, d.X)
	for i++; i < n; i++ {
		o.upper = append(o.upper, at(i).Point)
		if steep(at(i), at(i+1)) || at(i+1).X >= at(i).X {
			return o, false
		}
		if len(o.upper) > 1 && o.over != at(i).On {
			return o, false
		}
		o.over = at(i).On
	}
	o.upper = append(o.upper, a.Point)
	for l, r := 0, len(o.upper)-1; l < r; l, r = l+1, r-1 {
		o.upper[l], o.upper[r] = o.upper[r], o.upper[l]
	}
	return o, o.from < o.to
}

func steep(a, b plane.Corner) bool { return (b.Y - a.Y).Abs() > (b.X - a.X).Abs() }

// flat tells whether both long edges are level, and how far apart.
func (o *outline) flat() (high length.Length, ok bool) {
	low, top := o.lower[0].Y, o.upper[0].Y
	for _, p := range o.lower {
		if p.Y != low {
			return 0, false
		}
	}
	for _, p := range o.upper {
		if p.Y != top {
			return 0, false
		}
	}
	return top - low, true
}

// least is the smallest height between the long edges from a to b.
func (o *outline) least(a, b length.Length) length.Length {
	least := o.at(a)
	least = min(least, o.at(b))
	for _, chain := range [...][]plane.Point{o.lower, o.upper} {
		for _, p := range chain {
			if p.X > a && p.X < b {
				least = min(least, o.at(p.X))
			}
		}
	}
	return least
}

func (o *outline) at(x length.Length) length.Length {
	return plane.HeightAt(o.upper, x) - plane.HeightAt(o.lower, x)
}
