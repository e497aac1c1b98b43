package setout

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// outline is a row's shape when it runs from one plumb or leaning end to
// another between a lower and an upper edge, which may be raked.
type outline struct {
	fromOut, from length.Length // the left end, at its outermost and innermost
	to, toOut     length.Length // the right end, innermost and outermost
	left, right   plane.Side
	lower, upper  []plane.Point   // left to right
	under, over   plane.Side      // what the long edges lie on, all or in part
	mixed         bool            // some part of them is a factory edge
	steps         []length.Length // where the lower edge steps, as at the front of a tub
}

// outlineOf reads a ring of that shape; anything else is not ok. An end may be
// a tip, where the long edges meet.
func outlineOf(ring plane.Ring) (o outline, ok bool) {
	first := 0
	for i, c := range ring {
		if f := ring[first]; c.X < f.X || c.X == f.X && c.Y < f.Y {
			first = i
		}
	}
	n := len(ring)
	for back := 1; back < n; back++ { // a left end that leans begins at its top
		i := (first + n - back) % n
		if c, d := ring[i], ring[(i+1)%n]; !plane.Steep(c, d) || d.Y >= c.Y {
			first = (i + 1) % n
			break
		}
	}
	return walk(ring, first)
}

// walk follows a ring from the top of its left end: down it, along the lower
// edge, up the right end and back along the upper edge.
func walk(ring plane.Ring, first int) (o outline, ok bool) {
	n := len(ring)
	at := func(i int) plane.Corner { return ring[(first+i)%n] }
	i := 0
	o.fromOut, o.from = at(0).X, at(0).X
	for ; i < n && plane.Steep(at(i), at(i+1)); i++ {
		if o.left = at(i).On; o.left != at(0).On {
			return o, false
		}
		o.fromOut, o.from = min(o.fromOut, at(i+1).X), max(o.from, at(i+1).X)
	}
	o.lower = append(o.lower, at(i).Point)
	for ; i < n && at(i+1).X >= at(i).X; i++ {
		if plane.Steep(at(i), at(i+1)) {
			if at(i).X != at(i+1).X || plane.Steep(at(i+1), at(i+2)) || at(i+2).X <= at(i+1).X {
				break
			}
			o.steps = append(o.steps, at(i).X)
		} else if !o.lie(&o.under, at(i).On) {
			return o, false
		}
		o.lower = append(o.lower, at(i+1).Point)
	}
	o.to, o.toOut = at(i).X, at(i).X
	o.right = at(i).On
	if !plane.Steep(at(i), at(i+1)) {
		o.right = 0
	}
	for ; i < n && plane.Steep(at(i), at(i+1)); i++ {
		if at(i).On != o.right {
			return o, false
		}
		o.to, o.toOut = min(o.to, at(i+1).X), max(o.toOut, at(i+1).X)
	}
	for ; i < n; i++ {
		o.upper = append(o.upper, at(i).Point)
		if plane.Steep(at(i), at(i+1)) || at(i+1).X >= at(i).X || !o.lie(&o.over, at(i).On) {
			return o, false
		}
	}
	o.upper = append(o.upper, at(0).Point)
	slices.Reverse(o.upper)
	return o, len(o.lower) > 1 && len(o.upper) > 1 && o.from < o.to
}

// lie notes a side that a long edge lies on; two of them are one too many.
func (o *outline) lie(side *plane.Side, on plane.Side) bool {
	if *side != 0 && on != 0 && *side != on {
		return false
	}
	if on == 0 {
		o.mixed = true
	}
	*side = max(*side, on)
	return true
}

// stepped tells whether the lower edge steps between a and b or at one of them.
func (o *outline) stepped(a, b length.Length) bool {
	for _, x := range o.steps {
		if a <= x && x <= b {
			return true
		}
	}
	return false
}

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

// heights are the least and the greatest distance between the long edges from a to b.
func (o *outline) heights(a, b length.Length) (least, most length.Length) {
	least, most = o.at(a), o.at(a)
	note := func(h length.Length) { least, most = min(least, h), max(most, h) }
	note(o.at(b))
	for _, chain := range [...][]plane.Point{o.lower, o.upper} {
		for _, p := range chain {
			if p.X > a && p.X < b {
				note(o.at(p.X))
			}
		}
	}
	return least, most
}

func (o *outline) at(x length.Length) length.Length {
	return plane.HeightAt(o.upper, x) - plane.HeightAt(o.lower, x)
}
