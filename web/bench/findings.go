package bench

import (
	"cmp"
	"strconv"
	"strings"

	"coursewright/layout/finding"
)

// Group is the findings of one grade.
type Group struct {
	Grade    finding.Grade
	Findings []Numbered
}

// Numbered is a finding with its number in the plan, counted from 1: the one
// its flag on the drawing carries.
type Numbered struct {
	finding.Finding
	Number int
}

// Flagged tells whether the finding has a place on the drawing.
func (n Numbered) Flagged() bool { return n.At != nil }

// Grave tells whether the plan itself is in question.
func (g Group) Grave() bool { return g.Grade == finding.Fault || g.Grade == finding.Warning }

func (g Group) title() string {
	switch g.Grade {
	case finding.Fault:
		return "Faults"
	case finding.Warning:
		return "Warnings"
	case finding.Advice:
		return "Advice"
	}
	return "Cautions"
}

// grades sorts the findings by grade, the worst first, in their own order.
func (b Bench) grades() []Group {
	var out []Group
	for _, grade := range []finding.Grade{finding.Fault, finding.Warning, finding.Advice, finding.Caution} {
		g := Group{Grade: grade}
		for i, f := range b.Plan.Findings {
			if f.Grade == grade {
				g.Findings = append(g.Findings, Numbered{f, i + 1})
			}
		}
		if len(g.Findings) > 0 {
			out = append(out, g)
		}
	}
	return out
}

// place says where a finding stands: its wall and piece.
func (b Bench) place(f finding.Finding) string {
	var out []string
	if f.Wall >= 0 && f.Wall < len(b.Plan.Walls) {
		out = append(out, b.Plan.Walls[f.Wall].Found.Name)
	}
	if f.Piece != "" {
		out = append(out, f.Piece)
	}
	return strings.Join(out, ", ")
}

// most is how many reasons are shown at once; the rest unfold.
const most = 3

func (b Bench) firstReasons() []string {
	r := b.Plan.Setout.Reasons
	return r[:min(most, len(r))]
}

func (b Bench) otherReasons() []string {
	r := b.Plan.Setout.Reasons
	return r[min(most, len(r)):]
}

// findingsLine counts the findings by grade.
func (b Bench) findingsLine() string {
	var out []string
	for _, g := range b.grades() {
		title := strings.ToLower(g.title())
		if len(g.Findings) == 1 {
			title = strings.TrimSuffix(title, "s")
		}
		out = append(out, strconv.Itoa(len(g.Findings))+" "+title)
	}
	return cmp.Or(strings.Join(out, " · "), "nothing stands against this plan")
}

// findingsMatter tells whether one should read them before going on: there is a
// fault, or a mark on the drawing.
func (b Bench) findingsMatter() bool {
	for _, f := range b.Plan.Findings {
		if f.Grade == finding.Fault || f.At != nil {
			return true
		}
	}
	return false
}

// holdsLine is the closest of the measures that the plan depends on.
func (b Bench) holdsLine() string {
	if len(b.Plan.Setout.Holds) == 0 {
		return "how far a reading may be wrong"
	}
	return "holds while " + b.doubtText(b.Plan.Setout.Holds[0])
}

// wallNames lists the walls shown.
func wallNames(b Bench) string {
	var out []string
	for _, i := range b.Walls() {
		out = append(out, b.Plan.Walls[i].Found.Name)
	}
	return strings.Join(out, ", ")
}
