package form

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

// holding is a wall with a niche, whose set-out is held.
func holding() survey.Job {
	return survey.Job{Units: "in", Bond: survey.Bond{Kind: "stack"},
		Walls: []survey.Wall{{Name: "back", Width: "60", Openings: []survey.Opening{{Kind: "niche", Name: "shelf", Left: &survey.Mark{From: "10", To: "20"}}}}},
		Held: &survey.Held{Engine: "1", Course: survey.CoursePin{Line: "-981.075 mm"},
			Walls: map[string]survey.WallPin{"back": {Edge: "12 mm", Marks: map[string]string{"niche shelf left": "300 mm"}}}}}
}

func TestASetOutIsHeldForGoodAndLetGo(t *testing.T) {
	job := holding()
	require.NoError(t, Apply(&job, "hold"))
	assert.Empty(t, job.Held.Engine)
	assert.Equal(t, "12 mm", job.Held.Walls["back"].Edge)
	require.NoError(t, Apply(&job, "letgo"))
	assert.Nil(t, job.Held)
	require.NoError(t, Apply(&job, "hold"))
	assert.Nil(t, job.Held, "what to hold is known to the page alone")
}

func TestWhatIsHeldFollowsItsWallAndGoesWithIt(t *testing.T) {
	job := holding()
	require.NoError(t, Decode(&job, map[string][]string{"walls[0].name": {"long"}}))
	assert.Equal(t, "12 mm", job.Held.Walls["long"].Edge)
	require.NoError(t, Apply(&job, "remove walls[0].openings[0]"))
	assert.Equal(t, map[string]survey.WallPin{"long": {Edge: "12 mm"}}, job.Held.Walls, "a mark goes with its opening")

	job = holding()
	require.NoError(t, Decode(&job, map[string][]string{"units": {"mm"}}))
	assert.Equal(t, "-981.075 mm", job.Held.Course.Line)
	assert.Equal(t, "60 in", job.Walls[0].Width)
}

// A tick on the phone holds the set-out while the bench is open in another window: that is no
// change of anything the form shows, and clashes with no edit.
func TestHoldingMeetsAnEditWithoutAQuestion(t *testing.T) {
	held := holding()
	free := held
	free.Held = nil
	edited := free
	edited.Title = "Attic bath"
	both, err := Merge(free, held, edited, nil)
	require.NoError(t, err)
	assert.Empty(t, both.Clashes)
	assert.NotNil(t, both.Job.Held)
	assert.Equal(t, "Attic bath", both.Job.Title)
	assert.Contains(t, both.Changes, Change{Path: "held", Was: "", Is: "as it stands"})
	assert.True(t, SameFields(both.Job, edited))
}
