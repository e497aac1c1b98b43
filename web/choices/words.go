package choices

import (
	"cmp"
	"fmt"
	"net/url"
	"slices"
	"strconv"

	"github.com/a-h/templ"

	"coursewright/layout/finding"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"
	"coursewright/web/page"
)

// Choices is the page that puts the choices of a job side by side.
type Choices struct {
	page.Job
	sight
	Options []Option
}

// drawn is the first choice that has a drawing: all have the same walls.
func (c Choices) drawn() (Option, bool) {
	i := slices.IndexFunc(c.Options, func(o Option) bool { return o.Drawing != nil })
	if i < 0 {
		return Option{}, false
	}
	return c.Options[i], true
}

// shows says what its drawing shows of a choice.
func (o Option) shows() string {
	if o.Front >= 0 {
		return "Wall " + o.Plan.Walls[o.Front].Found.Name + " of " + o.Name
	}
	return "The wrap of " + o.Name
}

// placeOf is the id of a choice on the page.
func placeOf(i int) string { return "choice" + strconv.Itoa(i) }

// Option is one choice, solved.
type Option struct {
	page.Job // its faults are why it cannot be set
	Drawing  templ.Component
	Fitted   bool // drawn a little smaller than it was laid out, to be in sight as a whole
	Front    int  // the wall that is drawn, or -1 for all
	Name     string
	Chosen   bool
	Alone    bool // the job has no choices yet
	Buy      takeoff.Takeoff
	Cuts     []page.Cut // of what is drawn
}

// walls are those that are drawn, by index.
func (o Option) walls() []int {
	if o.Front >= 0 {
		return []int{o.Front}
	}
	all := make([]int, len(o.Plan.Walls))
	for i := range all {
		all[i] = i
	}
	return all
}

// helpQuery names the choice whose help is asked for.
func (o Option) helpQuery() string {
	if o.Alone {
		return ""
	}
	return "?" + url.Values{"of": {o.Name}}.Encode()
}

// tile and grout are the choice's colours.
func (o Option) tile() string { return cmp.Or(o.Typed.Tile.Colour, survey.UsualTile.String()) }

func (o Option) grout() string { return cmp.Or(o.Typed.Grout, survey.UsualGrout.String()) }

// facts are what people choose by.
func (o Option) facts() []page.Figure {
	b := o.Job
	tiles, cost := "none", "not known"
	if len(o.Buy.Lines) > 0 {
		tiles, cost = takeoff.Tiles(o.Buy.Lines), priced(o.Buy)
	}
	figures := b.Figures()
	return append([]page.Figure{
		{Name: "Tile", Value: page.TileLine(b)},
		{Name: "Joint", Value: page.JointLine(b)},
		{Name: "Bond", Value: page.BondLine(b)},
		{Name: "Pins", Value: page.PinsLine(b)},
	}, append(figures[:3:3], page.Figure{Name: "Tiles to buy", Value: tiles}, page.Figure{Name: "Cost, where known", Value: cost})...)
}

// another is a name for a copy of a choice that none has yet: “first 2”, “first 3”.
func (c Choices) another(name string) string {
	for n := 2; ; n++ {
		next := fmt.Sprintf("%s %d", name, n)
		if !slices.ContainsFunc(c.Options, func(o Option) bool { return o.Name == next }) {
			return next
		}
	}
}

// priced adds up what has a price, and says what has none.
func priced(t takeoff.Takeoff) string {
	total, known := takeoff.Total(t.Lines)
	if known == 0 {
		return "not known"
	}
	if without := takeoff.Unpriced(t.Lines); without != "" {
		return total.Cost() + ", without " + without
	}
	return total.Cost()
}

// graded counts the findings of a grade, and gives the worst of them in words.
func (o Option) graded() []page.Figure {
	var out []page.Figure
	for _, g := range []finding.Grade{finding.Fault, finding.Warning, finding.Advice} {
		n := 0
		for _, f := range o.Plan.Findings {
			if f.Grade == g {
				n++
			}
		}
		class := ""
		if g == finding.Fault {
			class = page.Bad(n)
		}
		out = append(out, page.Figure{Name: map[finding.Grade]string{finding.Fault: "Faults", finding.Warning: "Warnings", finding.Advice: "Advice"}[g], Value: strconv.Itoa(n), Class: class})
	}
	return out
}

// grave are the findings a person should read before choosing, the same said once.
func (o Option) grave() []string {
	const most = 6
	var out []string
	more := 0
	for _, f := range o.Plan.Findings {
		switch {
		case f.Grade != finding.Fault && f.Grade != finding.Warning || slices.Contains(out, page.Unbroken(f.Text)):
		case len(out) == most:
			more++
		default:
			out = append(out, page.Unbroken(f.Text))
		}
	}
	if more > 0 {
		out = append(out, fmt.Sprintf("and %d more", more))
	}
	return out
}
