package layout

import (
	"coursewright/layout/finding"
	"coursewright/layout/piece"
	"coursewright/layout/setout"
	"coursewright/layout/survey"
)

// Plan is everything Solve works out for a job, in exact lengths. File turns
// it into the plan file of formats.md.
type Plan struct {
	Room     survey.Room
	Setout   setout.Setout
	Walls    []Wall // in the job's order
	Findings []finding.Finding
}

// Wall is one wall as it will stand.
type Wall struct {
	Found  survey.WallFound
	Shape  survey.Shape // the region that tile may cover
	Start  setout.Start
	Pieces []piece.Piece // by course, then from left to right
}
