package survey_test

import (
	"strings"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const doorJob = `{"format": "coursewright-job/1", "title": "t", "units": "in", "tile": {"width": "6", "height": "6", "thickness": "1/4"}, "joint": "1/8", "bond": {"kind": "stack"},
	"walls": [{"name": "w", "width": "90", "left": {"meets": "corner"}, "right": {"meets": "corner"}, "head": {"stops": {"at": "20"}},
	"base": [{"meets": "shower base", "gap": "1/8", "readings": [{"at": "0", "drop": "40"}, {"at": "90", "drop": "40 3/4"}]}],
	"openings": [{"kind": "doorway", "name": "doorway", FIELDS}]}]}`

func doorRoom(t *testing.T, fields string) (survey.Room, survey.Faults) {
	t.Helper()
	job, err := survey.Read([]byte(strings.Replace(doorJob, "FIELDS", fields, 1)))
	require.NoError(t, err)
	return job.Resolve()
}

// A doorway goes down to where what it stands on is lowest, whatever that is: nobody types its bottom, so that
// no floor measured anew makes a window of it.
func TestADoorwayGoesDownToTheBase(t *testing.T) {
	room, faults := doorRoom(t, `"left": {"at": "30"}, "width": {"at": "30"}, "height": "8"`)
	require.Empty(t, faults)
	o := room.Walls[0].Openings[0]
	in := length.Inch
	assert.True(t, o.Doorway)
	assert.Equal(t, "doorway", o.Called())
	assert.Equal(t, "doorway doorway", o.Key())
	assert.Equal(t, survey.Edges{Left: 30 * in, Bottom: -40*in - in/2, Right: 60 * in, Top: 8 * in}, o.Reach())
}

func TestWhatIsRefusedOfADoorway(t *testing.T) {
	for fields, want := range map[string]string{
		`"left": {"at": "30"}, "width": {"at": "30"}, "height": "-41"`:                               `walls[0].openings[0].height: found “-41”; write a height of the doorway's top over the floor there, which is at -40 1/2`,
		`"left": {"at": "30"}, "width": {"at": "30"}, "height": {"at": "8"}`:                         `walls[0].openings[0].height: found a mark; write the height of the doorway's top over the level line as one length in quotes`,
		`"left": {"at": "30"}, "width": {"at": "30"}`:                                                `walls[0].openings[0].height: found nothing`,
		`"left": {"from": "30", "to": "40"}, "width": {"at": "30"}, "height": "8"`:                   `walls[0].openings[0].left: found a range; write {"at": …}: a doorway stays where it is`,
		`"left": {"at": "70"}, "width": {"at": "30"}, "height": "8"`:                                 `walls[0].openings[0].width: found a right edge at 100 or more`,
		`"left": {"at": "30"}, "width": {"at": "30"}, "bottom": {"at": "-40"}, "height": "8"`:        `walls[0].openings[0].bottom: found a mark; write nothing here: a doorway goes down to the floor`,
		`"left": {"at": "30"}, "width": {"at": "30"}, "height": "8", "inside": {"depth": "4"}`:       `walls[0].openings[0].inside: found an inside; write nothing here`,
		`"left": {"at": "30"}, "width": {"at": "30"}, "height": "8", "near": {"x": "40"}, "at": "4"`: `walls[0].openings[0].near: found a place`,
		`"left": {"at": "30"}, "width": {"at": "30"}, "height": "8", "diameter": "4"`:                `walls[0].openings[0].diameter`,
	} {
		_, faults := doorRoom(t, fields)
		require.NotEmpty(t, faults, fields)
		assert.Contains(t, faults.Error(), want, fields)
	}
}
