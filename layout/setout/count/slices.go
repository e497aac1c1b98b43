package count

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// A row that is not plain is plain in the slices between the heights of the corners in
// it. What an edge leaves of a tile in one of them is part of a piece that is no wider,
// and that this edge alone cuts across where no other comes into the tile.

// uneven is a row that is not plain, in slices. It begins at its shift.
type uneven struct {
	row    bond.Row
	slices []slice
	ends   [2][]stretch // of those, what the row's free end on the left, and on the right, is sure to cut
	edges  []*steep     // that come into its heights
}

// slice is a part of a row between two heights with what crosses it.
type slice struct {
	stretch
	in []crossing
}

// uneven cuts a row into slices; what is lower than sealant takes along an edge is none.
func (z *zones) uneven(row bond.Row) *uneven {
	f, u := z.outline, &uneven{row: row}
	counted := z.counts(row)
	f.slices(row, z.w.fills(), func(low, high length.Length) {
		if in, ok := f.row(low, high, nil); ok && paired(in) {
			u.slices = append(u.slices, slice{stretch{low, high}, in})
		}
		for end, right := range [...]bool{false, true} {
			if z.zoned(right) && !counted && !z.crowded(right, low, high) {
				u.ends[end] = append(u.ends[end], stretch{low, high})
			}
		}
	})
	for i := range f.steep {
		if e := &f.steep[i]; e.from.Y < row.High && e.to.Y > row.Low {
			u.edges = append(u.edges, e)
		}
	}
	return u
}

// counts tells whether a row is counted with the rows of a band.
func (z *zones) counts(row bond.Row) bool {
	for i := 0; i+1 < len(z.outline.heights); i++ {
		if low, high := z.band(i); low <= row.Low && row.High <= high {
			return true
		}
	}
	return false
}

// paired tells whether crossings are where tile begins and where it ends, in turn.
func paired(in []crossing) bool {
	for i := range in {
		if in[i].onLeft != (i%2 == 0) {
			return false
		}
	}
	return len(in)%2 == 0
}

// sliced counts of rows that are not plain, and begin at along, the pieces that are sure to be
// cut across, and no more of them than how wide they are.
func (t *tally) sliced(z *zones, rows []*uneven, along length.Length) {
	var pieces []stub
	for _, u := range rows {
		pieces = pieces[:0]
		row := begun(u.row, along)
		for i := range u.slices {
			stubs(u.slices[i].in, row, func(s stub) {
				if s.whole || s.sealed() || z.mayCome(&s, row) || !u.alone(z, &s, row) {
					return
				}
				s.wide += 2 // where it leans it is rounded as the whole row is cut
				pieces = narrowest(pieces, s)
			})
		}
		for i := range pieces {
			t.grade(&pieces[i], 1)
			if z.settled(&pieces[i], row) {
				t.cutAcross(&pieces[i], t.w.class(row.Course))
			}
		}
	}
}

// sliced adds of a row that begins at along the pieces that a free end cuts which is placed at x.
func (z *zones) sliced(s *sure, right bool, x, along length.Length, u *uneven) {
	end, row := boolean(right), begun(u.row, along)
	if n := 2 * len(u.ends[end]); cap(z.between) < n {
		z.between = make([]crossing, 0, n)
	}
	between, pieces := z.between[:0], z.pieces[:0]
	for _, h := range u.ends[end] {
		var pair [2]crossing
		if !z.interval(right, x, h.from, h.to, &pair) {
			continue
		}
		between = append(between, pair[:]...)
		stubs(between[len(between)-2:], row, func(p stub) {
			if p.cuts[end] == nil || p.sealed() || z.comesInto(!right, &p, row) || !z.alone(&p, right, x, row, u.edges) {
				return
			}
			p.wide += 2
			pieces = narrowest(pieces, p)
		})
	}
	for i := range pieces {
		r := pieces[i].run(z.w, row)
		s.grade(r.Low, piece.OnLeft, pieces[i].wide, 1)
		s.runs = append(s.runs, r)
	}
	z.pieces = pieces
}

// slices hands over the heights between which a row is plain, where they are farther
// apart than some distance.
func (f *profile) slices(row bond.Row, far length.Length, each func(low, high length.Length)) {
	for i := 0; i+1 < len(f.heights); i++ {
		low, high := max(row.Low, f.heights[i]), min(row.High, f.heights[i+1])
		if high-low > far && !f.blocked[i] {
			each(low, high)
		}
	}
}

// narrowest keeps of the stubs that are cut from one tile the narrowest.
func narrowest(pieces []stub, s stub) []stub {
	for i := range pieces {
		if pieces[i].tile == s.tile {
			if s.wide < pieces[i].wide {
				pieces[i] = s
			}
			return pieces
		}
	}
	return append(pieces, s)
}

// fills is how far sealant fills at most.
func (w *facts) fills() length.Length {
	most := length.Length(0)
	for _, side := range w.rule.Sides {
		if side.Meets {
			most = max(most, w.room.Sealant-side.Gap)
		}
	}
	return most
}

// alone tells whether no edge comes into a stub's tile and crosses the row there but
// those that cut it.
func (u *uneven) alone(z *zones, s *stub, row bond.Row) bool {
	return !z.drilled(s, row) && !slices.ContainsFunc(u.edges, func(e *steep) bool { return e.comesInto(s, row) && !s.cutBy(e.edge) })
}

// drilled tells whether a pipe may come into a stub's tile.
func (z *zones) drilled(s *stub, row bond.Row) bool {
	left := row.First + length.Length(s.tile)*row.Pitch
	tile := plane.Rect{Left: left, Right: left + row.Width, Bottom: row.Low, Top: row.High}
	return slices.ContainsFunc(z.w.holes, tile.Overlaps)
}

// alone tells so of the tile that a free end cuts which is placed at x.
func (z *zones) alone(s *stub, right bool, x length.Length, row bond.Row, edges []*steep) bool {
	return !z.drilled(s, row) && !slices.ContainsFunc(edges, func(e *steep) bool {
		beyond := max(e.from.X, e.to.X) <= x
		if right {
			beyond = min(e.from.X, e.to.X) >= x
		}
		return !beyond && !z.w.moves(e.edge.Side()) && e.comesInto(s, row) && !s.cutBy(e.edge)
	})
}

// comesInto tells whether an edge comes into a stub's tile.
func (e *steep) comesInto(s *stub, row bond.Row) bool {
	left := row.First + length.Length(s.tile)*row.Pitch
	return e.from.Y < row.High && e.to.Y > row.Low && max(e.from.X, e.to.X) > left && min(e.from.X, e.to.X) < left+row.Width
}

// cutBy tells whether an edge is one of those that cut a stub.
func (s *stub) cutBy(e piece.Edge) bool {
	return s.cuts[0] != nil && s.cuts[0].edge == e || s.cuts[1] != nil && s.cuts[1].edge == e
}
