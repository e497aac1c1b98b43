package phase

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// cutCorners works an option out with the tiles cut that only its axis can touch, but for those
// that its own edges cut alone, and with what wall is bare there once these and all that no free
// mark can touch are cut.
func (c *choice) cutCorners(a *axis, o *option) {
	w := c.w
	at, alone := a.standsAt(w, c.origin, o)
	if known := a.cut[at]; alone && known != nil {
		o.take(known)
		return
	}
	p := w.outer
	p.Openings = slices.Clone(p.Openings)
	a.set(&p, o)
	g, t := w.ground(p), &tally{w: w, surely: true}
	for _, e := range a.edges {
		e.bounds(t, c.origin, &p, a)
	}
	far := w.far()
	g.layer.Cover.Clear()
	g.layer.Cover.Take(c.cover)
	w.eachIn(g, w.touchedIn(g.hard, []*axis{a}), c.origin, func(set bond.Set) {
		box := wider(w.boxOf(&set), rounded)
		if !box.Overlaps(a.hull) || w.touchedBut(a, box, 0) {
			return
		}
		count := true
		for _, e := range a.edges {
			count = count && !e.takes(w, &set, &p, a)
		}
		g.layer.Cut(set, func(p *piece.Piece) {
			if count {
				t.piece(p, set.Tile)
			}
		})
		w.Work++
	})
	for _, gap := range g.layer.Cover.Sure() {
		if box := between(gap.From, gap.To, 1); !w.touchedBut(a, box, far) {
			t.sights[boolean(gap.Low)].Bare += within(gap, wider(a.hull, far))
		}
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
	if alone {
		a.cut[at] = &m
	}
	o.take(&m)
	w.Work += 2
}

// take takes what the corners of an option give, beside the terms of its own marks.
func (o *option) take(corners *merit.Merit) {
	m := *corners
	m.Exposed, m.Openings, m.Near = o.merit.Exposed, o.merit.Openings, o.merit.Near
	o.merit, o.cut = m, true
}

// within is how much of a bare stretch lies in a box.
func within(gap piece.Gap, box plane.Rect) length.Length {
	b := between(gap.From, gap.To, 1)
	if !b.Overlaps(box) {
		return 0
	}
	all, in := b.Right-b.Left-2, min(b.Right, box.Right)-max(b.Left, box.Left)-2
	if gap.Edge.Across() {
		all, in = b.Top-b.Bottom-2, min(b.Top, box.Top)-max(b.Bottom, box.Bottom)-2
	}
	return min(gap.Length, max(0, min(all, in)))
}
