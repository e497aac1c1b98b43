package setout

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// count is what a start cannot beat wherever the free marks go, from the rows
// that arithmetic counts. When it skims, single tiles that need cutting are left out.
func (f *field) count(edge, line length.Length, heads []headed, skim bool) (least Merit) {
	_, along := f.frame(line, edge)
	found := false
	f.eachEnds(line, edge, heads, func(p survey.Placed, heads []headed) {
		var rows *compiled
		var counts []rowCount
		for _, h := range heads {
			if h.compiled != rows {
				rows = h.compiled
				counts = f.countRows(rows, along, f.limitsOf(p), skim)
			}
			m := f.sumCounts(h, counts)
			if !found {
				least, found = m, true
			}
			least = least.either(m)
		}
	})
	return least
}

// either takes the better of each term.
func (m Merit) either(o Merit) Merit {
	return Merit{min(m.Bare, o.Bare), min(m.Slivers, o.Slivers), min(m.OffLine, o.OffLine), m.Smallest.Max(o.Smallest),
		min(m.Imbalance, o.Imbalance), min(m.CutPieces, o.CutPieces), min(m.Find, o.Find)}
}

// rowCount is what is known of the rows of one class.
type rowCount struct {
	tally  piece.Tally
	known  known
	beside piece.Tally // of the tiles that no free opening can reach
}

func (f *field) countRows(rows *compiled, along length.Length, whole part, skim bool) []rowCount {
	out := make([]rowCount, len(rows.classes))
	for i := range rows.classes {
		k := &rows.classes[i]
		c := rowCount{piece.NewTally(), all, piece.NewTally()}
		switch {
		case k.gapes:
			c.tally.Bare, c.known = 1, most
		case !k.strip:
			first := along + k.row.First
			c.tally, c.known = f.arithmetic(k, first, whole, skim)
			if len(f.free) > 0 {
				c.beside = f.besideOpenings(k, first, whole, skim)
			}
		}
		out[i] = c
	}
	return out
}

// sumCounts sums the rows under one place of the head.
func (f *field) sumCounts(h headed, counts []rowCount) Merit {
	sum := piece.NewTally()
	sum.Bare = h.beds
	left, right := f.endRange(), f.endRange()
	for i, c := range counts {
		sure, beside := h.sure[i], h.beside[i]
		if sure+beside == 0 {
			continue
		}
		switch {
		case c.known != all, beside > 0 && (c.beside.Left != c.tally.Left || c.beside.Right != c.tally.Right):
			left.low, right.low = 0, 0 // an end's piece may be smaller than is known
		default:
			left.may(c.tally.Left)
			right.may(c.tally.Right)
		}
		if c.known != nothing {
			times(&sum, c.tally, sure)
		}
		times(&sum, c.beside, beside)
	}
	left.must(sum.Left)
	right.must(sum.Right)
	return Merit{Bare: sum.Bare, Slivers: sum.Slivers, Smallest: sum.Smallest, Imbalance: left.apart(right), CutPieces: sum.Cut}
}

// times adds a tally n times.
func times(sum *piece.Tally, t piece.Tally, n int) {
	if n > 0 {
		t.Bare, t.Slivers, t.Cut = n*t.Bare, n*t.Slivers, n*t.Cut
		sum.Plus(t)
	}
}

// arithmetic counts a row, if arithmetic can.
func (f *field) arithmetic(k *class, first length.Length, p part, skim bool) (piece.Tally, known) {
	if k.plain == nil {
		return piece.NewTally(), nothing
	}
	return f.tallyRow(k, first, p, skim)
}

// besideOpenings counts the tiles of a row that no free opening can reach. A
// stretch that arithmetic cannot count is left out.
func (f *field) besideOpenings(k *class, first length.Length, whole part, skim bool) piece.Tally {
	from, to := f.opened()
	pitch := k.row.Pitch
	from -= length.Mod(from-first, pitch)
	to += length.Mod(first-to, pitch)
	sum := piece.NewTally()
	for _, p := range [...]part{{whole.from, from, whole.left, 0}, {to, whole.to, 0, whole.right}} {
		if t, got := f.arithmetic(k, first, p, skim); got != nothing {
			sum.Plus(t)
		}
	}
	return sum
}

// endRange is between which sizes the least piece at an end of a wall lies; a
// full tile where no piece is cut.
type endRange struct{ low, high length.Length }

func (f *field) endRange() endRange { return endRange{f.room.Tile.Width, f.room.Tile.Width} }

// may notes the piece of a row that may be there or not, must of one that is.
func (r *endRange) may(wide length.Length) {
	if wide != piece.Uncut {
		r.low = min(r.low, wide)
	}
}

func (r *endRange) must(wide length.Length) {
	if wide != piece.Uncut {
		r.high, r.low = min(r.high, wide), min(r.low, wide)
	}
}

// apart is the least that the pieces at two ends can differ by.
func (r endRange) apart(o endRange) length.Length { return max(0, r.low-o.high, o.low-r.high) }
