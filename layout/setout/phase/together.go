package phase

import (
	"slices"

	"coursewright/layout/merit"
)

// bound is what a way to place the marks cannot beat, nor any other that has the same options of so many axes and, of
// the others, later ones: what these cut of runs that others cut too is not known then.
func (c *choice) bound(pick []int, fixed int) merit.Merit {
	w := c.w
	var lowers []run
	for axis, n := range pick[:fixed] {
		lowers = append(lowers, c.option(axis, n).lowers...)
	}
	m := c.with(lowers)
	if w.alike.apart && !slices.ContainsFunc(w.axes[fixed:], (*axis).atEnds) {
		m.Mirror = c.lowered(lowers).mirror()
	}
	least := func(axis int) *option {
		if axis < fixed || w.axes[axis].opening >= 0 {
			return c.option(axis, pick[axis])
		}
		return c.leastOf(axis, pick[axis])
	}
	for axis := range pick {
		least(axis).addTo(&m)
	}
	for axis := fixed; axis < len(pick); axis++ {
		m = c.later(m, c.option(axis, pick[axis]), least, axis, len(pick))
	}
	return m
}

// leastOf is the option of an axis from the nth on that by itself gives least.
func (c *choice) leastOf(axis, n int) *option {
	r, best := &c.axes[axis], (*option)(nil)
	for _, list := range [...][]*option{r.given[min(n, len(r.given)):], r.wait.items} {
		for _, o := range list {
			if best == nil || o.compare(c.w.order, best) < 0 {
				best = o
			}
			if c.w.axes[axis].opening >= 0 {
				break // these are the best first
			}
		}
	}
	return best
}

// later is the more of a bound and of what an end or the head gives alone, which those after it do not beat, with the
// least of every other axis.
func (c *choice) later(m merit.Merit, o *option, least func(axis int) *option, axis, axes int) merit.Merit {
	if c.w.axes[axis].opening >= 0 || len(o.lowers) == 0 && o.alone.Mirror == 0 {
		return m
	}
	alone := *o.alone
	alone.Exposed, alone.Openings = alone.Exposed+c.stands.Exposed, alone.Openings+c.stands.Openings
	for other := range axes {
		if other != axis {
			least(other).addTo(&alone)
		}
	}
	if c.w.order.Better(&m, &alone) {
		return alone
	}
	return m
}
