package phase

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
)

// closer cuts more of the tiles that no free mark can touch: first those in the corners and at the
// pipes, then all, which shows what wall is bare there. It stops once that comes after another merit, and goes on
// from there when it is asked once more.
func (c *choice) closer(other *merit.Merit) {
	if c.cut < cornersCut {
		c.closerTurns(other)
	} else {
		c.closerZones(other)
	}
	c.w.lines.sure(&c.stands, c.line, c.edge, 0, 0)
	c.unsay()
}

// closerTurns cuts what stands in the corners and at the pipes, beside what the edges are sure to cut.
func (c *choice) closerTurns(other *merit.Merit) {
	w, t, edges := c.w, c.apart, afresh(c.w)
	w.atBest(&edges, c.line, c.edge, 0, 0, w.inner)
	g := w.ground(w.outer)
	g.layer.Cover.ClearAtMost()
	g.layer.Cover.Take(c.cover)
	stop, seen := false, 0
	w.eachIn(g, &g.turns, c.origin, func(set bond.Set) {
		if stop || w.touched(w.boxOf(&set), 0) || w.standsAlone(&set) {
			return
		}
		if seen++; seen <= c.seen {
			return
		}
		c.seen = seen
		g.layer.Cut(set, func(p *piece.Piece) { t.piece(p, set.Tile) })
		w.Work++
		stop = other != nil && t.afterWith(&edges, other)
	})
	if c.cover = g.layer.Cover.Copy(c.cover); !stop {
		c.cut, c.seen = cornersCut, 0
	}
	edges.add(t)
	c.stands = edges.merit()
	w.runs = edges.runs
}

// closerZones cuts all that is left, along one boundary after another: those first at which that most often showed
// that a phase is no good.
func (c *choice) closerZones(other *merit.Merit) {
	w, t := c.w, c.apart
	g := w.ground(w.outer)
	g.layer.Cover.ClearAtMost()
	g.layer.Cover.Take(c.cover)
	if c.order == nil {
		c.order = w.shown.first(len(g.zones.boxes))
	}
	stop := false
	for ; c.zone < len(c.order) && !stop; c.zone++ {
		n, seen := c.order[c.zone], 0
		g.zones.eachOf(&w.Pattern, g.box, c.order[:c.zone], n, c.origin, func(set bond.Set) {
			box := w.boxOf(&set)
			if stop || w.touched(box, 0) || slices.ContainsFunc(g.turns.boxes, box.Overlaps) && !w.standsAlone(&set) {
				return
			}
			if seen++; seen <= c.seen {
				return
			}
			c.seen = seen
			g.layer.Cut(set, func(p *piece.Piece) { t.piece(p, set.Tile) })
			w.Work++
			stop = other != nil && t.after(other)
		})
		if stop {
			w.shown[n]++
			break
		}
		c.seen = 0
		c.bare(t, g, g.meets[n])
		if stop = other != nil && t.after(other); stop {
			w.shown[n]++
		}
	}
	if c.zone == len(c.order) {
		c.bare(t, g, g.meetsFar)
		c.cut = allCut
	}
	c.cover = g.layer.Cover.Copy(c.cover)
	c.stands = t.merit()
}

// bare adds what wall is bare along some boundaries, where no free mark comes.
func (c *choice) bare(t *tally, g *ground, bounds []int) {
	for _, n := range bounds {
		for _, gap := range g.layer.Cover.SureOf(n) {
			if !c.w.touched(between(gap.From, gap.To, 1), c.w.far()) {
				t.sights[boolean(gap.Low)].Bare += gap.Length
			}
		}
	}
}

// shown is how often each of some boundaries showed that a phase is no good.
type shown []int

// first is in which order so many boundaries are cut.
func (s *shown) first(n int) []int {
	if len(*s) != n {
		*s = make(shown, n)
	}
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return (*s)[b] - (*s)[a] })
	return order
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
