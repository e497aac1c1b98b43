package form

import (
	"net/url"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whoever lays a wall in single tiles lets go of the pin of its start, and of that of the
// set-out held, but of nothing else; a wall that is held in single tiles takes that along
// under another name.
func TestAWallInSingleTilesHasNoStart(t *testing.T) {
	job := room(t, "half wall")
	name := job.Walls[3].Name
	pin := survey.WallPin{Edge: "1", Marks: map[string]string{"head": "5"}}
	job.Pins.Walls = map[string]survey.WallPin{name: pin, job.Walls[0].Name: {Edge: "2"}}
	job.Held = &survey.Held{Walls: map[string]survey.WallPin{name: pin}}
	require.NoError(t, Decode(&job, url.Values{"walls[3].laid": {"single"}}))
	Tidy(&job)
	assert.Empty(t, job.Pins.Walls[name].Edge)
	assert.Empty(t, job.Held.Walls[name].Edge)
	assert.Equal(t, "5", job.Pins.Walls[name].Marks["head"])
	assert.Equal(t, "2", job.Pins.Walls[job.Walls[0].Name].Edge)

	job.Held.Walls[name] = survey.WallPin{Single: true}
	require.NoError(t, Decode(&job, url.Values{"walls[3].name": {"end"}}))
	Tidy(&job)
	assert.True(t, job.Held.Walls["end"].Single)
}
