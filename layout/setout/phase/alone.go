package phase

import "coursewright/layout/merit"

// setAlone works out what the phase gives with an end or the head placed and no other mark.
func (c *choice) setAlone(a *axis, o *option) {
	if a.opening < 0 {
		m := c.w.merits.next()
		*m = c.with(o.lowers)
		m.Exposed, m.Openings = 0, 0 // which hang on what is listed since
		if o.cut == allCut && c.w.alike.apart {
			m.Mirror = c.mirrorWith(a, o.lowers)
		}
		o.addTo(m)
		o.alone = m
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
