package form

import (
	"net/url"
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A bench is added in the first corner of the room: both walls stand on its seat there,
// from where its finished front meets them, and the room solves without a doubt.
func TestABenchIsAddedInACorner(t *testing.T) {
	job := room(t, "three")
	require.NoError(t, Apply(&job, "add walls corner bench"))
	bench := job.Walls[3]
	assert.Equal(t, []string{"corner", "wall", "wall", "21 3/4", "21 3/4", "30 3/4"},
		[]string{bench.Top.Behind, bench.Left.Meets, bench.Right.Meets, bench.Top.Depth, bench.Top.Right, bench.Width})
	left, back := job.Walls[0].Base, job.Walls[1].Base
	require.Len(t, left, 2)
	require.Len(t, back, 2)
	assert.Equal(t, survey.Segment{Meets: "seat", Gap: left[0].Gap, Readings: []survey.Drop{{At: "14 1/16", Drop: "22"}, {At: "36", Drop: "21 11/16"}}}, left[1])
	assert.Equal(t, survey.Segment{Meets: "seat", Gap: left[0].Gap, Readings: []survey.Drop{{At: "0", Drop: "21 11/16"}, {At: "21 15/16", Drop: "22"}}}, back[0])
	for _, path := range []string{"walls[3].top.depth", "walls[3].top.right", "walls[0].base[1].readings[0].drop", "walls[1].base[0].readings[1].drop"} {
		assert.Contains(t, job.Guess, path)
	}
	sound(t, job)
	job.Guess = nil
	plan, err := layout.Now(job)
	require.NoError(t, err)
	assert.Empty(t, plan.Doubts)

	// A second one finds the next corner, a third none, and moves no wall.
	require.NoError(t, Apply(&job, "add walls corner bench"))
	assert.Len(t, job.Walls[1].Base, 3)
	assert.Len(t, job.Walls[2].Base, 2)
	sound(t, job)
	require.NoError(t, Apply(&job, "add walls corner bench"))
	assert.Len(t, job.Walls[1].Base, 3)
	sound(t, job)

	// What lies behind is a choice; a curb has no corner behind it.
	require.NoError(t, Decode(&job, url.Values{"walls[3].top.kind": {"curb"}, "walls[3].top.depth": {"4"}}))
	assert.Empty(t, job.Walls[3].Top.Behind)
	sound(t, job)
}
