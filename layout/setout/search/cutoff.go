package search

import "coursewright/layout/merit"

// cutoff is what a wall's merit must not be worse than, together with what the
// other walls of the room cannot beat on the line.
type cutoff struct {
	rest, known *merit.Merit
	optional    bool // nothing need be found once the work is spent
}

// spares tells whether nothing need be found once the work is spent.
func (c *cutoff) spares() bool { return c != nil && c.optional }

// passed tells whether a wall's merit is worse than the cutoff.
func (c *cutoff) passed(o merit.Order, m *merit.Merit) bool {
	if c == nil {
		return false
	}
	sum := m.Plus(c.rest)
	order, _ := o.Until(&sum, c.known, o.Shared())
	return order > 0
}
