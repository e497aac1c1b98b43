// Package merit is the order of merit: what makes one set-out better than
// another, judged run by run as a setter judges a room.
//
// Laws, each with a test:
//  1. Compare is a total order up to equality: it is antisymmetric and transitive.
//  2. Adding is monotone: where a comes before b, a plus c comes before b plus c,
//     and equal ones stay equal. So walls that share nothing but the course line
//     are searched apart, and the room's best is made of the walls' best.
//  3. A merit whose sums are no greater, and whose lists hold some of the other's
//     entries, each no smaller, does not come after the other. So what a set-out
//     cannot beat may be counted from some of its pieces.
//
// The preference for rim and head alike is the exception: it does not add up over
// walls, so what is only a part of a room, or a bound, is not judged by it (Part).
//
// Opinion in the trade is split on a few terms; Order says what a job prefers.
package merit

import (
	"cmp"
	"math/bits"

	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// Merit is what a set-out is judged by, term by term. Sizes are in whole marks
// of the tape, rounded down, where the order of merit says so. The zero value
// is the merit of a wall without a cut.
type Merit struct {
	Part       bool          // of a wall, or a bound: what only a whole room shows is not judged
	Sight                    // terms 1 to 4 and 7: what is in plain sight
	Exposed    int           // 5: exposed ends that no class of the bond reaches with a tile edge
	Openings   int           // 6: directions of free openings off the joint lines
	Mirror     length.Length // 8: how far the two ends of walls with like ends differ
	Rim, Head  []piece.Share // 9: runs at a base and at the head, under a whole tile, ascending
	OutOfSight Sight         // 10
	Built      int           // 11: edges of measured openings off the joint lines
	Work       int           // 12
	Corners    int           // 13: inside corners with a run under a third on both walls
	Alike      int           // 13: courses whose two widths at an inside corner are both under or both over half a pitch
	Facing     length.Length // 14: how far the corner cuts of facing walls differ
	Near       length.Length // 15: how far free openings are from the place wished for
	Find       int           // 16: how hard the starts are to find again
	Slack      length.Length // 17: how far the starts may slip, where that had to decide
}

// Sight holds the terms that are judged apart for what is seen and what is not.
type Sight struct {
	Bare       length.Length // 1: boundary with no tile within the reach of sealant
	Unworkable int           // 2: pieces that nobody can cut and set
	Slivers    int           // 3
	Fifths     int           // 4: runs under a fifth
	Thirds     int           // 7: runs under a third
	Runs       []piece.Share // 7: runs under a half, ascending
}

// Term is one of the terms that Compare compares.
type Term int

// The terms in the order of merit. Some jobs prefer them in another order.
const (
	Bare Term = iota
	Unworkable
	Slivers
	Fifths
	Exposed
	Openings
	Thirds
	Runs
	Mirror
	Rim
	Head
	HiddenBare
	HiddenUnworkable
	HiddenSlivers
	HiddenFifths
	HiddenThirds
	HiddenRuns
	Built
	Work
	Corners
	Alike
	Facing
	Near
	Find
	Slack
	None // no term: two merits are equal
)

var names = [...]string{"bare wall", "unworkable pieces", "slivers", "runs under a fifth", "exposed ends off the joint lines",
	"openings off the joint lines", "runs under a third", "the runs", "ends alike", "full tile at the rim", "full tile at the head",
	"bare wall out of sight", "unworkable pieces out of sight", "slivers out of sight", "runs under a fifth out of sight",
	"runs under a third out of sight", "the runs out of sight", "built openings off the joint lines", "work", "corners with two small runs",
	"courses round the corners", "facing walls alike", "the place wished for", "a start to find again", "slack", "nothing"}

// String names the term as a person would.
func (t Term) String() string { return names[t] }

// between is the difference between the least rim and the least head.
func (m *Merit) between() piece.Share {
	if m.Part {
		return piece.Share{Num: 0, Den: 1}
	}
	rim, head := first(m.Rim, m.Head), first(m.Head, m.Rim)
	if rim.Den != head.Den { // in a pattern of several tiles
		rim, head = piece.Share{Num: rim.Num * head.Den, Den: rim.Den * head.Den}, piece.Share{Num: head.Num * rim.Den, Den: rim.Den * head.Den}
	}
	return piece.Share{Num: max(rim.Num-head.Num, head.Num-rim.Num), Den: rim.Den}
}

// compareLarge compares shares whose parts may be products of two lengths.
func compareLarge(a, b piece.Share) int {
	high, low := bits.Mul64(uint64(a.Num), uint64(b.Den))
	otherHigh, otherLow := bits.Mul64(uint64(b.Num), uint64(a.Den))
	return cmp.Or(cmp.Compare(high, otherHigh), cmp.Compare(low, otherLow))
}

// first is the least of an ascending list, or a whole tile, in the parts that
// the other list counts in.
func first(list, other []piece.Share) piece.Share {
	switch {
	case len(list) > 0:
		return list[0]
	case len(other) > 0:
		return piece.Share{Num: other[0].Den, Den: other[0].Den}
	}
	return piece.Share{Num: 1, Den: 1}
}

// Plus is the merit of two parts of a room together.
func (m *Merit) Plus(o *Merit) Merit {
	return Merit{
		Part:  m.Part || o.Part,
		Sight: m.Sight.plus(&o.Sight), Exposed: m.Exposed + o.Exposed, Openings: m.Openings + o.Openings,
		Mirror: m.Mirror + o.Mirror, Rim: merge(m.Rim, o.Rim), Head: merge(m.Head, o.Head),
		OutOfSight: m.OutOfSight.plus(&o.OutOfSight), Built: m.Built + o.Built, Work: m.Work + o.Work,
		Corners: m.Corners + o.Corners, Alike: m.Alike + o.Alike, Facing: m.Facing + o.Facing,
		Near: m.Near + o.Near, Find: m.Find + o.Find, Slack: m.Slack + o.Slack,
	}
}

func (s *Sight) plus(o *Sight) Sight {
	return Sight{Bare: s.Bare + o.Bare, Unworkable: s.Unworkable + o.Unworkable, Slivers: s.Slivers + o.Slivers,
		Fifths: s.Fifths + o.Fifths, Thirds: s.Thirds + o.Thirds, Runs: merge(s.Runs, o.Runs)}
}

func merge(a, b []piece.Share) []piece.Share {
	switch {
	case len(a) == 0:
		return b
	case len(b) == 0:
		return a
	}
	out := make([]piece.Share, 0, len(a)+len(b))
	for len(a) > 0 && len(b) > 0 {
		if b[0].Less(a[0]) {
			out, b = append(out, b[0]), b[1:]
		} else {
			out, a = append(out, a[0]), a[1:]
		}
	}
	return append(append(out, a...), b...)
}
