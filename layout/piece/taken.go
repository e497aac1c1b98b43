package piece

import "coursewright/layout/length"

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

// Take covers what is covered on another wall that differs from this one elsewhere alone, or on this very wall. Where a
// boundary ends there and goes on here, as beside where an opening may stand, a piece at its end may cover as much of it as
// sealant and a joint reach: that much is taken as covered.
func (c *Cover) Take(from *Cover) {
	if from == nil {
		return
	}
	c.slack = max(c.slack, from.slack)
	for k := range from.bounds {
		f := &from.bounds[k]
		if e := c.alike(f); e != nil {
			e.covered = append(e.covered, f.covered...)
			continue
		}
		for i := range c.bounds {
			if e := &c.bounds[i]; e.edge == f.edge {
				e.take(f, c.rule.Joint+c.rule.Sides[e.edge.Side()].Gap+max(0, e.reach)+2*rounding)
			}
		}
	}
}

// alike is the boundary that runs from the same place to the same, or nil.
func (c *Cover) alike(f *bound) *bound {
	for i := range c.bounds {
		if e := &c.bounds[i]; e.edge == f.edge && e.from == f.from && e.to == f.to {
			return e
		}
	}
	return nil
}

// take covers what is covered of another boundary on the same edge, at its ends so far beyond.
func (e *bound) take(f *bound, beyond length.Length) {
	for _, s := range f.covered {
		if s.from <= f.from.u {
			s.from -= beyond
		}
		if s.to >= f.to.u {
			s.to += beyond
		}
		if s.from, s.to = max(s.from, e.from.u), min(s.to, e.to.u); s.from < s.to {
			e.covered = append(e.covered, s)
		}
	}
}
