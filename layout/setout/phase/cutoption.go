package phase

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// touched tells whether a free mark may come into a box, or nearer than so much to it.
func (w *Wall) touched(box plane.Rect, far length.Length) bool {
	return w.touchedBut(nil, box, far)
}

// boxOf is round a tile where it stands.
func (w *Wall) boxOf(set *bond.Set) plane.Rect { return w.Pattern.Tiles[set.Tile].BoxAt(set.At) }

// movesExposed tells whether the exposed end of the wall is free.
func (w *Wall) movesExposed() bool {
	l, r := w.Found.Left.Meets, w.Found.Right.Meets
	return l != r && (l && w.moves(survey.SideRight) || r && w.moves(survey.SideLeft))
}

// cutCorners works an option out with the tiles cut that only its axis can touch, but for those
// that its own edges cut alone, and with what wall is bare there once these and all that no free
// mark can touch are cut.
func (c *choice) cutCorners(a *axis, o *option) {
	w := c.w
	p := w.outer
	p.Openings = slices.Clone(p.Openings)
	a.set(&p, o)
	g, t := w.ground(p), &tally{w: w}
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
	m.Exposed, m.Openings, m.Near = o.merit.Exposed, o.merit.Openings, o.merit.Near
	o.merit, o.cut = m, true
	w.Work += 2
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

// touchedBut tells whether the marks of another axis may come into a box, or nearer.
func (w *Wall) touchedBut(a *axis, box plane.Rect, far length.Length) bool {
	box = wider(box, far+rounded)
	return slices.ContainsFunc(w.axes, func(b *axis) bool { return b != a && b.hull.Overlaps(box) })
}

// touchedIn is of every zone what holds the tiles there that the marks of some axes may touch. One
// that holds none is nowhere.
func (w *Wall) touchedIn(zones []plane.Rect, axes []*axis) []plane.Rect {
	out := make([]plane.Rect, len(zones))
	for i, z := range zones {
		out[i] = nowhere
		for _, a := range axes {
			if in := meet(z, wider(a.zone, 2*rounded)); !in.Empty() {
				out[i] = round(out[i], in)
			}
		}
	}
	return out
}

// nowhere overlaps nothing.
var nowhere = plane.Rect{Left: length.Longest, Bottom: length.Longest, Right: -length.Longest, Top: -length.Longest}

// round is the box round two boxes.
func round(a, b plane.Rect) plane.Rect {
	return plane.Rect{Left: min(a.Left, b.Left), Bottom: min(a.Bottom, b.Bottom), Right: max(a.Right, b.Right), Top: max(a.Top, b.Top)}
}

// far is how far from a stretch of boundary a tile may stand that covers some of it.
func (w *Wall) far() length.Length { return w.reach() + max(w.rule.Joint, w.rule.Sealant) }

func wider(r plane.Rect, by length.Length) plane.Rect {
	return plane.Rect{Left: r.Left - by, Bottom: r.Bottom - by, Right: r.Right + by, Top: r.Top + by}
}
