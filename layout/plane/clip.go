package plane

import (
	"math"
	"math/bits"
	"slices"

	"coursewright/layout/length"
)

// Line is a directed line through P in direction D. What lies to its left is
// the side that Keep keeps. D is (±1, 0) or (0, ±1) for upright lines.
type Line struct {
	P Point
	D Point
}

// Above, Below, RightOf and LeftOf name the upright lines by what they keep.
func Above(y length.Length) Line   { return Line{Point{0, y}, Point{1, 0}} }
func Below(y length.Length) Line   { return Line{Point{0, y}, Point{-1, 0}} }
func RightOf(x length.Length) Line { return Line{Point{x, 0}, Point{0, -1}} }
func LeftOf(x length.Length) Line  { return Line{Point{x, 0}, Point{0, 1}} }

// Through is the line along the edge a→b, keeping its left.
func Through(a, b Point) Line { return Line{a, Point{b.X - a.X, b.Y - a.Y}} }

// Side is positive left of the line, zero on it, negative to its right. Exact
// for coordinates under 100 m.
func (l Line) Side(p Point) int64 {
	return int64(l.D.X)*int64(p.Y-l.P.Y) - int64(l.D.Y)*int64(p.X-l.P.X)
}

// along orders points that lie on the line.
func (l Line) along(p Point) int64 {
	return int64(l.D.X)*int64(p.X-l.P.X) + int64(l.D.Y)*int64(p.Y-l.P.Y)
}

// cross is where the edge a→b, with sides sa and sb of opposite signs, crosses
// the line. This is the one place where a raked edge is rounded, to the
// nearest unit; the result does not depend on the edge's direction.
func cross(a, b Point, sa, sb int64) Point {
	if b.X < a.X || b.X == a.X && b.Y < a.Y {
		a, b, sa, sb = b, a, sb, sa
	}
	return Point{
		a.X + share(b.X-a.X, sa, sa-sb),
		a.Y + share(b.Y-a.Y, sa, sa-sb),
	}
}

// Crossing is where the edge a→b crosses a line, rounded as Keep rounds it. The line
// is to cross it, or the line through it.
func Crossing(a, b Point, l Line) Point {
	sa, sb := l.Side(a), l.Side(b)
	if sa == sb {
		return a
	}
	return meet(a, b, sa, sb)
}

// meet is where the edge a→b meets the line, with sides sa and sb that are not alike: at
// one of its ends, or where it crosses.
func meet(a, b Point, sa, sb int64) Point {
	switch {
	case sa == 0:
		return a
	case sb == 0:
		return b
	}
	return cross(a, b, sa, sb)
}

// share is d·num/den to the nearest unit, halves up, where 0 <= num/den <= 1.
func share(d length.Length, num, den int64) length.Length {
	if d == 0 {
		return 0
	}
	n, m, v := uint64(max(num, -num)), uint64(max(den, -den)), uint64(max(d, -d))
	hi, lo := bits.Mul64(v, n)
	lo, carry := bits.Add64(lo, m/2, 0)
	q, _ := bits.Div64(hi+carry, lo, m)
	if d < 0 {
		return -length.Length(q)
	}
	return length.Length(q)
}

// Bend puts a corner wherever an edge crosses the line, so that a later Keep
// along it is exact. It moves a raked edge by less than one unit.
func (r Region) Bend(l Line) Region { return r.bendIn(l, everywhere) }

var everywhere = Rect{math.MinInt64, math.MinInt64, math.MaxInt64, math.MaxInt64}

// bendIn bends only at crossings inside the box or on its border.
func (r Region) bendIn(l Line, box Rect) Region {
	out := r
	for i, ring := range r {
		bent := ring.bend(l, box)
		if len(bent) == len(ring) {
			continue
		}
		if &out[0] == &r[0] {
			out = slices.Clone(r)
		}
		out[i] = bent
	}
	return out
}

func (r Ring) bend(l Line, box Rect) Ring {
	var out Ring
	for i, a := range r {
		if out != nil {
			out = append(out, a)
		}
		b := r[(i+1)%len(r)]
		sa, sb := l.Side(a.Point), l.Side(b.Point)
		if sa > 0 && sb < 0 || sa < 0 && sb > 0 {
			p := cross(a.Point, b.Point, sa, sb)
			if !between(box.Left, p.X, box.Right) || !between(box.Bottom, p.Y, box.Top) {
				continue
			}
			if out == nil {
				out = append(make(Ring, 0, len(r)+2), r[:i+1]...)
			}
			out = append(out, Corner{p, a.On})
		}
	}
	if out == nil {
		return r
	}
	return out.tidy()
}

// Keep returns the part of the region to the left of the line. New edges along
// the line have On 0. Parts without area vanish.
func (r Region) Keep(l Line) Region {
	var space [4]Ring
	c, whole := chains(space[:0]), 0
	for _, ring := range r {
		switch ring.lies(l) {
		case left:
			whole++
		case astride:
			c = c.gather(ring, l)
		}
	}
	if whole == len(r) {
		return r
	}
	cut := c.link(l)
	if whole == 0 {
		return cut
	}
	out := make(Region, 0, whole+len(cut))
	for _, ring := range r {
		if ring.lies(l) == left {
			out = append(out, ring)
		}
	}
	return append(out, cut...)
}

// KeepAll keeps what lies to the left of every line.
func (r Region) KeepAll(lines ...Line) Region { return r.KeepAllIn(new(Room), lines...) }

// KeepAllIn is KeepAll in room that may be used again once the part is no longer needed.
func (r Region) KeepAllIn(room *Room, lines ...Line) Region {
	for len(lines) > 0 && len(r) > 0 {
		done := 0
		if len(r) == 1 {
			if r, done = r[0].keepAll(lines, room); done == len(lines) {
				return r
			}
		}
		r, lines = r.Keep(lines[done]), lines[done+1:]
	}
	if len(r) == 0 {
		return nil
	}
	return r
}

type position uint8

const (
	right position = iota
	left
	astride
)

// lies tells where a ring is. A ring on the left with an edge along the line is
// astride, so that a hole that touches the line becomes a notch.
func (r Ring) lies(l Line) position {
	seen := corners{last: l.Side(r[len(r)-1].Point)}
	for _, c := range r {
		seen.add(l.Side(c.Point))
	}
	return seen.position()
}

// corners gathers on which sides of a line the corners of a ring lie, one after the other.
type corners struct {
	left, right, edge bool // edge: one edge lies along the line
	last              int64
}

func (c *corners) add(side int64) {
	c.left, c.right = c.left || side > 0, c.right || side < 0
	c.edge = c.edge || side == 0 && c.last == 0
	c.last = side
}

func (c *corners) position() position {
	switch {
	case !c.left:
		return right
	case c.right || c.edge:
		return astride
	}
	return left
}

// chains are the stretches of rings to the left of a line; each enters over
// the line and leaves over it.
type chains []Ring

// event is where a chain enters over the line, or leaves over it.
type event struct {
	at    int64
	run   int
	enter bool
}

// gather adds the stretches of a ring.
func (c chains) gather(r Ring, l Line) chains {
	n := len(r)
	first := 0
	for l.Side(r[first].Point) > 0 {
		first++
	}
	var run Ring
	a := r[first]
	sa := l.Side(a.Point)
	for k := range n {
		b := r[(first+k+1)%n]
		sb := l.Side(b.Point)
		if sa <= 0 && sb > 0 {
			run = append(make(Ring, 0, r.leftOf(l, first+k+1)+2), Corner{meet(a.Point, b.Point, sa, sb), a.On})
		}
		if sb > 0 {
			run = append(run, b)
		}
		if sa > 0 && sb <= 0 {
			c = append(c, append(run, Corner{meet(a.Point, b.Point, sa, sb), 0}))
		}
		a, sa = b, sb
	}
	return c
}

// leftOf counts the corners of a ring, from one on, that lie to the left of the line one
// after the other. Not all of them do.
func (r Ring) leftOf(l Line, from int) int {
	n := 0
	for l.Side(r[(from+n)%len(r)].Point) > 0 {
		n++
	}
	return n
}

// link joins the chains along the line. Along it, the inside begins where a
// chain leaves and ends at the next one that enters; where several meet in one
// point, a begun stretch is ended first.
func (c chains) link(l Line) Region {
	switch len(c) {
	case 0:
		return nil
	case 1:
		if ring := c[0].tidy(); len(ring) >= 3 && ring.Area2() != 0 {
			return Region{ring}
		}
		return nil
	}
	events := make([]event, 0, 16) // which a region that a tile is cut from hardly has more of
	for id, run := range c {
		events = append(events,
			event{l.along(run[0].Point), id, true},
			event{l.along(run[len(run)-1].Point), id, false})
	}
	slices.SortStableFunc(events, func(a, b event) int {
		return int(max(-1, min(1, a.at-b.at)))
	})
	next := append(make([]int, 0, 8), make([]int, len(c))...)
	open := -1
	for i := 0; i < len(events); i++ {
		prefer(events, i, open >= 0)
		e := events[i]
		switch {
		case e.enter && open >= 0:
			next[open], open = e.run, -1
		case !e.enter && open < 0:
			open = e.run
		}
	}
	return c.rings(next)
}

// prefer brings to place i an event of the wanted kind among those at the same place.
func prefer(events []event, i int, enter bool) {
	for j := i; j < len(events) && events[j].at == events[i].at; j++ {
		if events[j].enter == enter {
			events[i], events[j] = events[j], events[i]
			return
		}
	}
}

// rings are the chains joined, each to the next.
func (c chains) rings(next []int) Region {
	var out Region
	for i, run := range c {
		if run == nil {
			continue
		}
		ring := run
		c[i] = nil
		for j := next[i]; c[j] != nil; j = next[j] {
			ring = append(ring, c[j]...)
			c[j] = nil
		}
		if ring = ring.tidy(); len(ring) >= 3 && ring.Area2() != 0 {
			out = append(out, ring)
		}
	}
	return out
}

// tidy drops a corner that stands where the next one does; the edge that
// leaves the place is the later corner's.
func (r Ring) tidy() Ring {
	n := len(r)
	for i, c := range r {
		if c.Point != r[(i+1)%n].Point {
			continue
		}
		out := append(make(Ring, 0, n-1), r[:i]...)
		for k, d := range r[i+1:] {
			if d.Point != r[(i+k+2)%n].Point {
				out = append(out, d)
			}
		}
		return out
	}
	return r
}
