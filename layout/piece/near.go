package piece

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Near covers what a piece of a pattern covers: every stretch of a boundary from
// which some edge of it, however it slants, is within the reach of sealant in a
// straight line, and a joint more on either side.
func (c *Cover) Near(solid plane.Region) {
	if c == nil {
		return
	}
	c.slack = 2 * rounding
	box := solid.Bounds()
	for i := range c.bounds {
		if c.bounds[i].box.Overlaps(box) {
			c.bounds[i].near(solid, c.rule, c.atMost)
		}
	}
}

func (e *bound) near(solid plane.Region, rule Rule, atMost bool) {
	if e.reach < 0 {
		return
	}
	gap := rule.Sides[e.edge.Side()].Gap
	reach := e.reach + gap + rounding
	if atMost && e.from.v != e.to.v {
		reach += rounding // one that barely comes near may come much farther along
	}
	f := e.edge.Facing()
	seen := func(p plane.Point) uv {
		a := seenFrom(f, p)
		a.v -= at(e.from, e.to, min(max(a.u, e.from.u), e.to.u)) // how far off the boundary it is
		return a
	}
	for _, ring := range solid {
		p := seen(ring[len(ring)-1].Point)
		for _, c := range ring {
			q := seen(c.Point)
			if from, to, ok := within(p, q, -gap, reach); ok {
				from, to = max(e.from.u, from-rule.Joint-rounding), min(e.to.u, to+rule.Joint+rounding)
				if from < to {
					e.covered = append(e.covered, stretch{from, to})
				}
			}
			p = q
		}
	}
}

// within is the stretch of the line at height v from which the segment p–q is no
// farther than reach. The points so near are a convex figure, so that its ends are
// among those of the circles about p and q and of the strip between them.
func within(p, q uv, v, reach length.Length) (from, to length.Length, ok bool) {
	if min(p.v, q.v)-v > reach {
		return 0, 0, false
	}
	add := func(u length.Length) {
		if !ok {
			from, to, ok = u, u, true
		}
		from, to = min(from, u), max(to, u)
	}
	for _, c := range [...]uv{p, q} {
		if h := (c.v - v).Abs(); h <= reach {
			s := plane.Root(reach.Times(reach) - h.Times(h))
			add(c.u - s)
			add(c.u + s)
		}
	}
	du, dv := q.u-p.u, q.v-p.v
	if dv == 0 {
		return from, to, ok
	}
	all := du.Times(du) + dv.Times(dv)
	far := reach.Times(plane.Root(all))
	for _, n := range [...]length.Area{far, -far} {
		u := p.u + length.Length((du.Times(v-p.v)+n)/length.Area(dv))
		if along := (u - p.u).Times(du) + (v - p.v).Times(dv); along >= 0 && along <= all {
			add(u)
		}
	}
	return from, to, ok
}
