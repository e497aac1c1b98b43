package phase

import (
	"slices"

	"coursewright/layout/length"
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
	if w.endsApart && !slices.ContainsFunc(w.axes[fixed:], func(a *axis) bool { return a.atEnds }) {
		m.Mirror = c.mirror(lowers)
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

// mirror is by how much the ends surely differ with what some options cut.
func (c *choice) mirror(lowers []run) length.Length {
	return c.lowered(lowers).mirror()
}

// setAlone works out what the phase gives with an end or the head placed and no other mark.
func (c *choice) setAlone(a *axis, o *option) {
	if a.opening < 0 {
		o.alone = c.with(o.lowers)
		o.alone.Exposed, o.alone.Openings = 0, 0 // which hang on what is listed since
		o.addTo(&o.alone)
	}
}

// with is what stands, with what some options cut of its runs.
func (c *choice) with(lowers []run) merit.Merit {
	if len(lowers) == 0 {
		return c.stands
	}
	m := c.lowered(lowers).merit()
	m.Exposed, m.Openings, m.Built, m.Near, m.Find = c.stands.Exposed, c.stands.Openings, c.stands.Built, c.stands.Near, c.stands.Find
	return m
}

// lowered is what no free mark can touch, with what some options cut of its runs.
func (c *choice) lowered(lowers []run) *tally {
	if len(lowers) == 0 {
		return c.apart
	}
	t := c.apart.copy()
	for _, r := range lowers {
		t.run(r.edges[:r.n], r.least, r.full)
	}
	return t
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
	if c.w.axes[axis].opening >= 0 || len(o.lowers) == 0 {
		return m
	}
	alone := o.alone
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
