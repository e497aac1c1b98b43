package piece

import "coursewright/layout/length"

// Covered is what is covered of the boundaries of a wall.
type Covered struct {
	slack length.Length
	on    []coveredOn
	all   []stretch // of one boundary after another
}

// coveredOn is a boundary some of which is covered, in so many stretches.
type coveredOn struct {
	edge     Edge
	from, to uv
	n        int
}

// Copy is what is covered now, for Take, in the room of what nobody needs any more, or nil.
func (c *Cover) Copy(d *Covered) *Covered {
	if d == nil {
		n := 0
		for i := range c.bounds {
			n += len(c.bounds[i].covered)
		}
		d = &Covered{on: make([]coveredOn, 0, len(c.bounds)), all: make([]stretch, 0, n)}
	}
	d.slack, d.on, d.all = c.slack, d.on[:0], d.all[:0]
	for i := range c.bounds {
		if e := &c.bounds[i]; len(e.covered) > 0 {
			d.on, d.all = append(d.on, coveredOn{e.edge, e.from, e.to, len(e.covered)}), append(d.all, e.covered...)
		}
	}
	return d
}

// Take covers what is covered on another wall that differs from this one elsewhere alone, or on this very wall. Where a
// boundary ends there and goes on here, as beside where an opening may stand, a piece at its end may cover as much of it as
// sealant and a joint reach: that much is taken as covered.
func (c *Cover) Take(from *Covered) {
	if from == nil {
		return
	}
	c.slack = max(c.slack, from.slack)
	all := from.all
	for _, f := range from.on {
		covered := all[:f.n]
		all = all[f.n:]
		if e := c.alike(&f); e != nil {
			e.covered = append(e.covered, covered...)
			continue
		}
		for i := range c.bounds {
			if e := &c.bounds[i]; e.edge == f.edge {
				e.take(&f, covered, c.rule.Joint+c.rule.Sides[e.edge.Side()].Gap+max(0, e.reach)+2*rounding)
			}
		}
	}
}

// alike is the boundary that runs from the same place to the same, or nil.
func (c *Cover) alike(f *coveredOn) *bound {
	for i := range c.bounds {
		if e := &c.bounds[i]; e.edge == f.edge && e.from == f.from && e.to == f.to {
			return e
		}
	}
	return nil
}

// take covers what is covered of another boundary on the same edge, at its ends so far beyond.
func (e *bound) take(f *coveredOn, covered []stretch, beyond length.Length) {
	for _, s := range covered {
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
