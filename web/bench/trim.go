package bench

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/a-h/templ"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
	"coursewright/web/drawing"
	"coursewright/web/form"
	"coursewright/web/page"
)

var (
	trimKinds   = page.Choices("bullnose", "bullnose", "quarter round", "quarter round", "pencil", "pencil", "profile", "profile in bars", "cove", "cove along the base")
	trimPlaces  = page.Choices("", "inside the stop", "beyond", "beyond the stop")
	trimCorners = page.Choices("", "as is usual for the kind", "piece", "a corner piece", "mitre", "a mitre")
)

func trimUnit(kind string) string {
	if survey.Kind(kind) == survey.Profile {
		return "bar"
	}
	return "piece"
}

func trimThickness(kind string) string {
	if survey.Kind(kind) == survey.Profile {
		return "Depth it is marked with"
	}
	return "Thickness"
}

// trimEdge is an edge where tile stops.
type trimEdge struct {
	path, label string
	base        bool // it takes a cove, and the others any trim but one
}

// trimEdges lists the edges where tile stops. The edge under a top is made as the top says.
func (b Bench) trimEdges() []trimEdge {
	var out []trimEdge
	for i, w := range b.Typed.Walls {
		path := form.At("walls", i)
		add := func(meets, end, label string) {
			if meets == "" {
				out = append(out, trimEdge{path + end, w.Name + ", " + label, false})
			}
		}
		add(w.Left.Meets, ".left", "left end")
		if w.Top == nil {
			add(w.Head.Meets, ".head", "head")
		}
		add(w.Right.Meets, ".right", "right end")
		for k, s := range w.Base {
			switch {
			case len(w.Base) == 1:
				out = append(out, trimEdge{path + ".base[0]", w.Name + ", base", true})
			case !legged(w):
				out = append(out, trimEdge{form.At(path+".base", k), w.Name + ", over the " + s.Meets, true})
			}
		}
	}
	return out
}

// trimChoices are the trims of the job by name that an edge takes, and none of them.
func (b Bench) trimChoices(e trimEdge) []page.Choice {
	out := []page.Choice{{Value: "", Text: "no pieces"}}
	for _, t := range b.Typed.Trims {
		if e.base == (t.Kind == string(survey.Cove)) {
			out = append(out, page.Choice{Value: t.Name, Text: t.Name})
		}
	}
	return out
}

// legged tells whether the tile of a wall goes down to the floor beside what it stands on.
func legged(w survey.Wall) bool {
	return len(w.Base) > 1 && slices.ContainsFunc(w.Base, func(s survey.Segment) bool { return s.Meets == string(survey.Floor) })
}

// withoutCove says which walls take no cove, where the job has one; empty where all do.
func (b Bench) withoutCove() string {
	if !slices.ContainsFunc(b.Typed.Trims, func(t survey.TrimTile) bool { return t.Kind == string(survey.Cove) }) {
		return ""
	}
	var names []string
	for _, w := range b.Typed.Walls {
		if legged(w) {
			names = append(names, w.Name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "No cove is offered on " + strings.Join(names, ", ") + ": beside a leg down to the floor tile comes down to the gap."
}

// trimsLine is the one line of the closed section.
func trimsLine(b Bench) string {
	var out []string
	for _, t := range b.Typed.Trims {
		out = append(out, strings.TrimSpace(t.Name+" "+page.Short(b.Job, t.Width)))
	}
	return cmp.Or(strings.Join(out, ", "), "none in pieces")
}

// trimGroup is trim that is cut alike, or a kind of it that stays whole.
type trimGroup struct{ trim.Group }

func (g trimGroup) first() []string { return g.Pieces[:min(mostNamed, len(g.Pieces))] }

func (g trimGroup) rest() string {
	if n := len(g.Pieces) - mostNamed; n > 0 {
		return fmt.Sprintf("and %d more", n)
	}
	return ""
}

// trimGroups are the cuts of trim, then what stays whole, on the walls shown.
func (b Bench) trimGroups() []trimGroup {
	here := map[string]bool{}
	for _, i := range b.Walls() {
		for _, p := range b.Plan.Walls[i].AllTrim() {
			here[p.ID] = true
		}
	}
	var out []trimGroup
	for _, g := range append(trim.Cuts(b.Plan.Trim(), b.Plan.Room.Units), trim.Uncut(b.Plan.Trim())...) {
		var ids []string
		for _, id := range g.Pieces {
			if here[id] {
				ids = append(ids, id)
			}
		}
		if g.Pieces = ids; len(ids) > 0 {
			out = append(out, trimGroup{g})
		}
	}
	return out
}

func (b Bench) trimLine() string {
	cut, all := 0, 0
	for _, g := range b.trimGroups() {
		all += len(g.Pieces)
		if g.ID != "" {
			cut += len(g.Pieces)
		}
	}
	return page.Count(all, "piece") + ", " + fmt.Sprint(cut) + " cut"
}

// Trimmed is all there is to know about one piece of trim.
type Trimmed struct {
	Plan   layout.Plan
	Wall   int
	Piece  trim.Piece
	Sketch templ.Component
}

// trimmed tells all about one piece of trim, or nothing where there is none of that name.
func trimmed(plan layout.Plan, id string) *Trimmed {
	for i := range plan.Walls {
		for _, p := range plan.Walls[i].AllTrim() {
			if p.ID == id {
				return &Trimmed{plan, i, p, page.Picture(drawing.Sketch(p.Face, 50*drawing.Millimetre, 22*drawing.Millimetre, p.ID+" from the face"), "sketch-"+p.ID)}
			}
		}
	}
	return nil
}

// onTop tells whether the piece lies on the top of the wall.
func (c Trimmed) onTop() bool {
	w := &c.Plan.Walls[c.Wall]
	return w.Top != nil && slices.ContainsFunc(w.Top.Trim, func(p trim.Piece) bool { return p.ID == c.Piece.ID })
}

func (c Trimmed) where() string {
	edges := map[survey.PartIs]string{survey.LeftEnd: "left end", survey.RightEnd: "right end", survey.HeadEdge: "head", survey.BaseSegment: "base"}
	w := &c.Plan.Walls[c.Wall]
	if !c.onTop() {
		return w.Found.Name + ", " + edges[c.Piece.Edge]
	}
	edges[survey.HeadEdge], edges[survey.BaseSegment] = "front", "back"
	return w.Top.Name() + ", " + edges[c.Piece.Edge]
}

func (c Trimmed) what() string {
	t := c.Piece.Trim
	if t.Name == string(t.Kind) {
		return t.Name
	}
	return string(t.Kind) + " " + t.Name
}

func (c Trimmed) swatch() string {
	if c.Piece.Cut() {
		return "cut-half"
	}
	return ""
}

func (c Trimmed) lines() []string {
	u := c.Plan.Room.Units
	size := c.Piece.Size(u)
	if c.Piece.Cut() {
		size = "cut to " + size
	}
	out := []string{size}
	if !c.Piece.Corner {
		out = append(out, "out of a "+trimUnit(string(c.Piece.Trim.Kind))+" "+c.Piece.Trim.Length.Fine(u)+" long, "+c.Piece.Trim.Width.Fine(u)+" wide")
	}
	return out
}

// box is its place on the wall, in millimetres: left, bottom, right, top. A top is no
// place on the wall.
func (c Trimmed) box() string {
	if c.onTop() {
		return ""
	}
	t := c.Piece.Face.Bounds()
	return strings.Join([]string{t.Left.MillimetreText(), t.Bottom.MillimetreText(), t.Right.MillimetreText(), t.Top.MillimetreText()}, " ")
}

// trimTop is the highest that trim goes along a head.
func (b Bench) trimTop() (top length.Length, found bool) {
	for _, w := range b.Plan.Walls {
		if t := w.Found.Head.Trim; t != nil {
			if y := w.Start.Placed.Head + t.Width + b.Plan.Room.Joint; !found || y > top {
				top, found = y, true
			}
		}
	}
	return top, found
}
