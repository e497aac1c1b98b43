package ask_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/ask"
	"coursewright/web/form"
	"coursewright/web/shapes"
)

// A doorway is asked for by where it begins, how wide it is and where its top is, never by its bottom.
func TestADoorwayIsAskedFor(t *testing.T) {
	job, err := shapes.New("three", "in", "A shower")
	require.NoError(t, err)
	before := job.Clone()
	require.NoError(t, form.Apply(&job, "add walls[1].openings doorway"))
	ask.Added(before, &job)
	const at = "walls[1].openings[0]"
	asked := paths(job)
	for _, field := range []string{".left.at", ".width.at", ".height"} {
		assert.Contains(t, asked, at+field)
		assert.Contains(t, job.Guess, at+field, "nobody has measured it")
	}
	assert.NotContains(t, asked, at+".bottom.at")
	assert.True(t, asked[at+".height"].Updown)
	assert.Equal(t, "Doorway, top from the line", asked[at+".height"].Label)

	now := answered(t, job, at+".width.at", "31")
	assert.Equal(t, "31", now.Walls[1].Openings[0].Width.At)
	assert.Equal(t, now, answered(t, now), "asked and answered again with what is shown, it stays") // law 3
}
