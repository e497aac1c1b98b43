package bench

import (
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/web/page"
)

// Widths are what a wrong width of each wall would do.
type Widths struct {
	Bench
	Rows []Wrong
}

// Wrong is one wall wider or narrower than measured. Kept is the set-out of the
// plan on it, Best the best one for it; nil where the room cannot be set so.
type Wrong struct {
	Wall       int
	Width, Off length.Length
	Kept, Best *plan.Setout
}

// Off is how wrong a width is taken to be: 1/4 in or 6 mm.
func off(s length.System) length.Length {
	if s == length.Metric {
		return 6 * length.Millimetre
	}
	return length.Inch / 4
}

func (b Bench) off() string { return off(b.Plan.Room.Units).Tape(b.Plan.Room.Units) }

// what names the row: "back 1/4" narrower".
func (w Widths) what(r Wrong) string {
	side := " wider"
	if r.Off < 0 {
		side = " narrower"
	}
	return w.Plan.Walls[r.Wall].Found.Name + " " + w.off() + side
}

// least is the smallest cut of a set-out, with what weighs more than it.
func (w Widths) least(s *plan.Setout) string {
	switch {
	case s == nil:
		return "cannot be set"
	case s.Merit.Bare > 0:
		return "bare wall"
	case s.Least.Piece == "":
		return "nothing is cut"
	}
	text := w.figure(s.Least.Size) + ", " + page.Percent(s.Least.Share)
	if s.Merit.Slivers > 0 {
		text += ", " + page.Count(s.Merit.Slivers, "sliver")
	}
	return text
}

// figure is a length that no line breaks; one that a tape does not show is under
// its smallest step.
func (w Widths) figure(l length.Length) string {
	text := w.Tape(l)
	if l > 0 && l.RoundTo(w.TapeStep()) == 0 {
		text = "under " + w.Tape(w.TapeStep())
	}
	return strings.ReplaceAll(text, " ", "\u00a0")
}

// best tells whether the set-out of the plan stays the best, and if not where
// the wall would start.
func (w Widths) best(r Wrong) string {
	switch {
	case r.Kept == nil || r.Best == nil:
		return ""
	case !r.Best.Better(r.Kept):
		return "stays the best"
	}
	start := r.Best.Walls[r.Wall]
	what := "joint"
	if start.OnTile {
		what = "tile"
	}
	return what + " at " + w.figure(start.X) + ": " + w.least(r.Best)
}
