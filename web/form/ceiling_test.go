package form_test

import (
	"testing"

	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/shapes"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Of a tub whose tile goes up to the ceiling the heights are guesses until they are measured, and so are those
// of a bend in it; back at a line it is a new guess again. Found by a walk: the steps had no way to the ceiling.
func TestTileGoesUpToTheCeilingAndBackToALine(t *testing.T) {
	job, err := shapes.New("tub", "in", "attic")
	require.NoError(t, err)
	job.Walls[0].Head.Sight = "low"
	require.NoError(t, form.Apply(&job, "ceiling walls[0] walls[1] walls[2]"))
	for _, w := range job.Walls {
		require.Equal(t, "ceiling", w.Head.Meets)
		require.Nil(t, w.Head.Stops)
		require.Equal(t, []survey.Rise{{At: "0", Rise: "56"}, {At: w.Width, Rise: "56"}}, w.Head.Readings)
	}
	assert.Equal(t, "low", job.Walls[0].Head.Sight)
	assert.Subset(t, job.Guess, []string{"walls[0].head.readings[0].rise", "walls[2].head.readings[1].rise"})
	assert.NotContains(t, job.Guess, "walls[0].head.stops.at")
	_, faults := job.Resolve()
	require.Empty(t, faults)

	require.NoError(t, form.Apply(&job, "add walls[1].head.readings"))
	require.Len(t, job.Walls[1].Head.Readings, 3)
	assert.Subset(t, job.Guess, []string{"walls[1].head.readings[0].rise", "walls[1].head.readings[1].at", "walls[1].head.readings[1].rise", "walls[1].head.readings[2].rise"})

	require.NoError(t, form.Apply(&job, "line walls[1]"))
	require.Equal(t, survey.Head{Stops: &survey.Mark{At: "33"}, Finish: "trim"}, job.Walls[1].Head)
	assert.Contains(t, job.Guess, "walls[1].head.stops.at")
	assert.NotContains(t, job.Guess, "walls[1].head.readings[0].rise")
	require.Error(t, form.Apply(&job, "ceiling walls[7]"))
	require.Error(t, form.Apply(&job, "line walls[0].head"))
}
