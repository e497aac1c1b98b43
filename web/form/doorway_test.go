package form

import (
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A doorway is added where a window is, as high over what the wall stands on as a door is; dragged, it moves along the
// wall and takes its size by its width and its top. Found by a walk: the only way to one was a window down to the floor.
func TestADoorwayIsAddedAndDragged(t *testing.T) {
	job := room(t, "three")
	require.NoError(t, Apply(&job, "add walls[1].openings doorway"))
	is := job.Walls[1].Openings[0]
	assert.Equal(t, "doorway", is.Kind)
	assert.Equal(t, "82 1/2", compute(&job, is.Height.Plain, job.Walls[1].Base[0].Readings[0].Drop, func(top, drop length.Length) length.Length { return top + drop }))
	assert.Nil(t, is.Bottom)
	sound(t, job)

	require.NoError(t, Apply(&job, "place 2 move doorway doorway=9 1/2"))
	require.NoError(t, Apply(&job, "place 2 size doorway doorway=20;41"))
	is = job.Walls[1].Openings[0]
	assert.Equal(t, []string{"9 1/2", "20", "41"}, []string{is.Left.At, is.Width.At, is.Height.Plain})
	assert.Error(t, Apply(&job, "place 2 move doorway doorway=9;3"), "it stands on the floor")
}
