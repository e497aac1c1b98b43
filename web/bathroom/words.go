package bathroom

import (
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"coursewright/layout/cuts"
	"coursewright/layout/finding"
	"coursewright/layout/length"
	"coursewright/layout/mosaic"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/trim"
	"coursewright/web/page"
)

// Bathroom is the page for somebody with wet thumbs: one wall, and one step of
// the work on it.
type Bathroom struct {
	page.Job     // the job and its plan
	Wall     int // the wall of the step
	Drawing  templ.Component
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
	Strip    templ.Component // the first course, where the step is of it
	Row      *Row            // the course of the step, where more of it is left than the step; or nil
	Steps    []Line          // of the wall of the step: what its drawing shows, in the order of setting
}

// Line is one step of a wall in its table.
type Line struct {
	IDs, Piece string // its pieces, and that which leads to it
	What       string
	Set, Here  bool
}

// Row is a course that may be set in one go.
type Row struct {
	Last  string   // the piece its last step is shown by
	Marks []string // of all that is not set
}

// Step is what one sets in one go: whole tiles beside each other, alike cuts
// beside each other, one cut piece, or a sheet of mosaic.
type Step struct {
	Pieces []Placed
	Batch  *cuts.Group // nil for whole tiles
	Cut    *cuts.Cut   // the first piece by itself; nil for whole tiles
	Offcut string      // what becomes of the rest of its tile, or empty
	Course int
	Of     int         // how many pieces the course has
	On     *plan.Face  // a strip, a face of a niche or window, or the top; nil for the wall
	Trim   *trim.Piece // the first piece, where it is trim

	Sheet   *mosaic.Sheet // of mosaic, in one go; nil for tile set one by one
	Field   *mosaic.Field // what it is a sheet of
	OnSheet []string      // what of its tiles is cut: "6 as C3"
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
	return page.JobPath(b.ID, "/bathroom?wall="+strconv.Itoa(wall+1)+"&piece="+url.QueryEscape(id))
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

// ids names the pieces of the step, from the left.
func (s Step) ids() string {
	if s.Sheet != nil {
		return s.Sheet.ID
	}
	first, last := s.Pieces[0], s.Pieces[0]
	for _, p := range s.Pieces {
		if p.Tile.Left < first.Tile.Left {
			first = p
		}
		if p.Tile.Left > last.Tile.Left {
			last = p
		}
	}
	if first.ID == last.ID {
		return first.ID
	}
	return first.ID + " to " + last.ID[strings.LastIndexByte(last.ID, '-')+1:]
}

// place says how much of its course the step is: in words that nobody takes for the first, second or third of it.
func (s Step) place() string {
	n := len(s.Pieces)
	if s.Sheet != nil {
		return fmt.Sprintf("one of %d, from the start outwards", s.Of)
	}
	much := fmt.Sprintf("%d of %d pieces", n, s.Of)
	switch {
	case s.Of == 1:
		much = "the only piece"
	case n == 1:
		much = fmt.Sprintf("one of %d pieces", s.Of)
	case n == s.Of:
		much = fmt.Sprintf("all %d pieces", n)
	}
	if n > 1 && s.Batch == nil {
		much += ", from the start outwards"
	}
	return much
}

// what says in words what is set.
func (b Bathroom) what() string {
	s := b.Step
	n := len(s.Pieces)
	switch {
	case s.Trim != nil:
		return trimText(n, s.Trim, b.Plan.Room.Units)
	case s.On != nil && s.On.Slab:
		return "One slab, cut to size"
	case s.Sheet != nil:
		return "Sheet " + stays(*s.Field, *s.Sheet)
	case s.Batch == nil:
		return page.Count(n, "whole tile") + b.ofKinds()
	case n > 1:
		return fmt.Sprintf("%d like this, cut %s", n, s.Batch.ID) + b.ofKind()
	}
	if how := s.Batch.How.Words(); how != "" && s.Batch.How != cuts.FirstCourse {
		return "Cut " + s.Batch.ID + b.ofKind() + ", " + how
	}
	return "Cut " + s.Batch.ID + b.ofKind()
}

// ofKinds says of whole tiles of a pattern of several which they are; empty of others.
func (b Bathroom) ofKinds() string {
	s := b.Step
	all := plan.TilesOf(b.Plan.Room, s.On, &s.Pieces[0].Piece)
	if len(all) == 1 {
		return ""
	}
	many := make([]int, len(all))
	for _, p := range s.Pieces {
		many[min(p.Of, len(all)-1)]++
	}
	var out []string
	for of, n := range many {
		if n > 0 {
			u := b.Plan.Room.Units
			out = append(out, fmt.Sprintf("%d of %s × %s", n, all[of].Width.Fine(u), all[of].Height.Fine(u)))
		}
	}
	return ": " + strings.Join(out, ", ")
}

// ofKind says which further tile of a pattern a piece is cut from; empty of its first.
func (b Bathroom) ofKind() string {
	if g := b.Step.Batch; g.Of > 0 {
		return ", of " + g.Tile
	}
	return ""
}

// trimText says what of trim is set.
func trimText(n int, t *trim.Piece, units length.System) string {
	switch {
	case n > 1:
		return page.Count(n, "whole piece") + " of " + t.Trim.Name
	case t.Cut():
		return t.Trim.Name + ", cut to " + t.Size(units)
	case t.Corner:
		return t.Trim.Name + ", corner piece"
	}
	return "1 whole piece of " + t.Trim.Name
}

// where says of what the step is a part: a course, a row of a strip or a face, or
// the trim of the wall.
func (b Bathroom) where() string {
	s := b.Step
	switch {
	case s.Trim != nil && s.On != nil:
		return "trim of the " + s.On.Name() + ", " + s.place()
	case s.Trim != nil:
		return "trim, " + s.place()
	case s.On != nil && s.On.Slab:
		return s.On.Name()
	case s.Sheet != nil && s.On != nil:
		return s.On.Name() + ", " + sheetRow(s.Field, s.Sheet) + ", " + s.place()
	case s.Sheet != nil:
		return sheetRow(s.Field, s.Sheet) + ", " + s.place()
	case s.On != nil:
		return fmt.Sprintf("%s, row %d, %s", s.On.Name(), s.Course, s.place())
	}
	return fmt.Sprintf("%s %d, %s", b.course(), s.Course, s.place())
}

// named says a part of the wall for those who hear it: its course, or its name.
func (b Bathroom) named(p Part) string {
	if _, err := strconv.Atoi(p.Name); err != nil {
		return p.Name
	}
	return b.course() + " " + p.Name
}

// setButton is what the large button says.
func (s Step) setButton() string {
	left, n := s.left(), len(s.Pieces)
	switch {
	case s.Sheet != nil && left == n:
		return "Sheet set"
	case left < n:
		return fmt.Sprintf("Set the other %d", left)
	case n == 2:
		return "Both set"
	case n > 2:
		return fmt.Sprintf("All %d set", n)
	}
	return "Set"
}

// rowButton is what the button says that sets all that is left of a course.
func (b Bathroom) rowButton() string {
	n := len(b.Row.Marks)
	if n == b.Step.Of {
		return fmt.Sprintf("All %d of %s %d are set", n, b.course(), b.Step.Course)
	}
	return fmt.Sprintf("The other %d of %s %d are set", n, b.course(), b.Step.Course)
}

func (p Part) progress() string { return fmt.Sprintf("%d of %d set", p.Set, p.Total) }

// strayed says how many ticks fit nothing any more.
func (b Bathroom) strayed() string {
	if len(b.Astray) == 1 {
		return "1 tick no longer applies"
	}
	return fmt.Sprintf("%d ticks no longer apply", len(b.Astray))
}

// forget is what the button says that drops them.
func (b Bathroom) forget() string {
	if len(b.Astray) == 1 {
		return "Forget it for good"
	}
	return fmt.Sprintf("Forget these %d for good", len(b.Astray))
}

// turn names a step on another wall by that wall.
func (b Bathroom) turn(t *Turn, name string) string {
	if t.Name != "" {
		return name + ": " + t.Name
	}
	return name
}
