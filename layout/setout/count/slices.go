package count

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// A row that is not plain is plain in the slices between the heights of the corners in
// it. What an edge leaves of a tile in one of them is part of a piece that is no wider,
// and that this edge alone cuts across where no other comes into the tile.

// sliced counts of rows that are not plain the pieces that are sure to be cut across,
// and no more of them than how wide they are.
func (t *tally) sliced(z *zones, rows []bond.Row) {
	far := t.w.fills() // what is higher is no strip that sealant takes along an edge
	f := z.outline
	var pieces []stub
	for _, row := range rows {
		pieces = pieces[:0]
		f.slices(row, far, func(low, high length.Length) {
			in, ok := f.row(low, high, nil)
			if !ok {
				return
			}
			stubs(in, row, func(s stub) {
				if s.whole || s.sealed() || z.mayCome(&s, row) || !f.alone(&s, row) {
					return
				}
				s.wide += 2 // where it leans it is rounded as the whole row is cut
				pieces = narrowest(pieces, s)
			})
		})
		for i := range pieces {
			t.grade(&pieces[i])
			if z.settled(&pieces[i], row) {
				t.cutAcross(&pieces[i], t.w.class(row.Course))
			}
		}
	}
}

// sliced adds of a row the pieces that a free end cuts which is placed at x.
func (z *zones) sliced(s *sure, right bool, x length.Length, row bond.Row) {
	f, far, end := z.outline, z.w.fills(), boolean(right)
	for i := 0; i+1 < len(f.heights); i++ {
		if low, high := z.band(i); low <= row.Low && row.High <= high {
			return // it is counted with the rows of the band
		}
	}
	var pair [2]crossing
	var pieces []stub
	f.slices(row, far, func(low, high length.Length) {
		if z.crowded(right, low, high) || !z.interval(right, x, low, high, &pair) {
			return
		}
		between := pair
		stubs(between[:], row, func(p stub) {
			if p.cuts[end] == nil || p.sealed() || !z.alone(&p, right, x, row) {
				return
			}
			p.wide += 2
			pieces = narrowest(pieces, p)
		})
	})
	for i := range pieces {
		r := pieces[i].run(z.w, row)
		s.grade(r.Low, piece.OnLeft, pieces[i].wide, 1)
		s.runs = append(s.runs, r)
	}
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
func (f *profile) alone(s *stub, row bond.Row) bool {
	return !f.w.drilled(s, row) && !slices.ContainsFunc(f.steep, func(e steep) bool { return e.comesInto(s, row) && !s.cutBy(e.edge) })
}

// drilled tells whether a pipe may come into a stub's tile.
func (w *facts) drilled(s *stub, row bond.Row) bool {
	left := row.First + length.Length(s.tile)*row.Pitch
	tile := plane.Rect{Left: left, Right: left + row.Width, Bottom: row.Low, Top: row.High}
	return slices.ContainsFunc(w.holes, tile.Overlaps)
}

// alone tells so of the tile that a free end cuts which is placed at x.
func (z *zones) alone(s *stub, right bool, x length.Length, row bond.Row) bool {
	return !z.w.drilled(s, row) && !slices.ContainsFunc(z.outline.steep, func(e steep) bool {
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

// at is what is sure of the pieces beside a free end that is placed at x, in the rows of
// each band and in those that are plain only in slices.
func (z *zones) at(right bool, x, along length.Length, bands pattern, slow []bond.Row) merit.Merit {
	s := sure{w: z.w, meter: z.meter}
	if !z.reachesOther(right, x) {
		for _, row := range slow {
			z.sliced(&s, right, x, row)
		}
		z.meter.add(len(slow))
	}
	for _, row := range z.beside(stand{right, x, along}) {
		if n := int(bands[row.pattern]); n > 0 {
			s.add(&row, n)
		}
	}
	return s.merit()
}
