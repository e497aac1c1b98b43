package bathroom

import (
	"regexp"

	"fmt"

	"github.com/a-h/templ"

	"coursewright/layout/stages"
	"coursewright/web/drawing"
	"coursewright/web/page"
)

// Marks is what is struck and checked before the first tile.
type Marks struct {
	page.Job
	Drawing templ.Component
	Line    Large  // the line to strike
	Side    string // "under the level line"
	Name    string // "the course line"
	Why     string
	Batten  string
	Low     []string // what is struck on walls that end under the line, in whole sentences
	Rim     string   // "rim", or "floor" where there is none
	Rims    []Figure // from the line down to it
	Edges   []Figure // the tile edge of each wall
	Plumb   string   // what of a tile that is: "edge" or "corner"
	First   string   // the piece that is set first
	Wall    int      // its wall
}

// Figure is a length with its place.
type Figure struct{ Name, At string }

// setOut gathers what is struck.
func (b bathroom) setOut() Marks {
	struck := stages.ToStrike(b.plan.Room, b.plan.Setout.Line, b.plan.Walls)
	m := Marks{Job: page.Job{ID: b.stored.ID, Revision: b.stored.Revision, Typed: b.job, Plan: b.plan}, Drawing: page.Picture(drawing.SetOut(b.plan), "set-out")}
	m.Line, m.Side = inParts("", m.Tape(struck.At.Abs())), over(struck.At)
	m.Plumb = string(struck.Plumb)
	stations := stages.Stations(b.plan.Room.Units, b.plan.Walls)
	m.Rim = stages.RimName(stations)
	m.Name, m.Why = "the course line", struck.Is("one course on all the walls")
	if struck.Joint {
		m.Name = "the first joint line"
		m.Why = fmt.Sprintf("%s The course line itself, %s %s, runs behind the %s.", struck.Is("the first full course"),
			m.Tape(b.plan.Setout.Line.Abs()), over(b.plan.Setout.Line), m.Rim)
	}
	m.Batten = m.Tape(struck.Full.Bottom.Abs()) + " " + over(struck.Full.Bottom)
	for _, l := range stages.Lows(struck.Full, b.plan.Walls) {
		whole := "On %s, which ends lower, line and batten lie %s %s."
		if len(l.Walls) > 1 {
			whole = "On %s, which end lower, line and batten lie %s %s."
		}
		m.Low = append(m.Low, fmt.Sprintf(whole, stages.Letters(l.Walls, b.plan.Walls), m.Tape(l.Bottom.Abs()), over(l.Bottom)))
	}
	for _, s := range stages.Rims(stations) {
		if up, found := struck.Over(s, b.plan.Walls); found {
			m.Rims = append(m.Rims, Figure{together(s.Name), m.Tape(up)})
		}
	}
	for _, i := range b.walls {
		w := b.plan.Walls[i]
		if edge, ok := stages.Strike(w, struck.Full); ok {
			m.Edges = append(m.Edges, Figure{w.Found.Letter + " " + w.Found.Name, stages.FromCorner(struck.From(w, edge), m.Tape)})
		}
	}
	if len(b.steps) > 0 {
		m.First, m.Wall = b.steps[0].Pieces[0].ID, b.steps[0].Wall
	}
	return m
}

// together keeps a figure with its fraction in one line: "L at 4 3/8\"".
func together(name string) string {
	return figured.ReplaceAllString(name, "$1\u00a0$2")
}

var figured = regexp.MustCompile(`(\d) (\d+/\d|mm)`)
