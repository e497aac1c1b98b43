package layout_test

import (
	"testing"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A window down to the floor is a doorway, and the cut schedule calls it so: found on a closed room,
// whose sheets had pieces "at window" in front of a person who had drawn a door.
func TestPiecesBesideADoorwayStandAtADoorway(t *testing.T) {
	job := besideAStrip(t, inACorner, inStack, "23")
	w := &job.Walls[0]
	w.Strips = nil
	w.Openings = []survey.Opening{{Kind: "window", Name: "hall", Left: &survey.Mark{At: "20"}, Width: &survey.Mark{At: "31"},
		Bottom: &survey.Mark{At: "-30"}, Height: &survey.Measure{Mark: &survey.Mark{At: "50"}}}}
	p, err := layout.Now(job)
	require.NoError(t, err)
	places := map[string]bool{}
	for _, g := range cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.Usual(p.Room.Units)).Groups {
		for _, at := range g.Places {
			places[at.Side] = true
		}
	}
	assert.True(t, places["doorway hall"], "%v", places)
	assert.False(t, places["window hall"])
}
