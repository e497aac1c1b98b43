package piece

import (
	"slices"

	"coursewright/layout/plane"
)

// segment is an edge of one of the shape's regions with its box.
type segment struct {
	a, b plane.Point
	on   plane.Side
	of   region
	box  plane.Rect
	twin int  // which edge of what is solid it is too, or -1
	here bool // it runs through the tile that is cut
}

// rim is what there is of the rim of a pipe's hole.
type rim struct {
	on   plane.Side
	box  plane.Rect
	arcs []segment
}

// region is one of the regions of a shape. Regions that are the same are counted
// as the first of them.
type region uint8

const (
	solid region = iota
	visible
	drilled
	regions
)

func (l *Layer) note(r plane.Region, of region) {
	for _, ring := range r {
		for i, c := range ring {
			a, b := c.Point, ring[(i+1)%len(ring)].Point
			e := segment{a: a, b: b, on: c.On, of: of, box: plane.Rect{Left: min(a.X, b.X), Bottom: min(a.Y, b.Y), Right: max(a.X, b.X), Top: max(a.Y, b.Y)}}
			if l.rule.isPipe(c.On) {
				l.noteRim(e)
				continue
			}
			e.twin = slices.IndexFunc(l.edges, func(f segment) bool { return f.of == solid && f.alike(&e) })
			l.edges = append(l.edges, e)
		}
	}
}

func (l *Layer) noteRim(e segment) {
	i := slices.IndexFunc(l.rims, func(r rim) bool { return r.on == e.on })
	if i < 0 {
		i = len(l.rims)
		l.rims = append(l.rims, rim{on: e.on, box: e.box})
	}
	r := &l.rims[i]
	r.box.Left, r.box.Right = min(r.box.Left, e.box.Left), max(r.box.Right, e.box.Right)
	r.box.Bottom, r.box.Top = min(r.box.Bottom, e.box.Bottom), max(r.box.Top, e.box.Top)
	r.arcs = append(r.arcs, e)
}

// crossings are the edges of the shape that run through the inside of a tile.
type crossings struct {
	n    [regions]int
	own  [regions]int // those of them that are no edges of what is solid
	last [regions]*segment
	rim  bool // the rim of some hole does too
}

// none tells whether nothing does.
func (c *crossings) none() bool { return c.n == [regions]int{} && !c.rim }

// crossed finds what crosses a tile. What nothing crosses is whole or outside.
func (l *Layer) crossed(outline plane.Ring, box plane.Rect) (c crossings) {
	for i := range l.edges {
		e := &l.edges[i]
		if e.twin >= 0 {
			e.here = l.edges[e.twin].here
		} else {
			e.here = e.crosses(outline, &box)
		}
		if e.here {
			c.n[e.of]++
			if e.twin < 0 {
				c.own[e.of]++
			}
			c.last[e.of] = e
		}
	}
	for i := range l.rims {
		c.rim = c.rim || l.rims[i].crosses(outline, &box)
	}
	return c
}

// crosses tells whether the segment runs through a tile that a box holds: the box of an upright segment has no area.
func (e *segment) crosses(outline plane.Ring, box *plane.Rect) bool {
	return e.box.Left < box.Right && e.box.Right > box.Left && e.box.Bottom < box.Top && e.box.Top > box.Bottom && e.through(outline)
}

// crosses tells whether the rim runs through a tile.
func (r *rim) crosses(outline plane.Ring, box *plane.Rect) bool {
	if !r.box.Overlaps(*box) {
		return false
	}
	for i := range r.arcs {
		if r.arcs[i].crosses(outline, box) {
			return true
		}
	}
	return false
}

// alike tells whether the same edges of a region cross the tile as of what is solid.
func (c *crossings) alike(of region) bool {
	return c.own[of] == 0 && c.n[of] == c.n[solid] && !(of == drilled && c.rim)
}

// simple tells whether the tile is cut by one straight edge alone, and no pipe: the rim of one
// may cross the tile where its hole has taken the straight edge.
func (c *crossings) simple(l *Layer) bool {
	undrilled := same(l.shape.Region, l.shape.Solid)
	return c.n[solid] == 1 && c.n[visible] <= 1 && (undrilled || !c.rim && c.n[drilled] == 1 && c.last[drilled].on == c.last[solid].on)
}

// alike tells whether two edges are the same.
func (e *segment) alike(f *segment) bool { return e.a == f.a && e.b == f.b && e.on == f.on }

// cutBy is the part of a convex ring to the left of an edge that runs right through
// it, in out. It crosses the ring where the ring's lines cross the edge.
func (e *segment) cutBy(ring, out plane.Ring) plane.Ring {
	line := plane.Through(e.a, e.b)
	last := line.Side(ring[len(ring)-1].Point)
	for i, c := range ring {
		before := ring[(i+len(ring)-1)%len(ring)]
		s := line.Side(c.Point)
		if last > 0 && s < 0 || last < 0 && s > 0 {
			p := plane.Corner{Point: plane.Crossing(e.a, e.b, plane.Through(before.Point, c.Point))}
			if s < 0 {
				p.On = e.on
			}
			out = append(out, p)
		}
		if s > 0 || s == 0 {
			if s == 0 && ring[(i+1)%len(ring)].Point != c.Point && line.Side(ring[(i+1)%len(ring)].Point) < 0 {
				c.On = e.on
			}
			out = append(out, c)
		}
		last = s
	}
	return out
}

// through tells whether the segment has a point inside a convex ring. Exact: two
// convex figures are parted by a line along an edge of one of them, or meet.
func (e *segment) through(ring plane.Ring) bool {
	line := plane.Through(e.a, e.b)
	left, right := false, false
	for _, c := range ring {
		s := line.Side(c.Point)
		left, right = left || s > 0, right || s < 0
	}
	if !left || !right {
		return false
	}
	last := ring[len(ring)-1].Point
	for _, c := range ring {
		line := plane.Through(last, c.Point)
		if line.Side(e.a) <= 0 && line.Side(e.b) <= 0 {
			return false
		}
		last = c.Point
	}
	return true
}
