package plan

import (
	"coursewright/layout/fixture"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// Wall is one wall as it will stand.
type Wall struct {
	Found    survey.WallFound
	Shape    survey.Shape // what the wall leaves for tile
	Start    Start
	Pieces   []piece.Piece    // by course, then from left to right
	Trim     []trim.Piece     // up the left end, along the head, up the right end
	Fixtures []fixture.Placed // in the order of the job
	Runs     []Run            // by edges, then by class
	Bare     []plane.Point    // places where sealant cannot reach from the boundary to a tile
	Gaps     []piece.Gap      // the same as stretches of boundary

	Strips []Strip // in the order of the job

	Insides []Inside // of its niches and windows, where the job says what is in them
	Top     *Top     // the horizontal face on it, where its head has one
}
