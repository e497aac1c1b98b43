package sheet

import (
	"slices"
	"strconv"
	"strings"

	"coursewright/layout"
	"coursewright/layout/finding"
	"coursewright/layout/plan"
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
		if len(some) == 1 {
			b.fitted(subject{title: title}, false, b.one(some))
			continue
		}
		wide, fill := true, b.besideEachOther(some)
		if s, found := b.scaleOf(title, false, b.underEachOther(some)); found {
			if t, across := b.scaleOf(title, true, fill); !across || s.Real < t.Real {
				wide, fill = false, b.underEachOther(some)
			}
		}
		b.fitted(subject{title: title}, wide, func(f *flow) { fill(f) })
	}
}

// aboutLooks stands over the drawings.
const aboutLooks = "Tile and grout in their colours, seen from inside the room. Prices are those of the job, in whole boxes where there are any."

// one fills a leaf with a single choice.
func (b *book) one(some []Choice) func(*flow) {
	return func(f *flow) {
		f.words(plain, aboutLooks)
		f.table(b.compared(some))
		f.look(some[0])
		f.words(plain, finding.LocalCode)
	}
}

// filling fills a leaf with drawings, and gives the scale at which they stand on it.
type filling func(*flow) (drawing.Scale, bool)

// besideEachOther draws each choice over its column of a table.
func (b *book) besideEachOther(some []Choice) filling {
	return func(f *flow) (drawing.Scale, bool) {
		t := b.compared(some)
		f.words(plain, aboutLooks+t.takeAlike(some))
		t.text = plain // so that the drawings have more of the leaf
		t.talkedOver(some)
		scale, found := f.looksAcross(some, t)
		f.table(t)
		f.words(plain, finding.LocalCode)
		return scale, found
	}
}

// scaleOf tries how large drawings stand on a leaf; not found where they take more than one.
func (b *book) scaleOf(title string, wide bool, fill filling) (scale drawing.Scale, found bool) {
	before := b.mark()
	b.fitted(subject{title: title}, wide, func(f *flow) { scale, found = fill(f) })
	found = found && len(b.leaves) == before.leaves+1
	b.back(before)
	return scale, found
}

// facts that a client asks for, in this order.
var facts = []string{"tile", "joint", "pattern", "smallest cut", "cut pieces", "tiles to buy", "known prices", toTalkOver}

const toTalkOver = "to talk over"

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
	t.rows = slices.DeleteFunc(t.rows, func(r row) bool { return strings.Join(r.cells[1:], "") == "" })
	t.helped(b, some)
	return t
}

// takeAlike takes out what is the same in all choices and says it once, so that what differs is all that
// stands beside each. It takes out nothing where nothing differs, or where a choice has no plan.
func (t *table) takeAlike(some []Choice) string {
	if slices.ContainsFunc(some, func(c Choice) bool { return c.Amiss != "" }) {
		return ""
	}
	var differ []row
	var alike []string
	for _, r := range t.rows {
		if said := r.cells[1:]; r.cells[0] == toTalkOver || len(slices.Compact(slices.Clone(said))) > 1 {
			differ = append(differ, r)
		} else {
			alike = append(alike, r.cells[0]+" "+said[0])
		}
	}
	if len(alike) == 0 || !slices.ContainsFunc(differ, func(r row) bool { return r.cells[0] != toTalkOver }) {
		return ""
	}
	t.rows = differ
	return " The same in all: " + strings.Join(alike, ", ") + "."
}

// talkedOver says in words what there is to talk over, where its number stands: two things of each choice.
func (t *table) talkedOver(some []Choice) {
	const most = 2
	at := slices.IndexFunc(t.rows, func(r row) bool { return r.cells[0] == toTalkOver })
	if at < 0 {
		return
	}
	for i, c := range some {
		said := c.talks()
		if n := len(said) - most; n > 0 {
			said = append(said[:most:most], "and "+number(n)+" more")
		}
		t.rows[at].cells[i+1] = strings.Join(said, " ")
	}
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
	tiles, lines := "none", b.buying(c.Plan).Lines
	if len(lines) > 0 {
		tiles = takeoff.Tiles(lines)
	}
	price, _ := takeoff.Total(lines)
	bond := string(room.Bond.Kind)
	if k := room.Bond.Kind; k == survey.Stack || k == survey.Running {
		bond += " bond"
	}
	if room.Bond.Num > 0 {
		bond += " " + strconv.FormatInt(room.Bond.Num, 10) + "/" + strconv.FormatInt(room.Bond.Den, 10)
	}
	if room.Bond.Turned {
		bond += " at 45°"
	}
	least := "none"
	if c.Plan.Setout.Least.Piece != "" {
		least = b.fine(c.Plan.Setout.Least.Size)
		switch l := c.Plan.Setout.Least; {
		case l.Point:
			least = "a point"
		case l.Size == 0:
			least = "hidden"
		}
	}
	doubts := 0
	cut, _ := plan.Count(c.Plan.Walls)
	for _, x := range c.Plan.Findings {
		if x.Grade == finding.Fault || x.Grade == finding.Warning {
			doubts++
		}
	}
	return []string{strings.TrimSpace(b.fine(room.Tile.Width) + " × " + b.fine(room.Tile.Height) + " " + room.Tile.Name), b.fine(room.Joint), bond,
		least, number(cut), tiles, price.Cost(), unlessZero(doubts)}
}

// look draws the walls of a choice at the largest scale at which they fit what is left
// of the leaf.
func (f *flow) look(c Choice) {
	f.sub(c.Name)
	scale, found := looksScale([]Choice{c}, f.breadth(), f.left()-20*mmPaper)
	if !found {
		f.words(plain, f.tooLarge())
		return
	}
	s := looked(c, scale)
	f.lay(drawing.Point{X: f.lo.X, Y: f.y}, s)
	f.y += s.Height + 1000
}

func (f *flow) tooLarge() string {
	return "These walls are too large to be drawn on " + f.book.opts.Paper.Name + "."
}

// looksAcross draws the walls of each choice over its column of a table, all at the
// largest scale at which they fit beside each other and leave room for it.
func (f *flow) looksAcross(some []Choice, t table) (drawing.Scale, bool) {
	const under = 20 * mmPaper // names, and what stands under the table
	xs := f.columns(t.columns)
	scale, found := looksScale(some, xs[2]-xs[1]-3*mmPaper, f.left()-f.high(t)-under)
	name, most := f.of(large), drawing.Micron(0)
	for i, c := range some {
		x := xs[i+1] + padding
		f.text(drawing.Point{X: x, Y: f.y + name.size}, name, name.short(c.Name, xs[i+2]-x-2*mmPaper))
		at, wide := drawing.Point{X: x, Y: f.y + name.leading() + 1000}, xs[i+2]-x-padding
		switch p := f.of(plain); {
		case c.Amiss != "":
			most = max(most, f.column(p, p.wrap(c.Amiss, wide), at))
		case !found:
			most = max(most, f.column(p, p.wrap(f.tooLarge(), wide), at))
		default:
			s := looked(c, scale)
			f.lay(at, s)
			most = max(most, s.Height)
		}
	}
	f.y += name.leading() + 1000 + most + 2000
	return scale, found
}

// column writes lines of text from a place down, and gives how high they are.
func (f *flow) column(s style, lines []string, at drawing.Point) drawing.Micron {
	for i, line := range lines {
		f.text(drawing.Point{X: at.X, Y: at.Y + s.size + drawing.Micron(i)*s.leading()}, s, line)
	}
	return drawing.Micron(len(lines)) * s.leading()
}

// looked is the walls of a choice as they will look.
func looked(c Choice, scale drawing.Scale) drawing.Scene {
	return drawing.Wrap(c.Plan, drawing.Options{Sheet: true, Finish: true, Scale: scale})
}

// looksScales are the scales that are tried, the largest first.
func looksScales() (out []drawing.Scale) {
	for _, real := range []int64{10, 12, 15, 16, 20, 24, 25, 30, 32, 40, 48, 50, 64, 75, 96, 100, 150, 200, 400, 800} {
		out = append(out, drawing.Scale{Paper: 1, Real: real})
	}
	return out
}

// looksScale is the largest scale at which the drawing of each choice fits a room.
func looksScale(some []Choice, wide, high drawing.Micron) (scale drawing.Scale, found bool) {
	for _, scale = range looksScales() {
		if !slices.ContainsFunc(some, func(c Choice) bool {
			if c.Amiss != "" {
				return false
			}
			s := looked(c, scale)
			return s.Height > high || s.Width > wide
		}) {
			return scale, true
		}
	}
	return drawing.Scale{}, false
}
