package form

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/web/shapes"
)

// “It is built” guessed a niche in the middle of the wall, wherever the set-out that is held has it: far from there, so that the
// button alone was refused, or moved it.
func TestANicheIsBuiltWhereItIsHeld(t *testing.T) {
	job, err := shapes.New("three", "in", "A shower")
	require.NoError(t, err)
	require.NoError(t, Apply(&job, "add walls[1].openings niche"))
	job.Held = &survey.Held{Walls: map[string]survey.WallPin{"back": {Marks: map[string]string{
		"niche niche left": "254 mm", "niche niche right": "562 mm", "niche niche bottom": "100 mm", "niche niche top": "404 mm"}}}}
	require.NoError(t, Apply(&job, "add walls[1].openings[0].inside built"))
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Empty(t, room.Walls[1].Moved, "nothing is measured yet")
	assert.Contains(t, job.Guess, "walls[1].openings[0].left.at")
	assert.Equal(t, "9 1/2", job.Walls[1].Openings[0].Left.At, "10 in to the edge of the tile, less its bed and its thickness")
}

// Where nothing is held it stands in the middle of where it might have stood.
func TestANicheIsBuiltWhereItWasWanted(t *testing.T) {
	job, err := shapes.New("three", "in", "A shower")
	require.NoError(t, err)
	require.NoError(t, Apply(&job, "add walls[1].openings niche"))
	o := &job.Walls[1].Openings[0]
	o.Left, o.Width = &survey.Mark{From: "8", To: "12"}, &survey.Mark{At: "12"}
	require.NoError(t, Apply(&job, "add walls[1].openings[0].inside built"))
	assert.Equal(t, "9 1/2", job.Walls[1].Openings[0].Left.At)
	assert.Equal(t, "13", job.Walls[1].Openings[0].Width.At)
}
