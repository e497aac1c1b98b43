package layout

import (
	"coursewright/layout/doubt"
	"coursewright/layout/finding"
	"coursewright/layout/plan"
	"coursewright/layout/remedy"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// Plan is everything Solve works out for a job, in exact lengths. File turns
// it into the plan file of formats.md.
type Plan struct {
	Room     survey.Room
	Setout   plan.Setout
	Walls    []Wall // in the job's order
	Findings []finding.Finding
	Doubts   []doubt.Doubt // readings to ask about before the plan is relied on
	Help     *Help         // what would help, where it was asked for; Solve leaves it nil
}

// Trim lists the trim of all walls and their tops, in the job's order.
func (p Plan) Trim() []trim.Piece {
	var all []trim.Piece
	for _, w := range plan.WithTops(p.Walls) {
		all = append(all, w.Trim...)
	}
	return all
}

// Wall is one wall as it will stand.
type Wall = plan.Wall

// Troubled tells whether the plan leaves something in sight that a setter would rather
// not cut: bare wall, unworkable pieces, slivers, a run under a quarter.
func (p Plan) Troubled() bool { return len(p.Walls) > 0 && remedy.Troubled(&p.Setout.Merit) }

// Help is what would help a job.
type Help = remedy.Help

// Use is a field of a job with what a remedy writes there.
type Use = remedy.Use

// Remedy is a change of the job and what it would give.
type Remedy = remedy.Remedy
