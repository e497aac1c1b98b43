package count

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// crossing is a boundary edge where a row crosses it.
type crossing struct {
	x0, x1 length.Length // at the row's lower and upper edge
	v0, v1 length.Length // the same of what is seen
	*steep
}

// at is a plumb edge that a row crosses at x.
func at(x length.Length, s *steep) crossing { return crossing{x, x, x, x, s} }

// fall is where an edge falls among the tiles of a row.
type fall struct {
	tile int64 // the tile that it cuts, or the next one inside
	cut  bool
}

// falls tells where a crossing falls; it is false where it is not in one tile from
// the lower edge of the row to the upper.
func (c crossing) falls(first, tile, pitch length.Length) (fall, bool) {
	a, b := length.Mod(c.x0-first, pitch), length.Mod(c.x1-first, pitch)
	n, m := length.DivFloor(c.x0-first, pitch), length.DivFloor(c.x1-first, pitch)
	inA, inB := a > 0 && a < tile, b > 0 && b < tile
	switch {
	case n != m || inA != inB || !inA && (a == 0) != (b == 0):
		return fall{}, false
	case inA:
		return fall{n, true}, true
	case c.onLeft && a == 0:
		return fall{n, false}, true
	case c.onLeft:
		return fall{n + 1, false}, true
	case a == 0:
		return fall{n - 1, false}, true
	}
	return fall{n, false}, true
}

// stub is one cut piece of a plain row: where it begins and ends at the narrowest,
// and at the widest.
type stub struct {
	cuts        [2]*crossing // on its left and on its right, or nil
	wide        length.Length
	left, right length.Length // of its widest extent
	whole       bool
	tile        int64 // of the row
}

// stubs lists the tiles of a plain row that its crossings cut, and the whole ones
// beside them. It is false where a row is not plain after all.
func stubs(in []crossing, row bond.Row, each func(stub)) bool {
	for i := 0; i+1 < len(in); i += 2 {
		a, b := &in[i], &in[i+1]
		if !a.onLeft || b.onLeft {
			return false
		}
		p, ok := a.falls(row.First, row.Width, row.Pitch)
		q, ok2 := b.falls(row.First, row.Width, row.Pitch)
		if !ok || !ok2 {
			return false
		}
		for _, n := range ends(p.tile, q.tile) {
			s := stub{left: row.First + length.Length(n)*row.Pitch, whole: true, tile: n}
			s.right = s.left + row.Width
			// At the lower edge of the row and at the upper, of what is seen.
			from0, from1, to0, to1 := s.left, s.left, s.right, s.right
			if n == p.tile && p.cut {
				s.cuts[0], s.whole = a, false
				s.left = min(a.x0, a.x1)
			}
			if n == q.tile && q.cut {
				s.cuts[1], s.whole = b, false
				s.right = max(b.x0, b.x1)
			}
			from0, from1, to0, to1 = max(from0, a.v0), max(from1, a.v1), min(to0, b.v0), min(to1, b.v1)
			s.wide = max(0, min(to0-from0, to1-from1))
			each(s)
		}
	}
	return true
}

// ends are the first and the last of the tiles from n to m.
func ends(n, m int64) []int64 {
	switch {
	case m < n:
		return nil
	case m == n:
		return []int64{n}
	}
	return []int64{n, m}
}

// edges are the boundary edges that cut a stub, ascending, put into both.
func (s *stub) edges(both *[2]piece.Edge) []piece.Edge {
	n := 0
	for _, c := range s.cuts {
		if c != nil {
			both[n] = c.edge
			n++
		}
	}
	if n == 2 && both[0] > both[1] {
		both[0], both[1] = both[1], both[0]
	}
	return both[:n]
}

// side is where a stub ends on its left or on its right, at the lower edge of the row and
// at the upper.
func (s *stub) side(end int) [2]length.Length {
	switch c := s.cuts[end]; {
	case c != nil:
		return [2]length.Length{c.x0, c.x1}
	case end == 0:
		return [2]length.Length{s.left, s.left}
	}
	return [2]length.Length{s.right, s.right}
}

// run is the run that a stub of a row belongs to.
func (s *stub) run(w *facts, row bond.Row) Run {
	return Run{Edges: s.edges(&[2]piece.Edge{}), Class: w.class(row.Course), Least: s.wide, Low: s.low(w.rule.Sides)}
}

// low tells whether one of the edges that cut a stub is out of sight.
func (s *stub) low(sides []survey.Boundary) bool {
	return s.cuts[0] != nil && s.cuts[0].edge.Low(sides) || s.cuts[1] != nil && s.cuts[1].edge.Low(sides)
}

// sealed tells whether a stub is only a strip for sealant.
func (s stub) sealed() bool {
	for _, c := range s.cuts {
		if c != nil && c.meets && c.reach > 0 && s.right-s.left <= c.reach {
			return true
		}
	}
	return false
}

// effort is what the cuts of a stub cost.
func (s stub) effort(along, across length.Length) int {
	sum := 0
	straight, taper := false, false
	for _, c := range s.cuts {
		if c != nil {
			straight = straight || c.x0 == c.x1
			taper = taper || c.x0 != c.x1
		}
	}
	if straight && along >= across {
		sum++
	} else if straight {
		sum += 2
	}
	if taper {
		sum += 2
	}
	return sum
}

// apart tells whether all tile of a row stands farther from an edge than sealant
// reaches: what is left of the tile that it falls in is no more than a strip for
// sealant, and the next one is too far off. Strips says that what is so narrow is a
// strip; else there is to be nothing.
func (e *crossing) apart(row bond.Row, strips bool) bool {
	_, far, next, strip := e.before(row, strips)
	return strip && next-far > e.far()
}

// partly is how much of the height of a row, at least, it so stands apart from a leaning
// edge, beyond which the next tile comes within reach of sealant.
func (e *crossing) partly(row bond.Row, height length.Length, strips bool) length.Length {
	near, far, next, strip := e.before(row, strips)
	limit := next - e.far()
	if !strip || near >= limit || near == far {
		return 0
	}
	return height*(min(limit, far)-near)/(far-near) - 2
}

// far is how far off sealant reaches no tile.
func (e *crossing) far() length.Length {
	if e.x0 != e.x1 {
		return e.fills() + 2 // a leaning edge is rounded where it is cut
	}
	return e.fills()
}

// before tells how near an edge comes to what is outside of it and how far from it, where the
// next tile inside begins, and whether what is left of the tile before that is no more than a
// strip for sealant. All is seen from the left.
func (e *crossing) before(row bond.Row, strips bool) (near, far, next length.Length, strip bool) {
	near, far, first := min(e.x0, e.x1), max(e.x0, e.x1), row.First
	if !e.onLeft {
		near, far, first = -far, -near, -row.First-row.Width
	}
	tile, most := first+length.Length(length.DivFloor(near-first, row.Pitch))*row.Pitch, length.Length(0)
	if strips {
		most = max(0, e.reach)
	}
	return near, far, tile + row.Pitch, tile+row.Width-near <= most
}
