package phase

// ranked are the options of an axis, the best first as far as they were asked for. Before one is
// given its corners are cut.
type ranked struct {
	given []*option
	wait  queue[*option]
	small along // see there
}

// option is the nth best option of an axis, or nil.
func (c *choice) option(axis, n int) *option {
	r := &c.axes[axis]
	for len(r.given) <= n && !r.wait.empty() {
		if r.wait.first().cut == allCut {
			r.given = append(r.given, r.wait.take())
			continue
		}
		c.cutNext(c.w.axes[axis], &r.wait)
	}
	if n >= len(r.given) {
		return nil
	}
	return r.given[n]
}
