package page

import (
	"testing"

	"coursewright/layout"
	"coursewright/layout/plan"

	"github.com/stretchr/testify/assert"
)

// A cut of which nothing shows beside the next wall's tile is hidden, and no cut of 0".
func TestACutOfWhichNothingShowsIsHidden(t *testing.T) {
	var j Job
	j.Plan = layout.Plan{Walls: []plan.Wall{{}}}
	j.Plan.Walls[0].Found.Name = "left"
	j.Plan.Setout.Least = plan.Least{Piece: "L-28-04"}
	f := j.Figures()[0]
	assert.Equal(t, "hidden", f.Value)
	assert.Equal(t, "beside the next wall’s tile, L-28-04 on left", f.Note)
}
