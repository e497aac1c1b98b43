package plane

import (
	"slices"

	"coursewright/layout/length"
)

// Less takes a convex outer ring out of the region; the new edges lie on side
// on. Where the ring crosses a boundary the boundary is bent there first.
func (r Region) Less(ring Ring, on Side) Region {
	box := Region{ring}.Bounds()
	near, far := r.partedBy(box)
	if len(near) == 0 || near.misses(box) {
		return r
	}
	left := near.less(ring, box, on)
	if len(far) == 0 {
		return left
	}
	return append(left, far...)
}

// partedBy tells the rings that touch a box from those that do not. A hole that
// does not touch it stays as it is, whatever is taken out there.
func (r Region) partedBy(box Rect) (near, far Region) {
	for i, ring := range r {
		b := Region{ring}.Bounds()
		if ring.Area2() < 0 && (b.Right < box.Left || b.Left > box.Right || b.Top < box.Bottom || b.Bottom > box.Top) {
			far = append(far, ring)
			continue
		}
		near = append(near, r[i])
	}
	return near, far
}

// misses tells whether the region lies clear of a box.
func (r Region) misses(box Rect) bool {
	b := r.Bounds()
	return b.Right < box.Left || b.Left > box.Right || b.Top < box.Bottom || b.Bottom > box.Top
}

func (r Region) less(ring Ring, box Rect, on Side) Region {
	lines := make([]Line, len(ring))
	for i, c := range ring {
		lines[i] = Through(c.Point, ring[(i+1)%len(ring)].Point)
		r = r.bendIn(lines[i], box)
	}
	taken := r.KeepAll(lines...)
	switch {
	case len(taken) == 0:
		return r
	case len(taken) == 1 && r.clearOf(box):
		return r.pierced(taken[0], on)
	}
	return r.without(taken, on, !ring.upright())
}

// clearOf tells whether the box round every edge lies clear of a box.
func (r Region) clearOf(box Rect) bool {
	for _, ring := range r {
		a := ring[len(ring)-1]
		for _, b := range ring {
			if max(a.X, b.X) >= box.Left && min(a.X, b.X) <= box.Right && max(a.Y, b.Y) >= box.Bottom && min(a.Y, b.Y) <= box.Top {
				return false
			}
			a = b
		}
	}
	return true
}

// pierced is without for a part that lies in the region and touches no edge of it: a hole more.
func (r Region) pierced(part Ring, on Side) Region {
	out := make(Region, 0, len(r)+1)
	for _, ring := range r {
		if ring = ring.tidy().straight(); len(ring) >= 3 && ring.Area2() != 0 {
			out = append(out, ring)
		}
	}
	hole, n := make(Ring, len(part)), len(part)
	for i := range part {
		hole[i] = Corner{part[(n+1-i)%n].Point, on}
	}
	return append(out, hole)
}

// edge is an edge of a region; one that another cancels is gone.
type edge struct {
	from, to Point
	on       Side
	gone     bool
}

// edges are those of a few rings, few enough to be looked through one by one.
type edges []edge

// add adds an edge, unless its reverse is there: then both are gone.
func (all edges) add(a, b Point, on Side) edges {
	if i := all.index(b, a); i >= 0 && !all[i].gone {
		all[i].gone = true
		return all
	}
	if i := all.index(a, b); i >= 0 {
		all[i].on, all[i].gone = on, false
		return all
	}
	return append(all, edge{from: a, to: b, on: on})
}

// index finds the edge from a to b, or gives -1.
func (all edges) index(a, b Point) int {
	for i := range all {
		if e := &all[i]; e.from == a && e.to == b {
			return i
		}
	}
	return -1
}

// without removes a part that lies inside the region and shares corners with
// it: edges that both have cancel, the rest of the part's edges are turned
// round, and what remains is linked into rings again. Where the part was cut out
// along raked lines, its corners are only as near to the region's edges as a
// crossing is rounded, and loose says to take them for being on those edges.
func (r Region) without(part Region, on Side, loose bool) Region {
	var space [64]edge
	all := edges(space[:0])
	for _, ring := range r {
		ring = ring.splitAt(part, loose)
		for i, c := range ring {
			all = all.add(c.Point, ring[(i+1)%len(ring)].Point, c.On)
		}
	}
	for _, ring := range part {
		ring = ring.splitAt(r, loose)
		for i, c := range ring {
			all = all.add(ring[(i+1)%len(ring)].Point, c.Point, on)
		}
	}
	rings := all.link()
	if loose {
		return slices.DeleteFunc(rings, Ring.residue)
	}
	return rings
}

// splitAt puts a corner on every edge where a corner of the other region stands.
func (r Ring) splitAt(other Region, loose bool) Ring {
	for _, ring := range other {
		for _, c := range ring {
			r = r.with(c.Point, loose)
		}
	}
	return r
}

func (r Ring) with(p Point, loose bool) Ring {
	for i, a := range r {
		b := r[(i+1)%len(r)]
		if p == a.Point || p == b.Point || !r.passes(p, a.Point, b.Point, loose) {
			continue
		}
		out := append(make(Ring, 0, len(r)+1), r[:i+1]...)
		return append(append(out, Corner{p, a.On}), r[i+1:]...)
	}
	return r
}

// passes tells whether the edge a→b runs through p: exactly, or, when loose and
// where it is raked, as near as a crossing is rounded.
func (r Ring) passes(p, a, b Point, loose bool) bool {
	if !between(a.X, p.X, b.X) || !between(a.Y, p.Y, b.Y) {
		return false
	}
	l := Through(a, b)
	off := l.Side(p)
	if off == 0 || !loose {
		return off == 0
	}
	dx, dy := max(l.D.X, -l.D.X), max(l.D.Y, -l.D.Y)
	return dx > 0 && dy > 0 && max(off, -off) <= int64(max(dx, dy)) && !r.has(p)
}

func (r Ring) has(p Point) bool {
	return slices.ContainsFunc(r, func(c Corner) bool { return c.Point == p })
}

// link strings edges into rings. Where several edges leave one corner, the one
// that turns most to the left is taken, so that rings touch but never cross.
func (all edges) link() Region {
	var out Region
	for first := range all {
		var ring Ring
		for i := first; i >= 0 && !all[i].gone; i = all.leftmost(&all[i]) {
			all[i].gone = true
			ring = append(ring, Corner{all[i].from, all[i].on})
		}
		if ring = ring.tidy().straight(); len(ring) >= 3 && ring.Area2() != 0 {
			out = append(out, ring)
		}
	}
	return out
}

// upright tells whether every edge is plumb or level.
func (r Ring) upright() bool {
	for i, c := range r {
		if d := r[(i+1)%len(r)]; c.X != d.X && c.Y != d.Y {
			return false
		}
	}
	return true
}

// residue tells whether a ring is no thicker than a unit: what rounding leaves
// between two boundaries that run into each other. It may even be turned round.
func (r Ring) residue() bool {
	box := Region{r}.Bounds()
	area := r.Area2()
	return max(area, -area) <= 2*length.Area(max(box.Width(), box.Height()))
}

// leftmost finds of the edges that go on from one the one that turns most to the left,
// or gives -1.
func (all edges) leftmost(after *edge) int {
	best := -1
	for i := range all {
		if f := &all[i]; !f.gone && f.from == after.to && (best < 0 || sharper(after, f, &all[best])) {
			best = i
		}
	}
	return best
}

// sharper tells whether f turns more to the left after e than g does.
func sharper(e, f, g *edge) bool {
	back := Through(e.from, e.to)
	sf, sg := back.Side(f.to), back.Side(g.to)
	if (sf > 0) != (sg > 0) {
		return sf > 0
	}
	return Through(g.from, g.to).Side(f.to) > 0
}

// straight drops corners in the middle of a straight edge on one side.
func (r Ring) straight() Ring {
	out := r[:0:0]
	n := len(r)
	for i, c := range r {
		a, b := r[(i+n-1)%n], r[(i+1)%n]
		if a.On == c.On && Through(a.Point, b.Point).Side(c.Point) == 0 &&
			between(a.X, c.X, b.X) && between(a.Y, c.Y, b.Y) {
			continue
		}
		out = append(out, c)
	}
	return out
}

// Straight drops corners in the middle of straight edges.
func (r Region) Straight() Region {
	out := make(Region, len(r))
	for i, ring := range r {
		out[i] = ring.straight()
	}
	return out
}
