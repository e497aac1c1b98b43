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
	_, f.Term = order.Compare(its, chosen)
	f.Its, f.Chosen = Figure(room.Units, f.Term, its, chosen), Figure(room.Units, f.Term, chosen, its)
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

// Figure is what a merit has in one term, in the unit of the term. Of a list it
// is the first entry that differs from the other's.
func Figure(units length.System, t merit.Term, m, other *merit.Merit) string {
	switch t {
	case merit.Bare:
		return bare(units, m.Bare)
	case merit.HiddenBare:
		return bare(units, m.OutOfSight.Bare) + " out of sight"
	case merit.Unworkable:
		return counted(m.Unworkable, "unworkable piece")
	case merit.HiddenUnworkable:
		return counted(m.OutOfSight.Unworkable, "unworkable piece") + " out of sight"
	case merit.Slivers:
		return counted(m.Slivers, "sliver")
	case merit.HiddenSlivers:
		return counted(m.OutOfSight.Slivers, "sliver") + " out of sight"
	case merit.Fifths:
		return counted(m.Fifths, "run") + " of cuts under a fifth of a tile"
	case merit.HiddenFifths:
		return counted(m.OutOfSight.Fifths, "run") + " of cuts under a fifth of a tile out of sight"
	case merit.Thirds:
		return counted(m.Thirds, "run") + " of cuts under a third of a tile"
	case merit.HiddenThirds:
		return counted(m.OutOfSight.Thirds, "run") + " of cuts under a third of a tile out of sight"
	case merit.Exposed:
		return counted(m.Exposed, "exposed end") + " off the joint lines"
	case merit.Openings:
		return counted(m.Openings, "direction") + " of free openings off the joint lines"
	case merit.Built:
		return counted(m.Built, "edge") + " of built openings off the joint lines"
	case merit.Runs:
		return "a run of cuts at " + entry(m.Runs, other.Runs, "half a tile or more")
	case merit.HiddenRuns:
		return "a run of cuts at " + entry(m.OutOfSight.Runs, other.OutOfSight.Runs, "half a tile or more") + " out of sight"
	case merit.Rim:
		return entry(m.Rim, other.Rim, "a whole tile") + " at the rim"
	case merit.Head:
		return entry(m.Head, other.Head, "a whole tile") + " at the head"
	case merit.Mirror:
		return m.Mirror.Tape(units) + " between the two ends"
	case merit.Facing:
		return m.Facing.Tape(units) + " between facing walls"
	case merit.Near:
		return m.Near.Tape(units) + " from the place wished for"
	case merit.Work:
		return strconv.Itoa(m.Work) + " points of work"
	case merit.Corners:
		return counted(m.Corners, "corner") + " with small cuts on both sides"
	case merit.Alike:
		return counted(m.Alike, "course") + " that do not run on round a corner"
	case merit.Find:
		return "starts that count " + strconv.Itoa(m.Find) + " to find again"
	case merit.Slack:
		return m.Slack.Tape(units) + " of slack"
	}
	return "the same"
}

// entry is the first entry of an ascending list that differs from the other's.
func entry(list, other []piece.Share, past string) string {
	for i, s := range list {
		if i >= len(other) || s.Less(other[i]) || other[i].Less(s) {
			return Percent(s)
		}
	}
	return past
}

// Percent is a share as a person reads it, rounded down.
func Percent(s piece.Share) string { return strconv.FormatInt(s.Num*100/s.Den, 10) + " %" }

func bare(units length.System, l length.Length) string {
	if l == 0 {
		return "no bare wall"
	}
	return l.Tape(units) + " of bare wall"
}

func counted(n int, what string) string {
	switch n {
	case 0:
		return "no " + what + "s"
	case 1:
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
