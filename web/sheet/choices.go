package sheet

import (
	"strconv"
	"strings"

	"coursewright/layout"
	"coursewright/layout/finding"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"
	"coursewright/web/drawing"
)

// Choice is one of several ways to tile the room, to be set beside the others.
type Choice struct {
	Name   string
	Chosen bool
	Plan   layout.Plan
	Amiss  string // why it has no plan, or empty
}

// ChoicesOf solves every choice of a job. One that cannot be solved says why.
func ChoicesOf(job survey.Job, solve func(survey.Job) (layout.Plan, error)) []Choice {
	var out []Choice
	for _, c := range job.Choices {
		one := Choice{Name: c.Name, Chosen: c.Name == job.Chosen}
		as, _ := job.As(c.Name)
		plan, err := solve(as)
		if err != nil {
			one.Amiss = err.Error()
		}
		one.Plan = plan
		out = append(out, one)
	}
	return out
}

// choices compares the choices of a job for the person who will live with one:
// in a table, and drawn below each other at one scale.
func (b *book) choices() {
	f := b.flow(subject{title: "Choices"}, false)
	if len(b.opts.Choices) < 2 {
		f.words(body, "There is nothing to compare: this job has no choices.")
		return
	}
	const across = 3
	for from := 0; from < len(b.opts.Choices); from += across {
		f.table(b.compared(b.opts.Choices[from:min(from+across, len(b.opts.Choices))]))
		f.y += 4000
	}
	for _, c := range b.opts.Choices {
		f.choice(c)
	}
	f.words(plain, finding.LocalCode)
}

// compared has one column for each of a few choices.
func (b *book) compared(some []Choice) table {
	t := table{columns: []column{{name: "", share: 34, bold: true}}, text: plain}
	names := []string{"tile", "joint", "bond", "smallest cut", "slivers", "cut pieces", "tiles to buy", "cost, where known", "faults", "warnings", "advice"}
	for _, n := range names {
		t.rows = append(t.rows, row{cells: []string{n}})
	}
	for _, c := range some {
		name := c.Name
		if c.Chosen {
			name += " (chosen)"
		}
		t.columns = append(t.columns, column{name: name, share: 52})
		for i, fact := range c.facts(b, len(names)) {
			t.rows[i].cells = append(t.rows[i].cells, fact)
		}
	}
	return t
}

// facts are the cells of one choice, as many as there are rows.
func (c Choice) facts(b *book, n int) []string {
	if c.Amiss != "" {
		return append([]string{"cannot be set on these walls"}, make([]string, n-1)...)
	}
	room, merit := c.Plan.Room, c.Plan.Setout.Merit
	tiles, cents := "none", int64(0)
	for i, l := range b.buying(c.Plan).Lines {
		if cents += l.Cents; i == 0 { // tiles stand first
			tiles = l.Amount()
		}
	}
	bond := string(room.Bond.Kind)
	if room.Bond.Num > 0 {
		bond += " " + strconv.FormatInt(room.Bond.Num, 10) + "/" + strconv.FormatInt(room.Bond.Den, 10)
	}
	least := "none"
	if c.Plan.Setout.Least.Piece != "" {
		least = b.tape(c.Plan.Setout.Least.Size)
	}
	out := []string{strings.TrimSpace(b.fine(room.Tile.Width) + " × " + b.fine(room.Tile.Height) + " " + room.Tile.Name), b.fine(room.Joint), bond,
		least, number(merit.Slivers), number(merit.CutPieces), tiles, takeoff.Line{Cents: cents}.Price()}
	for _, g := range []finding.Grade{finding.Fault, finding.Warning, finding.Advice} {
		count := 0
		for _, x := range c.Plan.Findings {
			if x.Grade == g {
				count++
			}
		}
		out = append(out, number(count))
	}
	return out
}

// choice draws one choice as wide as the paper allows, at a scale of the ladder.
func (f *flow) choice(c Choice) {
	if c.Amiss != "" {
		f.sub(c.Name)
		f.words(plain, c.Amiss)
		return
	}
	lo, hi := f.area()
	for _, scale := range ladder(c.Plan.Room.Units) {
		s := drawing.Wrap(c.Plan, drawing.Options{Sheet: true, Scale: scale})
		if s.Width > hi.X-lo.X || s.Height > (hi.Y-lo.Y)*2/3 {
			continue
		}
		f.need(s.Height + 20*mmPaper)
		f.sub(c.Name + ", " + scaleText(scale, c.Plan.Room.Units))
		f.lay(drawing.Point{X: lo.X, Y: f.y}, s)
		f.y += s.Height + 2000
		return
	}
	f.sub(c.Name)
	f.words(plain, "These walls are too large to be drawn side by side on "+f.book.opts.Paper.Name+".")
}
