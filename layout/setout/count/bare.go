package count

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
)

// bareEnds adds what a plain row leaves bare of the edges that it runs into, but of those
// that are counted with a free end.
func (t *tally) bareEnds(row bond.Row, in []crossing, found []stub, z *zones) {
	n := 0
	for i := 0; i+1 < len(in); i += 2 {
		p, _ := in[i].falls(row.First, row.Width, row.Pitch)
		q, _ := in[i+1].falls(row.First, row.Width, row.Pitch)
		k := len(ends(p.tile, q.tile))
		for right, e := range [...]*crossing{&in[i+1], &in[i]} {
			if !z.counted(e) && t.w.apartFrom(right == 1, e, found[n:n+k], row) {
				t.sights[boolean(e.edge.Low(t.w.rule.Sides))].Bare += t.w.bareOf(e)
			}
		}
		n += k
	}
}

// apartFrom tells whether the tile of a plain row, to the right of an edge or to the
// left of it, stands farther from it than sealant reaches.
func (w *facts) apartFrom(right bool, e *crossing, found []stub, row bond.Row) bool {
	away, any := w.away(right, e, found, row)
	reach := max(0, e.reach)
	if e.x0 != e.x1 {
		reach += 2 // a leaning edge is rounded where it is cut
	}
	return e.meets && !(any && away <= reach)
}

// bareOf is how much of an edge a row leaves bare that stands apart from it: the rows
// above and below cover some of it.
func (w *facts) bareOf(e *crossing) length.Length {
	return max(0, w.rule.Across-2*max(0, max(0, e.reach)-w.room.Joint))
}

// away is how far a row's nearest tile stands from an edge on its left, or on its
// right; any is false where the row has none.
func (w *facts) away(right bool, e *crossing, found []stub, row bond.Row) (away length.Length, any bool) {
	if len(found) == 0 {
		return 0, false
	}
	last := found[len(found)-1]
	if right {
		last = found[0]
	}
	before := row.First + length.Length(length.DivFloor(last.left-row.First, row.Pitch))*row.Pitch // where its tile begins
	switch {
	case last.sealed() && last.cuts[0] != nil && last.cuts[1] != nil:
		return 0, false
	case last.sealed() && right:
		return before + row.Pitch - max(e.x0, e.x1), true
	case last.sealed():
		return min(e.x0, e.x1) - (before - w.room.Joint), true
	case right:
		return last.left - max(e.x0, e.x1), true
	}
	return min(e.x0, e.x1) - last.right, true
}
