package finding

import (
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Input is the plan to be judged.
type Input struct {
	Room   survey.Room
	Setout plan.Setout
	Walls  []plan.Wall // in the job's order
	Limits Limits      // the zero value stands for Usual in the room's units
}

// LocalCode is the sentence that every page with findings shows.
const LocalCode = "Local code and licensed trades come first for structure, plumbing, electricity and waterproofing. " +
	"The standards named here were seen as quotations: look the clause up before you rely on it."

// Rule is one rule of the trade.
type Rule struct {
	Name   Name
	Grade  Grade
	Why    string // why it matters
	Do     string // what to do
	Built  string // what to do where the opening it speaks of is measured and may be built; empty: the same
	Strip  string // what to do about a strip of other tile; empty: the same
	Leg    string // what to do on a leg that may be laid in single tiles; empty: the same
	Source string // as far as it is known

	judge func(Input) []place
}

// place is where a rule speaks, and what it says there.
type place struct {
	wall  int // -1: the whole room
	at    *plane.Point
	piece string
	text  string
	built bool // it speaks of an opening that is measured
	strip bool // it speaks of a strip
	leg   bool // it speaks of a leg that may be laid in single tiles
}

// Rules lists every rule in the order in which Judge applies them: faults
// first, then warnings, advice and cautions.
func Rules() []Rule {
	var all []Rule
	for _, grade := range []Grade{Fault, Warning, Advice, Caution} {
		for _, theme := range [][]Rule{cutRules(), tileRules(), driftRules(), setRules(), edgeRules(), headRules(), legRules(), cornerRules(), topRules(), openingRules(), nicheRules(), bandRules(), stripRules(), trimRules(), mosaicRules(), fixtureRules(), cautions()} {
			for _, r := range theme {
				if r.Grade == grade {
					all = append(all, r)
				}
			}
		}
	}
	return all
}

// Judge applies every rule to a plan. Findings come in the order of Rules,
// within a rule by wall, and are the same for the same plan. A plan without
// walls gives the findings that tile and joint alone give.
func Judge(in Input) []Finding {
	if in.Limits == (Limits{}) {
		in.Limits = Usual(in.Room.Units)
	}
	var found []Finding
	for _, r := range Rules() {
		for _, p := range r.judge(in) {
			found = append(found, r.at(p))
		}
	}
	return found
}

// at is the rule's finding at one place.
func (r Rule) at(p place) Finding {
	f := Finding{
		Rule: r.Name, Grade: r.Grade, Wall: p.wall, At: p.at, Piece: p.piece,
		Text: p.text, Why: r.Why, Do: r.Do, Source: r.Source,
	}
	switch {
	case p.built && r.Built != "":
		f.Do = r.Built
	case p.strip && r.Strip != "":
		f.Do = r.Strip
	case p.leg && r.Leg != "":
		f.Do = r.Leg
	}
	return f
}
