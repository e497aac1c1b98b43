package count

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// bareEnds adds what rows leave bare of the edges that they run into, but of those that
// are counted with a free end.
func (t *tally) bareEnds(z *zones, rows []bond.Row) {
	f, space := z.outline, make([]crossing, 0, 16)
	for _, row := range rows {
		if f.band(row.Low, row.High) >= 0 {
			t.bareIn(z, row, row.Low, row.High, true, space)
			continue
		}
		f.slices(row, 0, func(low, high length.Length) { t.bareIn(z, row, low, high, false, space) })
	}
}

// bareIn adds what a row leaves bare between two heights, where no corner is. Where it
// is not the whole row, what is a strip here may be part of a larger piece. What crosses
// the row is listed in the space given.
func (t *tally) bareIn(z *zones, row bond.Row, low, high length.Length, whole bool, space []crossing) {
	in, ok := z.outline.row(low, high, space)
	if !ok {
		return
	}
	for i := range in {
		e := &in[i]
		reach := max(0, e.reach)
		beside := max(t.w.room.Joint, reach) // what the tile above and below covers of it
		if whole {
			beside = max(0, reach-t.w.room.Joint)
		}
		if e.meets && !z.counted(e) && e.apart(row, whole) && !t.w.mayTake(plane.Rect{Left: min(e.x0, e.x1), Right: max(e.x0, e.x1), Bottom: low, Top: high}) {
			t.sights[boolean(e.edge.Low(t.w.rule.Sides))].Bare += max(0, high-low-2*beside)
		}
	}
}
