package survey_test

import (
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const coloured = `{"format": "coursewright-job/1", "units": "mm", "joint": "2", "bond": {"kind": "stack"},
  "tile": {"width": "100", "height": "100", "colour": "#2F5D50"}, "grout": "#c8c2b4",
  "walls": [{"name": "back", "width": "500", "left": {"stops": {"at": "0"}}, "right": {"stops": {"at": "500"}},
    "base": [{"meets": "floor", "readings": [{"at": "0", "drop": "300"}]}], "head": {"stops": {"at": "300"}}}]}`

func TestTileAndGroutHaveColours(t *testing.T) {
	job, err := survey.Read([]byte(coloured))
	require.NoError(t, err)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, survey.Colour(0x2f5d50), room.Tile.Colour)
	assert.Equal(t, survey.Colour(0xc8c2b4), room.Grout)
	job.Tile.Colour, job.Grout = "", ""
	room, faults = job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, survey.UsualTile, room.Tile.Colour)
	assert.Equal(t, survey.UsualGrout, room.Grout)
	assert.Equal(t, "#f3efe4", room.Tile.Colour.String())
}
