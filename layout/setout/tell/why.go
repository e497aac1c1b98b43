package tell

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"
)

// Least is the piece with the smallest share among the runs in sight, of walls and of
// tops where they are laid.
func Least(walls []plan.Wall) plan.Least {
	best := plan.Least{Share: piece.Share{Num: 1, Den: 1}}
	for i, w := range walls {
		runs := w.Runs
		if w.Top != nil {
			runs = append(slices.Clone(runs), w.Top.Runs...)
		}
		for _, r := range runs {
			if !r.Low && r.Share.Less(best.Share) {
				best = plan.Least{Wall: i, Piece: r.Piece, Size: r.Least, Share: r.Share}
			}
		}
	}
	if best.Piece != "" && best.Size == 0 {
		best.Point = slices.ContainsFunc(walls[best.Wall].All(), func(p piece.Piece) bool { return p.ID == best.Piece && len(p.Visible) > 0 })
	}
	return best
}

// Bound says what no set-out can beat, where the search settled before it had
// looked at everything; empty where it is proven.
func Bound(room *survey.Room, r *search.Result) string {
	if r.Proven {
		return ""
	}
	return Unproven(room.Units, r.Order(), &r.Bound, &r.Merit)
}

// Unproven says what no set-out can beat, beside what the one that was found gives.
func Unproven(units length.System, order merit.Order, bound, found *merit.Merit) string {
	better, term := order.Compare(bound, found)
	if better >= 0 {
		return "Not every set-out was looked at; none can be better than this one."
	}
	best, is := Figure(units, term, bound, found), Figure(units, term, found, bound)
	if best == is {
		return fmt.Sprintf("Not every set-out was looked at. This one has %s; the best there may be differs from that by less than the figure shows.", is)
	}
	return fmt.Sprintf("Not every set-out was looked at. The best there may be has at best %s; this one has %s.", best, is)
}

// Reasons are plain sentences: where the smallest cut is, and which term decided
// against each classic start and line.
func Reasons(s *plan.Setout, room survey.Room, walls []plan.Wall) []string {
	var out []string
	switch {
	case s.Least.Piece == "":
		out = append(out, "No tile in sight needs a cut under its full size.")
	case s.Least.Point:
		out = append(out, fmt.Sprintf("The smallest cut is %s on wall %s: it runs out to a point.", s.Least.Piece, walls[s.Least.Wall].Found.Name))
	case s.Least.Size == 0:
		out = append(out, fmt.Sprintf("The smallest cut is %s on wall %s: all of it lies behind the tile of the next wall.",
			s.Least.Piece, walls[s.Least.Wall].Found.Name))
	default:
		out = append(out, fmt.Sprintf("The smallest cut in sight is %s: %s, %s of a tile, on wall %s.",
			s.Least.Piece, s.Least.Size.Fine(room.Units), Percent(s.Least.Share), walls[s.Least.Wall].Found.Name))
	}
	for _, w := range walls {
		out = append(out, Because(w))
		out = append(out, Legs(room, w)...)
		if w.Top != nil && !w.Top.Slab {
			out = append(out, onTop(room, w.Top))
		}
	}
	for _, l := range s.Lines {
		if l.Term != merit.None {
			out = append(out, fmt.Sprintf("With a %s (line at %s) there would be %s instead of %s.", l.Name, l.Line.Tape(room.Units), l.Its, l.Than))
		}
	}
	if s.Bound != "" {
		out = append(out, s.Bound)
	}
	return out
}

// Because tells against each classic start of a wall what it would give. Where the wall
// starts is told by what is struck there, which is not said here a second time.
func Because(w plan.Wall) string {
	switch {
	case w.Found.Set != nil:
		return "Wall " + w.Found.Name + " starts as it is set."
	case w.Found.Single:
		return "Wall " + w.Found.Name + " is laid in single tiles of its own width: a joint in it would leave smaller pieces."
	case w.Start.Pinned:
		return "Wall " + w.Found.Name + " starts as pinned."
	}
	if c := w.Start.Cut; c != nil {
		return fmt.Sprintf("On wall %s tile is cut beside %s: whole tile there would give %s instead of %s.", w.Found.Name, listed("strip", c.Beside), c.Its, c.Than)
	}
	var others []string
	for _, c := range w.Start.Classic {
		if c.Name != "best" && c.Term != merit.None {
			others = append(others, fmt.Sprintf("%s would give %s instead of %s", c.Name, c.Its, c.Than))
		}
	}
	if len(others) == 0 {
		return "On wall " + w.Found.Name + " no start that people know would give anything else."
	}
	return "On wall " + w.Found.Name + " a start with " + strings.Join(others, "; ") + "."
}

// listed names one thing or several: "strip a", "strips a and b".
func listed(what string, names []string) string {
	last := len(names) - 1
	if last == 0 {
		return what + " " + names[0]
	}
	return what + "s " + strings.Join(names[:last], ", ") + " and " + names[last]
}
