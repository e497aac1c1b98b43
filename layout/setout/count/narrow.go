package count

import (
	"cmp"
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// narrow is a part of the wall in which tile runs between two plumb edges less than a tile apart, as in a leg
// beside a tub. Each row that comes into it is cut there, and leaves a run no wider than it is, whether or not there
// is room for whole rows.
type narrow struct {
	stretch
	in    []crossing // the two edges, where both stand
	free  bool       // one of them is a free end of the rows:
	right bool       // that on the right
}

// How a row comes into a narrow part of the wall: it lies in it, reaches into it from below or from above, or through it.
const (
	inside uint16 = 1 << iota
	fromBelow
	fromAbove
	through
)

// mostNarrow bounds how many narrow parts are looked at, the highest first.
const mostNarrow = 3

// narrows are the narrow parts of a wall, and what is cut in them.
type narrows struct {
	*zones
	parts []narrow
	known table[stand, []narrowRow] // beside a free end
}

// narrowsOf finds them. Parts much lower than a row tell little, and are left out.
func narrowsOf(z *zones) *narrows {
	n := &narrows{zones: z, known: newTable[stand, []narrowRow](mostPlaced, z.meter)}
	n.parts = n.find()
	return n
}

func (z *narrows) find() []narrow {
	var out []narrow
	for i := 0; i+1 < len(z.outline.heights); i++ {
		low, high := z.band(i)
		if z.outline.blocked[i] || high-low <= z.w.fills() || 4*(high-low) < z.w.rule.Across {
			continue
		}
		at := stretch{low, high}
		for _, right := range [...]bool{false, true} {
			var pair [2]crossing
			outer := z.stops(right).From
			if right {
				outer = z.stops(right).To
			}
			if z.zoned(right) && z.interval(right, outer, low, high, &pair) && z.isNarrow(pair[:]) {
				out = append(out, narrow{stretch: at, free: true, right: right})
			}
		}
		in, ok := z.outline.row(low, high, nil)
		if !ok || !paired(in) {
			continue
		}
		for k := 0; k < len(in); k += 2 {
			if pair := in[k : k+2]; z.isNarrow(pair) && !slices.ContainsFunc(pair, func(c crossing) bool { return z.w.moves(c.edge.Side()) }) {
				out = append(out, narrow{stretch: at, in: pair})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b narrow) int { return cmp.Compare(b.height(), a.height()) })
	if len(out) > mostNarrow {
		next := out[mostNarrow].height() // of those that are as high none is taken, whichever comes first
		out = slices.DeleteFunc(out, func(n narrow) bool { return n.height() <= next })
	}
	return out
}

func (n *narrow) height() length.Length { return n.to - n.from }

func (z *narrows) isNarrow(pair []crossing) bool {
	a, b := &pair[0], &pair[1]
	return a.x0 == a.x1 && b.x0 == b.x1 && b.x0-a.x0 < z.w.rule.Along
}

// comesIn tells how the rows of a class, of which one of course 0 stands at across, come into a narrow part, by more
// than what sealant takes along an edge. Where some lie in it on every line, no more is told.
func (z *narrows) comesIn(n *narrow, class int, across length.Length) uint16 {
	deep, step := z.w.rule.Across, z.w.rule.Across+z.w.room.Joint
	if guaranteed(n.to-n.from, deep, z.w.period()) > 0 {
		return inside
	}
	var how uint16
	from := n.from - deep
	for y := from + length.Mod(across+step*length.Length(class)-from, z.w.period()); y < n.to; y += z.w.period() {
		switch low, high := y < n.from, y+deep > n.to; {
		case min(n.to, y+deep)-max(n.from, y) <= z.w.fills():
		case low && high:
			how |= through
		case low:
			how |= fromBelow
		case high:
			how |= fromAbove
		default:
			how |= inside
		}
	}
	return how
}

// cutIn lists the runs that rows of a class which begin at along leave in a narrow part between two edges, with the
// ways to come into it for which they are sure of that: nothing else may come into the tile there.
func (z *narrows) cutIn(n *narrow, pair []crossing, class int, along length.Length) (runs []Run, sure uint16) {
	row := bond.Row{Course: class, First: along + z.w.shifts[class], Low: n.from, High: n.to, Width: z.w.rule.Along, Pitch: z.w.rule.Along + z.w.room.Joint}
	var cut []stub
	if !stubs(pair, row, func(s stub) {
		if !s.whole && !s.sealed() && z.mine(n, &s, row) {
			cut = append(cut, s)
		}
	}) || len(cut) == 0 {
		return nil, 0
	}
	for how := inside; how <= through; how <<= 1 {
		row := row
		if how == fromBelow || how == through {
			row.Low -= z.w.rule.Across
		}
		if how == fromAbove || how == through {
			row.High += z.w.rule.Across
		}
		if z.w.touched(row.Low, row.High) || z.w.mayEnd(row, z.w.found.Head.Stops.From) {
			continue
		}
		if !slices.ContainsFunc(cut, func(s stub) bool { return z.meetsMore(n, pair, &s, row) }) {
			sure |= how
		}
	}
	for i := range cut {
		runs = append(runs, cut[i].run(z.w, row))
	}
	return runs, sure
}

// mine tells whether a stub is counted with a narrow part: beside a free end those that it cuts, and those that the edge
// across from it cuts where no feature counts them; else those into whose tile no free end may come.
func (z *narrows) mine(n *narrow, s *stub, row bond.Row) bool {
	if !n.free {
		return !z.mayCome(s, row)
	}
	end := boolean(n.right)
	other := s.cuts[1-end]
	return (s.cuts[end] != nil || other != nil && z.short(n.right, other.x0)) && !z.comesInto(!n.right, s, row)
}

// meetsMore tells whether more comes into a stub's tile than the edges that cut it.
func (z *narrows) meetsMore(n *narrow, pair []crossing, s *stub, row bond.Row) bool {
	at := plane.Rect{Left: pair[0].x0, Right: pair[1].x0, Bottom: n.from, Top: n.to}
	if slices.ContainsFunc(z.w.holes, at.Overlaps) { // elsewhere in the tile a pipe changes nothing of what the edges cut
		return true
	}
	for i := range z.outline.steep {
		e := &z.outline.steep[i]
		switch {
		case z.w.moves(e.edge.Side()) || s.cutBy(e.edge) || !e.comesInto(s, row):
		case n.free && n.right && min(e.from.X, e.to.X) >= pair[1].x0, n.free && !n.right && max(e.from.X, e.to.X) <= pair[0].x0: // beyond the end
		default:
			return true
		}
	}
	return false
}

// standing adds the runs of rows that begin at along in the narrow parts between edges that stand, and rows says by
// part and class how they come in.
func (s *sure) standing(z *narrows, along length.Length, rows []uint16) {
	for i := range z.parts {
		n := &z.parts[i]
		for class := range z.w.shifts {
			if how := rows[i*len(z.w.shifts)+class]; !n.free && how != 0 {
				if runs, sure := z.cutIn(n, n.in, class, along); sure&how != 0 {
					s.runs = append(s.runs, runs...)
				}
			}
		}
	}
}

// narrowRow is what rows of a class leave in a narrow part beside a free end, and for which ways to come in that is sure.
type narrowRow struct {
	pattern int // the place of such rows in a pattern
	sure    uint16
	runs    []Run
}

// beside lists what rows that begin at some place leave in the narrow parts beside a free end. It is worked out once.
func (z *narrows) beside(at stand) []narrowRow {
	if len(z.parts) == 0 {
		return nil
	}
	return z.known.of(at, func() (out []narrowRow) {
		classes := len(z.w.shifts)
		for i := range z.parts {
			n := &z.parts[i]
			var pair [2]crossing
			if !n.free || n.right != at.right || !z.interval(at.right, at.x, n.from, n.to, &pair) {
				continue
			}
			for class := range classes {
				if runs, sure := z.cutIn(n, pair[:], class, at.along); sure != 0 {
					out = append(out, narrowRow{(len(z.outline.heights)-1+i)*classes + class, sure, runs})
				}
			}
		}
		return out
	})
}
