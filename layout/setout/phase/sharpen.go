package phase

// sharpen cuts so much of what the best option of an axis touches, if its best is not cut so far, and tells
// whether there was one.
func (c *choice) sharpen(cut int) bool {
	for i := range c.axes {
		if r := &c.axes[i]; r.wait.first().cut < cut {
			if a := c.w.axes[i]; cut < allCut {
				o := r.wait.take()
				c.cutEnds(a, o, r.small)
				r.wait.add(o)
			} else {
				c.cutNext(a, &r.wait)
			}
			return true
		}
	}
	return false
}

// listEnds takes one step towards the best options of ends and the head with their corners cut.
func (c *choice) listEnds() {
	switch n := len(c.axes); {
	case c.sharpen(cornersCut):
	case n < len(c.w.axes) && c.w.axes[n].opening < 0:
		c.list()
	default:
		c.ended = true
	}
}
