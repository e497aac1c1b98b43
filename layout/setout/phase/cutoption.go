package phase

import (
	"slices"

	"coursewright/layout/piece"
)

// cutCorners works an option out with the tiles cut that only its axis can touch, but for those
// that its own edges cut alone, and with what wall is bare there once these and all that no free
// mark can touch are cut.
func (c *choice) cutCorners(a *axis, o *option) {
	w, t := c.w, &tally{w: c.w, surely: true}
	p := w.outer
	p.Openings = slices.Clone(p.Openings)
	a.set(&p, o)
	if a.clearOfAll(w, o) {
		t.add(c.notched(a, o, &p))
		t.add(c.beside(a, &p))
	} else {
		a.bounds(t, c.origin, &p)
		c.cutTurns(t, a, &p, nowhere)
	}
	// Other runs are those of edges that stand, which have pieces elsewhere too.
	t.runs = slices.DeleteFunc(t.runs, func(r run) bool {
		other := !slices.ContainsFunc(r.edges[:r.n], func(e piece.Edge) bool { return e.Side() == a.on })
		if other {
			o.lowers = append(o.lowers, r)
		}
		return other
	})
	m := t.merit()
	m.Exposed, m.Openings, m.Near = o.merit.Exposed, o.merit.Openings, o.merit.Near
	o.merit, o.cut = m, allCut
	w.Work += 2
}
