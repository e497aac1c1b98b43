package phase

import "coursewright/layout/length"

// atEnds tells whether the axis may come to tiles that an end of the wall cuts.
func (a *axis) atEnds() bool { return a.atLeft || a.atRight }

// mirrorWith is by how much the ends surely differ once all is cut that no free mark can touch, and all that the marks
// of an end or the head cut where they stand, wherever the others stand: openings alone may come to other tiles at the ends.
func (c *choice) mirrorWith(a *axis, lowers []run) length.Length {
	opening := (*axis)(nil)
	for _, b := range c.w.axes {
		switch {
		case b == a || !b.atEnds():
		case b.opening < 0 || opening != nil:
			return 0 // two others may make up for each other
		default:
			opening = b
		}
	}
	if opening == nil {
		return c.lowered(lowers).mirror()
	}
	if !opening.clearOfAll(c.w, &option{edges: c.w.outer.Openings[opening.opening]}) {
		return 0 // where it stands first is as good as any other place that is clear of all
	}
	beside := c.beside(opening, &c.w.outer)
	t := c.lowered(lowers)
	clear := t.copy()
	clear.add(beside)
	return min(clear.mirror(), t.mirrorCut(opening))
}

// mirrorCut is by how much the ends surely differ where an opening may cut tiles at them too: an end that it may
// come to may be left with less.
func (t *tally) mirrorCut(a *axis) length.Length {
	left, right := t.ends()
	if a.atLeft && left > right || a.atRight && right > left {
		return 0
	}
	return t.mirror()
}

// lowered is what no free mark can touch, with what some options cut of its runs.
func (c *choice) lowered(lowers []run) *tally {
	if len(lowers) == 0 {
		return c.apart
	}
	t := c.apart.copyTo(&c.w.lowered)
	for _, r := range lowers {
		t.run(r.edges[:r.n], r.least, r.full)
	}
	return t
}
