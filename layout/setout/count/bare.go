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
		if low, high, one := f.only(row, space); one {
			t.bareIn(z, row, low, high, true, space)
			continue
		}
		f.slices(row, 0, func(low, high length.Length) { t.bareIn(z, row, low, high, false, space) })
	}
}

// only gives the heights of a row between which there is wall, where no corner lies between
// them, nor a pipe: a whole row, or what an end leaves of one.
func (f *profile) only(row bond.Row, space []crossing) (low, high length.Length, one bool) {
	if f.band(row.Low, row.High) >= 0 {
		return row.Low, row.High, true
	}
	for i := 0; i+1 < len(f.heights); i++ {
		from, to := max(row.Low, f.heights[i]), min(row.High, f.heights[i+1])
		if from >= to {
			continue
		}
		in, _ := f.row(from, to, space)
		switch {
		case f.blocked[i] || len(in) > 0 && (one || f.drilled(from, to)):
			return 0, 0, false
		case len(in) > 0:
			low, high, one = from, to, true
		}
	}
	return low, high, one
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
		if !e.meets || z.counted(e) {
			continue
		}
		n := high - low
		reach := e.fills()
		beside := max(t.w.room.Joint, reach) // what the tile above and below covers of it
		switch {
		case !e.apart(row, whole):
			if n = e.partly(row, n, whole); n == 0 {
				continue
			}
		case whole:
			beside = max(0, reach-t.w.room.Joint)
		}
		if !z.mayTake(plane.Rect{Left: min(e.x0, e.x1), Right: max(e.x0, e.x1), Bottom: low, Top: high}) {
			t.sights[boolean(e.edge.Low(t.w.rule.Sides))].Bare += max(0, n-2*beside)
		}
	}
}

// mayTake tells whether a free opening may take some of the boundary in a part of the wall, or
// come so near that only a strip is left, in the frame of the rows.
func (z *zones) mayTake(r plane.Rect) bool {
	far := z.w.room.Joint + z.w.room.Sealant + 4
	return z.w.freeIn(plane.Rect{Left: r.Left - far, Right: r.Right + far, Bottom: r.Bottom - far, Top: r.Top + far})
}
