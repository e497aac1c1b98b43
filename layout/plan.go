package layout

import (
	"coursewright/layout/doubt"
	"coursewright/layout/finding"
	"coursewright/layout/plan"
	"coursewright/layout/remedy"
	"coursewright/layout/survey"
)

// Plan is everything Solve works out for a job, in exact lengths. File turns
// it into the plan file of formats.md.
type Plan struct {
	Room     survey.Room
	Setout   plan.Setout
	Walls    []Wall // in the job's order
	Findings []finding.Finding
	Doubts   []doubt.Doubt // readings to ask about before the plan is relied on
	Help     []Remedy      // what would help, where it was asked for; Solve leaves it nil
}

// Wall is one wall as it will stand.
type Wall = plan.Wall

// Remedy is a change of the job and what it would give.
type Remedy = remedy.Remedy
