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
	Amiss  string          // why it has no plan, or empty
	Help   []layout.Remedy // what would help it
}

// ChoicesOf solves every choice of a job. One that cannot be solved says why.
// help is asked what would help one; nil is asked nothing.
func ChoicesOf(job survey.Job, solve func(survey.Job) (layout.Plan, error), help func(survey.Job, layout.Plan) []layout.Remedy) []Choice {
	var out []Choice
	for _, c := range job.Choices {
		one := Choice{Name: c.Name, Chosen: c.Name == job.Chosen}
		as, _ := job.As(c.Name)
		plan, err := solve(as)
		if err != nil {
			one.Amiss = err.Error()
		}
		if one.Plan = plan; err == nil && help != nil {
			one.Help = help(as, plan)
		}
		out = append(out, one)
	}
	return out
}

// choicesAcross is how many choices are set beside each other on one sheet.
const choicesAcross = 3

// choices shows the person who will live with it how the walls will look in each
// choice, tile and grout in their colours, with what it costs. A job without
// choices shows its own plan.
func (b *book) choices() {
	all := b.opts.Choices
	if len(all) < 2 {
		all = []Choice{{Name: "As planned", Chosen: true, Plan: b.plan}}
	}
	title := "Choices"
	if len(all) == 1 {
		title = "How it will look"
	}
	for from := 0; from < len(all); from += choicesAcross {
		some := all[from:min(from+choicesAcross, len(all))]
		b.fitted(subject{title: title}, false, func(f *flow) {
			f.words(plain, "Tile and grout in their colours, seen from inside the room. Prices are those of the job, for the tile in whole boxes.")
			f.table(b.compared(some))
			f.looks(some)
			f.words(plain, finding.LocalCode)
		})
	}
}

// facts that a client asks for, in this order.
var facts = []string{"tile", "joint", "pattern", "smallest cut", "cut pieces", "tiles to buy", "price of the tile, where known", "to be talked about"}

// compared has one column for each of a few choices.
func (b *book) compared(some []Choice) table {
	t := table{columns: []column{{name: "", share: 30, bold: true}}, text: body}
	for _, n := range facts {
		t.rows = append(t.rows, row{cells: []string{n}})
	}
	for _, c := range some {
		name := c.Name
		if c.Chosen && len(some) > 1 {
			name += " (chosen)"
		}
		t.columns = append(t.columns, column{name: name, share: 48})
		for i, fact := range c.facts(b) {
			t.rows[i].cells = append(t.rows[i].cells, fact)
		}
	}
	t.helped(b, some)
	return t
}

// helped adds what would help most, where anything would.
func (t *table) helped(b *book, some []Choice) {
	cells, any := []string{"what would help"}, false
	for _, c := range some {
		text := "–"
		if len(c.Help) > 0 {
			text, any = b.helpText(c.Help[0]), true
		}
		cells = append(cells, text)
	}
	if any {
		t.rows = append(t.rows, row{cells: cells})
	}
}

// facts are the cells of one choice, as many as there are rows.
func (c Choice) facts(b *book) []string {
	if c.Amiss != "" {
		return append([]string{"cannot be set on these walls"}, make([]string, len(facts)-1)...)
	}
	room := c.Plan.Room
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
	if room.Bond.Turned {
		bond += " at 45°"
	}
	least := "none"
	if c.Plan.Setout.Least.Piece != "" {
		least = b.tape(c.Plan.Setout.Least.Size)
	}
	cut, doubts := 0, 0
	for _, w := range c.Plan.Walls {
		for _, p := range w.Pieces {
			if !p.Whole {
				cut++
			}
		}
	}
	for _, x := range c.Plan.Findings {
		if x.Grade == finding.Fault || x.Grade == finding.Warning {
			doubts++
		}
	}
	return []string{strings.TrimSpace(b.fine(room.Tile.Width) + " × " + b.fine(room.Tile.Height) + " " + room.Tile.Name), b.fine(room.Joint), bond,
		least, number(cut), tiles, takeoff.Line{Cents: cents}.Price(), unlessZero(doubts)}
}

// looks draws the walls of each choice one over the other, all at the largest
// scale at which they fit what is left of the leaf.
func (f *flow) looks(some []Choice) {
	scale, found := f.looksScale(some)
	for _, c := range some {
		f.sub(c.Name)
		switch {
		case c.Amiss != "":
			f.words(plain, c.Amiss)
		case !found:
			f.words(plain, "These walls are too large to be drawn on "+f.book.opts.Paper.Name+".")
		default:
			s := drawing.Wrap(c.Plan, drawing.Options{Sheet: true, Finish: true, Scale: scale})
			lo, _ := f.area()
			f.lay(drawing.Point{X: lo.X, Y: f.y}, s)
			f.y += s.Height + 1000
		}
	}
}

func (f *flow) looksScale(some []Choice) (scale drawing.Scale, found bool) {
	room := f.left() - 14*mmPaper*drawing.Micron(len(some)) - 12*mmPaper
	for _, real := range []int64{10, 12, 15, 16, 20, 24, 25, 30, 32, 40, 48, 50, 64, 75, 96, 100, 150, 200, 400, 800} {
		scale = drawing.Scale{Paper: 1, Real: real}
		var high, wide drawing.Micron
		for _, c := range some {
			if c.Amiss == "" {
				s := drawing.Wrap(c.Plan, drawing.Options{Sheet: true, Finish: true, Scale: scale})
				high, wide = high+s.Height, max(wide, s.Width)
			}
		}
		if high <= room && wide <= f.breadth() {
			return scale, true
		}
	}
	return drawing.Scale{}, false
}
