package phase

import "coursewright/layout/merit"

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
