package phase

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
)

// closer cuts more of the tiles that no free mark can touch: first those in the corners and at the
// pipes, then all, which shows what wall is bare there. Of all it stops the first time once that comes after
// another merit, and cuts them again when it is asked once more.
func (c *choice) closer(other *merit.Merit) {
	w, t := c.w, c.apart.copy()
	g := w.ground(w.outer)
	g.layer.Cover.Clear()
	all, stop := c.cut+1 == allCut, false
	mayStop := all && !c.stopped && other != nil
	cut := func(set *bond.Set) {
		g.layer.Cut(*set, func(p *piece.Piece) { t.piece(p, set.Tile) })
		w.Work++
		stop = mayStop && t.after(other)
	}
	if all {
		g.layer.Cover.Take(c.cover)
		w.eachIn(g, g.zones, c.origin, func(set bond.Set) {
			box := w.boxOf(&set)
			if !stop && !w.touched(box, 0) && (!slices.ContainsFunc(g.turns, box.Overlaps) || w.standsAlone(&set)) {
				cut(&set)
			}
		})
	} else {
		w.eachIn(g, g.turns, c.origin, func(set bond.Set) {
			if !w.touched(w.boxOf(&set), 0) && !w.standsAlone(&set) {
				cut(&set)
			}
		})
	}
	if c.stopped = stop; !stop {
		c.cutSoFar(t, g, all)
	}
	if !all {
		t = t.copy()
		w.atBest(t, c.line, c.edge, 0, 0, w.inner)
	}
	c.stands = t.merit()
	w.lines.sure(&c.stands, c.line, c.edge, 0, 0)
	c.unsay()
}

// cutSoFar keeps what was cut, with what wall is bare once that is all.
func (c *choice) cutSoFar(t *tally, g *ground, all bool) {
	c.cut++
	if all {
		for _, gap := range g.layer.Cover.Sure() {
			if !c.w.touched(between(gap.From, gap.To, 1), c.w.far()) {
				t.sights[boolean(gap.Low)].Bare += gap.Length
			}
		}
	}
	c.apart, c.cover = t, g.layer.Cover.Copy()
}

// ready lists the options if they are not listed yet.
func (c *choice) ready() {
	for c.cut < allCut {
		c.closer(nil)
	}
	for len(c.axes) < len(c.w.axes) {
		c.list()
	}
}
