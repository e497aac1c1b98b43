package form

import (
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Four walls close a room at the press of a button, also with a bench, which comes after them in the
// list: the last is the neighbour of the first. They open again; three walls do not close.
func TestTheLastWallMeetsTheFirst(t *testing.T) {
	job := room(t, "three")
	assert.Error(t, Apply(&job, "close"), "three walls")
	require.NoError(t, Apply(&job, "add walls"))
	require.NoError(t, Apply(&job, "add walls corner bench"))
	may, does := Closes(job)
	assert.True(t, may && !does)
	require.NoError(t, Apply(&job, "close"))
	sound(t, job)
	found, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, []int{3, 0}, []int{found.Walls[0].Left.Beyond, found.Walls[3].Right.Beyond})
	_, does = Closes(job)
	assert.True(t, does)

	require.NoError(t, Apply(&job, "open"))
	sound(t, job)
	assert.Equal(t, []string{"", ""}, []string{job.Walls[0].Left.Meets, job.Walls[3].Right.Meets})
}

// A bench is added across the far end: the wall behind it and both walls beside it stand on its seat, and
// the room solves without a doubt. Where there is no such end the walls stay as they are.
func TestABenchIsAddedAcrossTheFarEnd(t *testing.T) {
	job := room(t, "three")
	require.NoError(t, Apply(&job, "add walls bench"))
	left, behind, right, bench := job.Walls[0].Base, job.Walls[1].Base, job.Walls[2].Base, job.Walls[3]
	require.Equal(t, []int{2, 1, 2}, []int{len(left), len(behind), len(right)})
	assert.Equal(t, []string{"seat", "seat", "seat"}, []string{left[1].Meets, behind[0].Meets, right[0].Meets})
	assert.Equal(t, []survey.Drop{{At: "19 1/2", Drop: "22"}, {At: "36", Drop: "21 11/16"}}, left[1].Readings)
	assert.Equal(t, job.Walls[1].Width, bench.Width)
	assert.Subset(t, job.Guess, []string{"walls[0].base[1].readings[0].drop", "walls[2].base[0].readings[1].drop", "walls[3].width"})
	sound(t, job)
	require.NoError(t, Apply(&job, "add walls curb"))
	assert.Equal(t, job.Walls[1].Width, job.Walls[4].Width, "and so is a curb")
	job.Guess = nil
	plan, err := layout.Now(job)
	require.NoError(t, err)
	assert.Empty(t, plan.Doubts)

	for _, shape := range []string{"tub", "corner", "one", "bench"} {
		job := room(t, shape)
		before := job.Walls[0].Base
		require.NoError(t, Apply(&job, "add walls bench"))
		assert.Equal(t, before, job.Walls[0].Base, shape)
		sound(t, job)
	}
}
