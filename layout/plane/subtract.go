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
	if len(near) == 0 {
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

func (r Region) less(ring Ring, box Rect, on Side) Region {
	lines := make([]Line, len(ring))
	for i, c := range ring {
		lines[i] = Through(c.Point, ring[(i+1)%len(ring)].Point)
		r = r.bendIn(lines[i], box)
	}
	taken := r.KeepAll(lines...)
	if len(taken) == 0 {
		return r
	}
	return r.without(taken, on, !ring.upright())
}

type edge struct{ from, to Point }

// without removes a part that lies inside the region and shares corners with
// it: edges that both have cancel, the rest of the part's edges are turned
// round, and what remains is linked into rings again. Where the part was cut out
// along raked lines, its corners are only as near to the region's edges as a
// crossing is rounded, and loose says to take them for being on those edges.
func (r Region) without(part Region, on Side, loose bool) Region {
	edges := map[edge]Side{}
	var order []edge
	add := func(a, b Point, s Side) {
		if _, both := edges[edge{b, a}]; both {
			delete(edges, edge{b, a})
			return
		}
		edges[edge{a, b}] = s
		order = append(order, edge{a, b})
	}
	for _, ring := range r {
		ring = ring.splitAt(part, loose)
		for i, c := range ring {
			add(c.Point, ring[(i+1)%len(ring)].Point, c.On)
		}
	}
	for _, ring := range part {
		ring = ring.splitAt(r, loose)
		for i, c := range ring {
			add(ring[(i+1)%len(ring)].Point, c.Point, on)
		}
	}
	rings := link(order, edges)
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
func link(order []edge, edges map[edge]Side) Region {
	leaving := map[Point][]edge{}
	for _, e := range order {
		if _, there := edges[e]; there {
			leaving[e.from] = append(leaving[e.from], e)
		}
	}
	var out Region
	for _, e := range order {
		if _, there := edges[e]; !there {
			continue
		}
		var ring Ring
		for {
			side, there := edges[e]
			if !there {
				break
			}
			delete(edges, e)
			ring = append(ring, Corner{e.from, side})
			e = leftmost(e, leaving[e.to], edges)
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

func leftmost(e edge, from []edge, edges map[edge]Side) edge {
	var best edge
	found := false
	for _, f := range from {
		if _, there := edges[f]; !there {
			continue
		}
		if !found || sharper(e, f, best) {
			best, found = f, true
		}
	}
	return best
}

// sharper tells whether f turns more to the left after e than g does.
func sharper(e, f, g edge) bool {
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
