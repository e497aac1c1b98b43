package phase

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// cutTurns adds up what the boundaries cut where two of them meet, or where wall may be left bare, of
// the tiles that only one axis can touch, but for those in a box. It stops, and is not done, once that
// comes after another merit.
func (c *choice) cutTurns(t *tally, a *axis, p *survey.Placed, but plane.Rect, other *merit.Merit) bool {
	w, g, far := c.w, c.w.ground(*p), c.w.far()
	g.layer.Cover.ClearAtMost()
	g.layer.Cover.Take(c.cover)
	done := true
	w.eachIn(g, &g.touchedBy(w, a).hard, c.origin, func(set bond.Set) {
		if !done {
			return
		}
		box := wider(w.boxOf(&set), rounded)
		if !box.Overlaps(a.hull) || w.touchedBut(a, box, 0) || but.Overlaps(box) {
			return
		}
		count := !a.takes(w, &set, p)
		g.layer.Cut(set, func(p *piece.Piece) {
			if count {
				t.piece(p, set.Tile)
			}
		})
		w.Work++
		done = other == nil || !t.after(other)
	})
	if !done {
		return false
	}
	for _, gap := range g.layer.Cover.Sure() {
		if box := between(gap.From, gap.To, 1); !w.touchedBut(a, box, far) {
			t.sights[boolean(gap.Low)].Bare += within(gap, wider(a.hull, far))
		}
	}
	return true
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
