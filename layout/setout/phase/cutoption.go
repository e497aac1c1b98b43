package phase

import (
	"slices"

	"coursewright/layout/merit"
	"coursewright/layout/piece"
)

// cutNext works the best option that waits further out. The first time it stops cutting once another
// promises more.
func (c *choice) cutNext(a *axis, wait *queue[*option]) {
	o := wait.take()
	var other *merit.Merit
	if !o.stopped && !wait.empty() {
		other = wait.first().merit
	}
	c.cutCorners(a, o, other)
	wait.add(o)
}

// cutCorners works an option out with the tiles cut that only its axis can touch, but for those
// that its own edges cut alone, and with what wall is bare there once these and all that no free
// mark can touch are cut. It stops, and notes so, once that comes after another merit.
func (c *choice) cutCorners(a *axis, o *option, other *merit.Merit) {
	w, t, done := c.w, &tally{w: c.w, surely: true, runs: c.w.cutRuns[:0]}, false
	p := a.placed(w, o)
	if a.clearOfAll(w, o) {
		var notched *tally
		notched, done = c.notched(a, o, &p, other)
		t.add(notched)
		t.add(c.beside(a, &p))
	} else {
		a.bounds(t, c.origin, &p)
		done = c.cutTurns(t, a, &p, nowhere, other)
	}
	o.lowers = o.lowers[:0]
	w.cutRuns = t.runs
	// Other runs are those of edges that stand, which have pieces elsewhere too.
	t.runs = slices.DeleteFunc(t.runs, func(r run) bool {
		other := !slices.ContainsFunc(r.edges[:r.n], func(e piece.Edge) bool { return e.Side() == a.on })
		if other {
			o.lowers = append(o.lowers, r)
		}
		return other
	})
	m := w.merits.next()
	*m = t.merit()
	m.Exposed, m.Openings = o.merit.Exposed, o.merit.Openings
	o.merit, o.stopped = m, !done
	if done {
		o.cut = allCut
	}
	c.setAlone(a, o)
	w.Work += 2
}
