package count

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// bareEnd is where an edge may be left bare by rows that begin at their shift.
type bareEnd struct {
	crossing
	row    bond.Row
	n      int           // of such rows
	height length.Length // of what there is of the row
	whole  bool          // that is all of it
}

// bareEnds lists of the edges that a row runs into those that it may leave bare, but for those
// that are counted with a free end, and those of which a free opening may take something.
func (z *zones) bareEnds(into []bareEnd, row bond.Row) []bareEnd {
	f := z.outline
	if low, high, one := f.only(row); one {
		return z.bareIn(into, row, low, high, true)
	}
	f.slices(row, 0, func(low, high length.Length) { into = z.bareIn(into, row, low, high, false) })
	return into
}

// only gives the heights of a row between which there is wall, where no corner lies between
// them, nor a pipe: a whole row, or what an end leaves of one.
func (f *profile) only(row bond.Row) (low, high length.Length, one bool) {
	if f.band(row.Low, row.High) >= 0 {
		return row.Low, row.High, true
	}
	for i := 0; i+1 < len(f.heights); i++ {
		from, to := max(row.Low, f.heights[i]), min(row.High, f.heights[i+1])
		if from >= to {
			continue
		}
		in, ok := f.row(from, to, nil)
		switch {
		case !ok, f.blocked[i] || len(in) > 0 && (one || f.drilled(from, to)):
			return 0, 0, false
		case len(in) > 0:
			low, high, one = from, to, true
		}
	}
	return low, high, one
}

// bareIn lists them between two heights of a row, where no corner is. Where that is not the whole
// row, what is a strip here may be part of a larger piece.
func (z *zones) bareIn(into []bareEnd, row bond.Row, low, high length.Length, whole bool) []bareEnd {
	in, ok := z.outline.row(low, high, nil)
	if !ok {
		return into
	}
	for i := range in {
		e := &in[i]
		if e.meets && !z.counted(e) && !z.mayTake(plane.Rect{Left: min(e.x0, e.x1), Right: max(e.x0, e.x1), Bottom: low, Top: high}) {
			into = alsoBare(into, bareEnd{*e, row, 1, high - low, whole})
		}
	}
	return into
}

// alsoBare adds one more end, or notes that it is like one of those there are.
func alsoBare(ends []bareEnd, e bareEnd) []bareEnd {
	for i := range ends {
		if o := &ends[i]; o.crossing == e.crossing && o.row.First == e.row.First && o.height == e.height && o.whole == e.whole {
			o.n++
			return ends
		}
	}
	return append(ends, e)
}

// bareEnds adds what rows that begin at along leave bare of the edges that they run into.
func (t *tally) bareEnds(ends []bareEnd, along length.Length) {
	for i := range ends {
		e := &ends[i]
		t.sights[boolean(e.edge.Low(t.w.rule.Sides))].Bare += length.Length(e.n) * e.bare(begun(e.row, along), t.w.room.Joint)
	}
}

// bare is how much of the height of one row is bare along an edge: less what the tile above and
// below covers of it. What is no longer than the corner with an edge out of sight may be out of sight
// itself, and is not counted.
func (e *bareEnd) bare(row bond.Row, joint length.Length) length.Length {
	height, reach := e.height, e.fills()
	beside := max(joint, reach)
	switch {
	case !e.apart(row, e.whole):
		if height = e.partly(row, height, e.whole); height == 0 {
			return 0
		}
	case e.whole:
		beside = max(0, reach-joint)
	}
	if height -= 2 * beside; height <= max(0, e.reach)+joint {
		return 0
	}
	return height
}

// mayTake tells whether a free opening may take some of the boundary in a part of the wall, or
// come so near that only a strip is left, in the frame of the rows.
func (z *zones) mayTake(r plane.Rect) bool {
	far := z.w.room.Joint + z.w.room.Sealant + 4
	return z.w.freeIn(plane.Rect{Left: r.Left - far, Right: r.Right + far, Bottom: r.Bottom - far, Top: r.Top + far})
}
