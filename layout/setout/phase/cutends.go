package phase

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/piece"
)

// cutEnds works an option of an end or the head out with the tiles cut at its own corners that only its axis can
// touch, and with what is small along edges that stand: most phases are no good by these alone. What wall is bare there is
// not looked at yet.
func (c *choice) cutEnds(a *axis, o *option, small along) {
	w, t := c.w, &tally{w: c.w, surely: true}
	p := a.placed(w, o)
	a.bounds(t, c.origin, &p)
	g := w.ground(p)
	cover := g.layer.Cover
	g.layer.Cover = nil
	w.eachIn(g, &g.touchedBy(w, a).turns, c.origin, func(set bond.Set) {
		box := w.boxOf(&set)
		if !box.Overlaps(a.hull) || w.touchedBut(a, box, 0) || a.takes(w, &set, &p) || a.leaves(o, box) {
			return
		}
		g.layer.Cut(set, func(p *piece.Piece) { t.piece(p, set.Tile) })
		w.Work++
	})
	g.layer.Cover = cover
	t.runs = slices.DeleteFunc(t.runs, func(r run) bool {
		return !slices.ContainsFunc(r.edges[:r.n], func(e piece.Edge) bool { return e.Side() == a.on })
	})
	m := w.merits.next()
	*m = t.merit()
	m.Exposed, m.Openings = o.merit.Exposed, o.merit.Openings
	o.merit, o.cut = m, cornersCut
	small.add(w, a, o)
	c.setAlone(a, o)
	w.Work++
}
