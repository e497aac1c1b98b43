package phase

// sharpen cuts so much of what the best option of an axis touches, if its best is not cut so far, and tells
// whether there was one.
func (c *choice) sharpen(cut int) bool {
	for i := range c.axes {
		if r := &c.axes[i]; r.wait.first().cut < cut {
			o := r.wait.take()
			if a := c.w.axes[i]; cut < allCut {
				c.cutEnds(a, o)
			} else {
				c.cutCorners(a, o)
			}
			r.wait.add(o)
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
