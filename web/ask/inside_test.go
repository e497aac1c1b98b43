package ask_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/web/ask"
	"coursewright/web/form"
	"coursewright/web/shapes"
)

func paths(job survey.Job) map[string]ask.Question {
	out := map[string]ask.Question{}
	for _, q := range ask.All(job) {
		out[q.Path] = q
	}
	return out
}

func TestANicheIsAskedByItsStuds(t *testing.T) {
	job, err := shapes.New("niche", "in", "A shower")
	require.NoError(t, err)
	job.Guess = ask.Paths(job)
	const in = "walls[1].openings[0].inside"
	asked := paths(job)
	for _, path := range []string{in + ".studs.left", in + ".studs.right", in + ".depth"} {
		assert.Contains(t, asked, path)
		assert.Contains(t, job.Guess, path)
	}
	assert.Equal(t, "studs", asked[in+".studs.left"].Picture)
	assert.Contains(t, asked[in+".studs.left"].Help, "right face")
	assert.NotContains(t, asked, "walls[1].openings[0].left.at", "it is not built: where it stands is found")

	now := answered(t, job, in+".studs.left", "14 1/2")
	assert.Equal(t, "14 1/2", now.Walls[1].Openings[0].Inside.Studs.Left)
	assert.NotContains(t, now.Guess, in+".studs.left")
	assert.Equal(t, now, answered(t, now), "asked and answered again with what is shown, it stays") // law 3

	require.NoError(t, form.Apply(&job, "add "+in+" built"))
	asked = paths(job)
	for _, field := range []string{".left.at", ".width.at", ".bottom.at", ".height.at", ".inside.depth"} {
		assert.Contains(t, asked, "walls[1].openings[0]"+field)
	}
	assert.True(t, asked["walls[1].openings[0].bottom.at"].Updown)
	assert.Contains(t, asked["walls[1].openings[0].width.at"].Help, "Board to board")
	assert.Contains(t, asked[in+".depth"].Help, "board at the back")
}
