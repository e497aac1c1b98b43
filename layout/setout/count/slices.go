package count

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// A row that is not plain is plain in the slices between the heights of the corners in
// it. What an edge leaves of a tile in one of them is part of a piece that is no wider,
// and that this edge alone cuts across where no other comes into the tile.

// sliced counts of rows that are not plain the pieces that are sure to be cut across,
// and no more of them than how wide they are.
func (t *tally) sliced(z *zones, rows []bond.Row) {
	far := t.w.fills() // what is wider and higher is no strip that sealant takes
	f := z.outline
	var in []crossing
	var pieces []stub
	for _, row := range rows {
		if f.drilled(row.Low, row.High) {
			continue
		}
		pieces = pieces[:0]
		for i := 0; i+1 < len(f.heights); i++ {
			low, high := max(row.Low, f.heights[i]), min(row.High, f.heights[i+1])
			if high-low <= far || f.blocked[i] {
				continue
			}
			var ok bool
			if in, ok = f.row(low, high, in[:0]); !ok {
				continue
			}
			stubs(slices.Clone(in), row, func(s stub) {
				if s.whole || s.right-s.left <= far || z.mayCome(&s, row) || !f.alone(&s, row) {
					return
				}
				s.wide += 2 // where it leans it is rounded as the whole row is cut
				pieces = narrowest(pieces, s)
			})
		}
		for i := range pieces {
			t.grade(&pieces[i])
			if z.settled(&pieces[i], row) {
				t.cutAcross(&pieces[i], t.w.class(row.Course))
			}
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

// cutAcross notes the size of a piece in the run that the edges cut.
func (t *tally) cutAcross(s *stub, class int) {
	var both [2]piece.Edge
	t.run(s.edges(&both), class, s.wide)
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
	left := row.First + length.Length(s.tile)*row.Pitch
	right := left + row.Width
	for i := range f.steep {
		e := &f.steep[i]
		if e.from.Y >= row.High || e.to.Y <= row.Low || max(e.from.X, e.to.X) <= left || min(e.from.X, e.to.X) >= right {
			continue
		}
		if !(s.cuts[0] != nil && s.cuts[0].edge == e.edge || s.cuts[1] != nil && s.cuts[1].edge == e.edge) {
			return false
		}
	}
	return true
}
