package merit

import (
	"cmp"
	"slices"

	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// Order is the order in which the terms are compared, and by which rule.
type Order struct {
	terms  []Term
	shared bool
	moved  bool // some terms come elsewhere than where they stand in the list of them
}

// OrderFor is the order of merit as a job prefers it.
func OrderFor(p survey.Prefer) Order {
	o := Order{shared: p.Shared}
	for t := Bare; t < None; t++ {
		o.terms = append(o.terms, t)
	}
	move := func(t, to Term, after int) {
		o.moved = true
		o.terms = slices.DeleteFunc(o.terms, func(u Term) bool { return u == t })
		i := slices.Index(o.terms, to) + after
		o.terms = slices.Insert(o.terms, i, t)
	}
	if p.LargeCuts {
		move(Exposed, Runs, 1)
	}
	if p.Openings {
		move(Built, Thirds, 0)
	}
	if p.FullHead {
		move(Head, Rim, 0)
	}
	return o
}

// Compare tells whether a is better (-1), as good (0) or worse (1) than b, and
// the term that decided.
func (o Order) Compare(a, b *Merit) (int, Term) { return o.Until(a, b, None) }

// Shared is the first term for which walls are judged together, and not each by
// itself.
func (o Order) Shared() Term {
	if o.shared {
		return Rim
	}
	return Corners
}

// Until compares only the terms that come before end.
func (o Order) Until(a, b *Merit, end Term) (int, Term) {
	terms := o.terms
	if !o.moved && end > Thirds {
		c, t := compareSums(a, b)
		if c != 0 {
			return c, t
		}
		terms = terms[Runs:]
	}
	for _, t := range terms {
		if t == end {
			break
		}
		if c := o.compare(a, b, t); c != 0 {
			return c, t
		}
	}
	return 0, None
}

// Better tells whether a comes before b.
func (o Order) Better(a, b *Merit) bool { c, _ := o.Compare(a, b); return c < 0 }

// compareSums compares the terms before the runs, which decide mostly, where they come in their own order.
func compareSums(a, b *Merit) (int, Term) {
	switch {
	case a.Bare != b.Bare:
		return cmp.Compare(a.Bare, b.Bare), Bare
	case a.Unworkable != b.Unworkable:
		return cmp.Compare(a.Unworkable, b.Unworkable), Unworkable
	case a.Slivers != b.Slivers:
		return cmp.Compare(a.Slivers, b.Slivers), Slivers
	case a.Fifths != b.Fifths:
		return cmp.Compare(a.Fifths, b.Fifths), Fifths
	case a.Exposed != b.Exposed:
		return cmp.Compare(a.Exposed, b.Exposed), Exposed
	case a.Openings != b.Openings:
		return cmp.Compare(a.Openings, b.Openings), Openings
	}
	return cmp.Compare(a.Thirds, b.Thirds), Thirds
}

func (o Order) compare(a, b *Merit, t Term) int {
	switch t {
	case Bare:
		return cmp.Compare(a.Bare, b.Bare)
	case Unworkable:
		return cmp.Compare(a.Unworkable, b.Unworkable)
	case Slivers:
		return cmp.Compare(a.Slivers, b.Slivers)
	case Fifths:
		return cmp.Compare(a.Fifths, b.Fifths)
	case Exposed:
		return cmp.Compare(a.Exposed, b.Exposed)
	case Openings:
		return cmp.Compare(a.Openings, b.Openings)
	case Thirds:
		return cmp.Compare(a.Thirds, b.Thirds)
	case Runs:
		return compareShares(a.Runs, b.Runs)
	case Mirror:
		return cmp.Compare(a.Mirror, b.Mirror)
	case Rim:
		if o.shared {
			return compareLarge(a.between(), b.between())
		}
		return compareShares(a.Rim, b.Rim)
	case Head:
		if o.shared {
			return 0
		}
		return compareShares(a.Head, b.Head)
	}
	return compareLast(a, b, t)
}

// compareLast compares the terms from those out of sight on.
func compareLast(a, b *Merit, t Term) int {
	switch t {
	case HiddenBare:
		return cmp.Compare(a.OutOfSight.Bare, b.OutOfSight.Bare)
	case HiddenUnworkable:
		return cmp.Compare(a.OutOfSight.Unworkable, b.OutOfSight.Unworkable)
	case HiddenSlivers:
		return cmp.Compare(a.OutOfSight.Slivers, b.OutOfSight.Slivers)
	case HiddenFifths:
		return cmp.Compare(a.OutOfSight.Fifths, b.OutOfSight.Fifths)
	case HiddenThirds:
		return cmp.Compare(a.OutOfSight.Thirds, b.OutOfSight.Thirds)
	case HiddenRuns:
		return compareShares(a.OutOfSight.Runs, b.OutOfSight.Runs)
	case Built:
		return cmp.Compare(a.Built, b.Built)
	case Work:
		return cmp.Compare(a.Work, b.Work)
	case Corners:
		return cmp.Compare(a.Corners, b.Corners)
	case Alike:
		return cmp.Compare(a.Alike, b.Alike)
	case Facing:
		return cmp.Compare(a.Facing, b.Facing)
	case Near:
		return cmp.Compare(a.Near, b.Near)
	case Find:
		return cmp.Compare(a.Find, b.Find)
	}
	return cmp.Compare(b.Slack, a.Slack)
}

// compareShares compares two ascending lists entry by entry; the shorter is
// filled up with what is better than any entry. The greater entry wins.
func compareShares(a, b []piece.Share) int {
	for i := range min(len(a), len(b)) {
		if a[i] == b[i] {
			continue
		}
		if c := b[i].Compare(a[i]); c != 0 {
			return c
		}
	}
	return cmp.Compare(len(a), len(b))
}
