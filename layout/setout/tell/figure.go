// Package tell says what a person is told beside the set-out: why it was chosen,
// what the classic starts and lines would give, how far a start may slip, and how
// far a measurement may be wrong.
package tell

import (
	"fmt"
	"strconv"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// figures compares a set-out with the chosen one. The smallest cut is of the
// runs given.
func figures(room *survey.Room, order merit.Order, its, chosen *merit.Merit, runs []count.Run) plan.Figures {
	f := plan.Figures{Slivers: its.Slivers, Unworkable: its.Unworkable, Bare: its.Bare}
	f.Least, f.Share = smallest(room, runs)
	Against(&f, room.Units, order, its, chosen)
	return f
}

// smallest is the least of the runs in sight, as a share of the tile.
func smallest(room *survey.Room, runs []count.Run) (length.Length, piece.Share) {
	least, share := length.Length(0), piece.Share{Num: 1, Den: 1}
	for _, r := range runs {
		full := room.Tile.Height
		if r.Across() {
			full = room.Tile.Width
		}
		if s := piece.Part(r.Least, full); !r.Low && s.Less(share) {
			least, share = r.Least, s
		}
	}
	return least, share
}

// Against writes into f in what a set-out first differs from the chosen one, and what each
// of them has there.
func Against(f *plan.Figures, units length.System, order merit.Order, its, chosen *merit.Merit) {
	_, f.Term = order.Compare(its, chosen)
	const most = 2 // decimals of a share: 39 % is not told against 39 %
	for decimals := 0; decimals == 0 || decimals <= most && f.Its == f.Chosen; decimals++ {
		own := figureTo(decimals, units, f.Term, chosen, its)
		f.Its, f.Chosen, f.Than = figureTo(decimals, units, f.Term, its, chosen).String(), own.String(), own.alone()
	}
}

// Figure is what a merit has in one term, in the unit of the term. Of a list it
// is the first entry that differs from the other's.
func Figure(units length.System, t merit.Term, m, other *merit.Merit) string {
	return figureOf(units, t, m, other).String()
}

// amount is a figure with the words before and after it that say of what.
type amount struct{ before, is, after string }

func (a amount) String() string { return a.before + a.is + a.after }

// alone is the figure without its words, to stand against another of the same term.
func (a amount) alone() string {
	if a.is == nothing {
		return "none"
	}
	return a.is
}

// nothing is the figure of what there is none of.
const nothing = "no"

func figureOf(units length.System, t merit.Term, m, other *merit.Merit) amount {
	return figureTo(0, units, t, m, other)
}

// figureTo is figureOf with shares to some decimals of a percent.
func figureTo(decimals int, units length.System, t merit.Term, m, other *merit.Merit) amount {
	const hidden = " out of sight"
	switch t {
	case merit.Bare:
		return bare(units, m.Bare)
	case merit.HiddenBare:
		return bare(units, m.OutOfSight.Bare).and(hidden)
	case merit.Unworkable:
		return counted(m.Unworkable, "unworkable piece")
	case merit.HiddenUnworkable:
		return counted(m.OutOfSight.Unworkable, "unworkable piece").and(hidden)
	case merit.Slivers:
		return counted(m.Slivers, "sliver")
	case merit.HiddenSlivers:
		return counted(m.OutOfSight.Slivers, "sliver").and(hidden)
	case merit.Fifths:
		return counted(m.Fifths, "run").and(" of cuts under a fifth of a tile")
	case merit.HiddenFifths:
		return counted(m.OutOfSight.Fifths, "run").and(" of cuts under a fifth of a tile" + hidden)
	case merit.Thirds:
		return counted(m.Thirds, "run").and(" of cuts under a third of a tile")
	case merit.HiddenThirds:
		return counted(m.OutOfSight.Thirds, "run").and(" of cuts under a third of a tile" + hidden)
	case merit.Exposed:
		return counted(m.Exposed, "exposed end").and(" off the joint lines")
	case merit.Openings:
		return counted(m.Openings, "pair").and(" of edges of free openings off the joint lines") // left and right, bottom and top
	case merit.Built:
		return counted(m.Built, "edge").and(" of built openings off the joint lines")
	case merit.Runs:
		return amount{"a run of cuts at ", entry(decimals, m.Runs, other.Runs, "half a tile or more"), ""}
	case merit.HiddenRuns:
		return amount{"a run of cuts at ", entry(decimals, m.OutOfSight.Runs, other.OutOfSight.Runs, "half a tile or more"), hidden}
	case merit.Rim:
		return amount{"", entry(decimals, m.Rim, other.Rim, "a whole tile"), " at the rim"}
	case merit.Head:
		return amount{"", entry(decimals, m.Head, other.Head, "a whole tile"), " at the head"}
	case merit.Mirror:
		return amount{"", m.Mirror.Tape(units), " between the two ends"}
	case merit.Facing:
		return amount{"", m.Facing.Tape(units), " between facing walls"}
	case merit.Near:
		return amount{"", m.Near.Tape(units), " from the place wished for"}
	case merit.Work:
		return amount{"the work of ", strconv.Itoa(m.Work), " plain cuts"}
	case merit.Corners:
		return counted(m.Corners, "corner").and(" with small cuts on both sides")
	case merit.Alike:
		return counted(m.Alike, "course").and(" that do not run on round a corner")
	case merit.Find:
		return amount{"starts that are harder to find again by ", strconv.Itoa(m.Find), " (a full tile at an end counts 1, any other but a middle 2)"}
	case merit.Slack:
		return amount{"", m.Slack.Tape(units), " by which the starts may slip"}
	}
	return amount{is: "the same"}
}

// entry is the first entry of an ascending list that differs from the other's.
func entry(decimals int, list, other []piece.Share, past string) string {
	for i, s := range list {
		if i >= len(other) || s.Less(other[i]) || other[i].Less(s) {
			if decimals > 0 {
				return finely(s, decimals)
			}
			if s.Num > 0 && s.Num*100 < s.Den {
				return "under 1 %"
			}
			return Percent(s)
		}
	}
	return past
}

// finely is Percent with decimals.
func finely(s piece.Share, decimals int) string {
	tens := int64(1)
	for range decimals {
		tens *= 10
	}
	n := s.Num * 100 * tens / s.Den
	return fmt.Sprintf("%d.%0*d %%", n/tens, decimals, n%tens)
}

// Percent is a share as a person reads it, rounded down.
func Percent(s piece.Share) string { return strconv.FormatInt(s.Num*100/s.Den, 10) + " %" }

func bare(units length.System, l length.Length) amount {
	if l == 0 {
		return amount{is: nothing, after: " bare wall"}
	}
	if step := units.Step(); l < step {
		return amount{is: "under " + step.Format(units, 0), after: " of bare wall"}
	}
	return amount{is: l.Tape(units), after: " of bare wall"}
}

func counted(n int, what string) amount {
	switch n {
	case 0:
		return amount{is: nothing, after: " " + what + "s"}
	case 1:
		return amount{is: "1", after: " " + what}
	}
	return amount{is: strconv.Itoa(n), after: " " + what + "s"}
}

// and goes on after the figure.
func (a amount) and(words string) amount {
	a.after += words
	return a
}
