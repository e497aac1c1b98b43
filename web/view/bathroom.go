package view

import (
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"coursewright/layout/cuts"
	"coursewright/layout/finding"
	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// Bathroom is the page for somebody with wet thumbs: one wall, and one step of
// the work on it.
type Bathroom struct {
	Bench    // the job and its plan; Wall is the wall of the step
	Step     *Step
	Back     *Turn     // nil before the first step
	Next     *Turn     // nil after the last
	Parts    []Part    // the walls in setting order
	Courses  []Part    // of this wall
	Here     Part      // this wall
	All      Part      // the whole job
	Open     string    // the first piece of this wall that is not set, or empty
	Astray   []Strayed // ticks that no piece of the plan fits
	Notice   string    // what did not work just now
	Cautions []finding.Finding
	Sketch   templ.Component
}

// Step is what one sets in one go: whole tiles beside each other, alike cuts
// beside each other, or one cut piece.
type Step struct {
	Pieces    []Placed
	Batch     *cuts.Group // nil for whole tiles
	From      string      // the piece whose off-cut it may come out of, or empty
	Course    int
	First, Of int // place of the first piece in its course, and how many that has
}

// Placed is a piece with its tick.
type Placed struct {
	piece.Piece
	Mark string
	Set  bool
}

// Part is a wall or a course, and how much of it is set.
type Part struct {
	Name, Letter string
	Piece        string // where to go on in it
	Wall         int    // index into the plan's walls
	Set, Total   int
	Here         bool
}

// Turn is the step before or after this one.
type Turn struct {
	Piece string
	Wall  int
	Name  string // of the wall, when it is another one
}

// Strayed is a tick that no piece of the plan fits any more.
type Strayed struct{ Piece, Mark string }

// to is the address of a piece on this page.
func (b Bathroom) to(wall int, id string) templ.SafeURL {
	return jobPath(b.ID, "/bathroom?wall="+strconv.Itoa(wall+1)+"&piece="+url.QueryEscape(id))
}

func (b Bathroom) course() string {
	if b.Plan.Room.Bond.Plumb {
		return "column"
	}
	return "course"
}

// done tells whether every piece of the step is set.
func (s Step) done() bool { return s.left() == 0 }

// left counts the pieces that are not set.
func (s Step) left() int {
	n := 0
	for _, p := range s.Pieces {
		if !p.Set {
			n++
		}
	}
	return n
}

// ids names the pieces of the step.
func (s Step) ids() string {
	first, last := s.Pieces[0].ID, s.Pieces[len(s.Pieces)-1].ID
	if first == last {
		return first
	}
	return first + " to " + last[strings.LastIndexByte(last, '-')+1:]
}

// place says where in its course the step stands.
func (s Step) place() string {
	if n := len(s.Pieces); n > 1 {
		return fmt.Sprintf("%d to %d of %d", s.First, s.First+n-1, s.Of)
	}
	return fmt.Sprintf("%d of %d", s.First, s.Of)
}

// what says in words what is set.
func (s Step) what() string {
	n := len(s.Pieces)
	switch {
	case s.Batch == nil:
		return count(n, "whole tile")
	case n > 1:
		return fmt.Sprintf("%d like this, cut %s", n, s.Batch.ID)
	}
	return "Cut " + s.Batch.ID
}

// setButton is what the large button says.
func (s Step) setButton() string {
	left, n := s.left(), len(s.Pieces)
	switch {
	case left < n:
		return fmt.Sprintf("Set the other %d", left)
	case n == 2:
		return "Both set"
	case n > 2:
		return fmt.Sprintf("All %d set", n)
	}
	return "Set"
}

// Large is one large figure: a name and a length in its parts.
type Large struct{ Name, Whole, Fraction, Unit string }

// sizes are the figures to cut to, rounded down as in the cut schedule.
func (b Bathroom) sizes() []Large {
	s := b.Step.Batch.Size
	heights, widths := s.Tapers()
	out := b.both(nil, "wide", widths && s.Bottom > 0 && s.Top > 0, s.Width, Large{Name: "below"}, s.Bottom, Large{Name: "above"}, s.Top)
	return b.both(out, "high", heights && s.Left > 0 && s.Right > 0, s.Height, Large{Name: "left"}, s.Left, Large{Name: "right"}, s.Right)
}

// both adds one figure, or those of the two sides where they differ.
func (b Bathroom) both(out []Large, name string, two bool, all length.Length, first Large, a length.Length, second Large, z length.Length) []Large {
	if !two {
		return append(out, b.large(name, all))
	}
	return append(out, b.large(name+" "+first.Name, a), b.large(name+" "+second.Name, z))
}

func (b Bathroom) large(name string, l length.Length) Large {
	return inParts(name, l.Fine(b.Plan.Room.Units))
}

// fraction follows the whole number at a small distance.
func (l Large) fraction() string {
	if l.Fraction == "" || l.Whole == "" {
		return l.Fraction
	}
	return " " + l.Fraction
}

// inParts takes a length as it is written into whole, fraction and unit.
func inParts(name, text string) Large {
	out := Large{Name: name, Whole: text}
	if number, found := strings.CutSuffix(text, " mm"); found {
		out.Whole, out.Unit = number, "mm"
		return out
	}
	if number, found := strings.CutSuffix(text, `"`); found {
		out.Whole, out.Unit = number, `"`
		if strings.Contains(number, "/") {
			at := strings.LastIndexAny(number, " -") + 1
			out.Whole, out.Fraction = strings.TrimSuffix(number[:at], " "), number[at:]
		}
	}
	return out
}

// more are the lines on a cut that are no width and no height: notches, holes.
func (b Bathroom) more() []string {
	var out []string
	for _, line := range b.Step.Batch.Words(b.Plan.Room.Units) {
		if strings.HasPrefix(line, "notch ") || strings.HasPrefix(line, "hole ") {
			out = append(out, line)
		}
	}
	return out
}

// made says which edges are cut, and which stay as made.
func (b Bathroom) made() string {
	g := b.Step.Batch
	out := "Heavy edges are cut: " + strings.Join(g.Cut, ", ") + "."
	if len(g.Cut) == 0 {
		out = ""
	}
	if len(g.Factory) > 0 {
		out += " As made: " + strings.Join(g.Factory, ", ") + "."
	}
	return out
}

// Edge is where an edge of the first piece stands.
type Edge struct{ Name, At, From string }

// edges say where the first piece of the step stands: by edges as made where it
// has them, because those are the ones that are held to a line.
func (b Bathroom) edges() []Edge {
	p := b.Step.Pieces[0]
	box := p.Face.Bounds()
	side, x := "left edge", box.Left
	if box.Left != p.Tile.Left && box.Right == p.Tile.Right {
		side, x = "right edge", box.Right
	}
	end, y := "bottom edge", box.Bottom
	if box.Bottom != p.Tile.Bottom && box.Top == p.Tile.Top {
		end, y = "top edge", box.Top
	}
	if len(b.Step.Pieces) > 1 {
		side = "first " + side
	}
	return []Edge{{side, b.tape(x), "from the left end, " + b.fromStart(x)}, {end, b.tape(y.Abs()), over(y)}}
}

func over(y length.Length) string {
	switch {
	case y < 0:
		return "under the level line"
	case y > 0:
		return "over the level line"
	}
	return "on the level line"
}

// fromStart says where a place is from the start of the wall.
func (b Bathroom) fromStart(x length.Length) string {
	switch d := x - b.Plan.Walls[b.Wall].Start.X; {
	case d < 0:
		return b.tape(-d) + " left of the start"
	case d > 0:
		return b.tape(d) + " right of the start"
	}
	return "on the start"
}

// leftEdge is where one of several tiles begins.
func (b Bathroom) leftEdge(p Placed) string {
	return b.tape(p.Face.Bounds().Left) + " from the left end"
}

func (p Part) progress() string { return fmt.Sprintf("%d of %d set", p.Set, p.Total) }

// strayed says how many ticks fit nothing any more.
func (b Bathroom) strayed() string {
	if len(b.Astray) == 1 {
		return "1 tick no longer applies"
	}
	return fmt.Sprintf("%d ticks no longer apply", len(b.Astray))
}

// turn names a step on another wall by that wall.
func (b Bathroom) turn(t *Turn, name string) string {
	if t.Name != "" {
		return name + ": " + t.Name
	}
	return name
}
