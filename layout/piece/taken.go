package piece

// Copy is the cover as it is now, for Take, in the room of a copy that nobody needs any more, or nil.
func (c *Cover) Copy(d *Cover) *Cover {
	if d == nil {
		d = &Cover{}
	}
	d.slack = c.slack
	was := d.bounds[:cap(d.bounds)]
	d.bounds = d.bounds[:0]
	for i := range c.bounds {
		if e := &c.bounds[i]; len(e.covered) > 0 {
			var room []stretch
			if n := len(d.bounds); n < len(was) {
				room = was[n].covered[:0]
			}
			d.bounds = append(d.bounds, bound{edge: e.edge, from: e.from, to: e.to, covered: append(room, e.covered...)})
		}
	}
	return d
}

// Take covers what is covered on another wall that differs from this one elsewhere alone. Where a boundary ends
// there and goes on here, as beside where an opening may stand, a piece at its end may cover as much of it as sealant and a
// joint reach: that much is taken as covered.
func (c *Cover) Take(from *Cover) {
	if from == nil {
		return
	}
	c.slack = max(c.slack, from.slack)
	for i := range c.bounds {
		e := &c.bounds[i]
		for k := range from.bounds {
			if from.bounds[k].edge != e.edge {
				continue
			}
			beyond := c.rule.Joint + c.rule.Sides[e.edge.Side()].Gap + max(0, e.reach) + 2*rounding
			for _, s := range from.bounds[k].covered {
				if s.from <= from.bounds[k].from.u {
					s.from -= beyond
				}
				if s.to >= from.bounds[k].to.u {
					s.to += beyond
				}
				if s.from, s.to = max(s.from, e.from.u), min(s.to, e.to.u); s.from < s.to {
					e.covered = append(e.covered, s)
				}
			}
		}
	}
}
