package setout

import (
	"cmp"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
)

// Merit is the order of merit of design.md, section 4. It is compared term by
// term from the top; smaller is better except for Smallest.
type Merit plan.Merit

// half is the most that a smallest cut counts for.
var half = piece.Half

// Terms are the names of the order of merit, as Compare counts them.
var Terms = [...]string{"bare wall", "slivers", "edges off the joint lines", "smallest cut", "balance", "cut pieces", "a start that is easy to find"}

// Compare tells whether m is better (-1), as good (0) or worse (1) than o, and
// the index in Terms of the term that decided.
func (m Merit) Compare(o Merit) (order, term int) {
	for term = range Terms {
		if order = m.compare(&o, term); order != 0 {
			return order, term
		}
	}
	return 0, len(Terms)
}

func (m *Merit) compare(o *Merit, term int) int {
	switch term {
	case 0:
		return cmp.Compare(m.Bare, o.Bare)
	case 1:
		return cmp.Compare(m.Slivers, o.Slivers)
	case 2:
		return cmp.Compare(m.OffLine, o.OffLine)
	case 3:
		return compareShares(o.Smallest, m.Smallest)
	case 4:
		return cmp.Compare(m.Imbalance, o.Imbalance)
	case 5:
		return cmp.Compare(m.CutPieces, o.CutPieces)
	}
	return cmp.Compare(m.Find, o.Find)
}

// Better tells whether m comes before o.
func (m Merit) Better(o Merit) bool { order, _ := m.Compare(o); return order < 0 }

func compareShares(a, b piece.Share) int {
	switch {
	case a.Less(b):
		return -1
	case b.Less(a):
		return 1
	}
	return 0
}

// plus is the merit of two walls together.
func (m Merit) plus(o Merit) Merit {
	return Merit{m.Bare + o.Bare, m.Slivers + o.Slivers, m.OffLine + o.OffLine, m.Smallest.Min(o.Smallest),
		m.Imbalance + o.Imbalance, m.CutPieces + o.CutPieces, m.Find + o.Find}
}

// least takes the worse of each term of two merits that cannot be beaten. Level
// and plumb edges of openings off the lines are different edges, and add up.
func (m Merit) least(o Merit) Merit {
	return Merit{max(m.Bare, o.Bare), max(m.Slivers, o.Slivers), m.OffLine + o.OffLine, m.Smallest.Min(o.Smallest),
		max(m.Imbalance, o.Imbalance), max(m.CutPieces, o.CutPieces), max(m.Find, o.Find)}
}

// meritOf is a wall's merit from its tally; full is the tile's width, which
// counts as the cut of an end where no piece is cut.
func meritOf(t piece.Tally, offLine, find int, full length.Length) Merit {
	left, right := t.Left, t.Right
	if left == piece.Uncut {
		left = full
	}
	if right == piece.Uncut {
		right = full
	}
	return Merit{t.Bare, t.Slivers, offLine, t.Smallest, (left - right).Abs(), t.Cut, find}
}
