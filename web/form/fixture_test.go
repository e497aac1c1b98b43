package form

import (
	"fmt"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

func TestEveryFixtureSolves(t *testing.T) {
	kinds := []survey.Kind{survey.CornerShelf, survey.FootRest, survey.SoapDish, survey.GrabBar, survey.GlassLine}
	for _, units := range []string{"in", "mm"} {
		job := demo(t)
		require.NoError(t, Decode(&job, url.Values{"units": {units}}))
		for _, kind := range kinds {
			require.NoError(t, Apply(&job, "add walls[1].fixtures "+string(kind)))
			require.NoError(t, Apply(&job, "add walls[1].fixtures "+string(kind)))
		}
		require.NoError(t, Apply(&job, "add walls[1].fixtures[8].holes"))
		room, faults := job.Resolve()
		require.Empty(t, faults)
		require.Len(t, room.Walls[1].Fixtures, 10)
		assert.Len(t, room.Walls[1].Fixtures[8].Holes, 3)
		assert.Equal(t, "corner shelf 2", room.Walls[1].Fixtures[1].Name)
	}
	job := demo(t)
	assert.Error(t, Apply(&job, "add walls[1].fixtures mirror"))
	assert.Error(t, Apply(&job, "add walls[1].fixtures[0].holes"))
}

func TestAMeasuredHeightHasNoWish(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add walls[1].fixtures corner shelf"))
	require.NoError(t, Decode(&job, url.Values{"walls[1].fixtures[0].near": {"10"}}))
	_, faults := job.Resolve()
	require.Empty(t, faults)
	require.NoError(t, Apply(&job, "measure walls[1].fixtures[0].height"))
	assert.Empty(t, job.Walls[1].Fixtures[0].Near)
	_, faults = job.Resolve()
	assert.Empty(t, faults)
	require.NoError(t, Apply(&job, "remove walls[1].fixtures[0]"))
	assert.Nil(t, job.Walls[1].Fixtures)
}

// A height that a file gives as one length is shown as measured, and stays as it was typed
// until another is.
func TestAPlainHeightOutlastsTheForm(t *testing.T) {
	job := demo(t)
	job.Walls[1].Fixtures = []survey.Fixture{{Kind: "corner shelf", Name: "shelf", Corner: "left", Width: "8", Height: survey.Measure{Plain: "4"}}}
	at := "walls[1].fixtures[0].height.at"
	assert.Equal(t, "4", Get(job, at))
	require.NoError(t, Decode(&job, url.Values{at: {"4"}}))
	assert.Equal(t, survey.Measure{Plain: "4"}, job.Walls[1].Fixtures[0].Height)
	require.NoError(t, Decode(&job, url.Values{at: {"5"}}))
	assert.Equal(t, survey.Measure{Mark: &survey.Mark{At: "5"}}, job.Walls[1].Fixtures[0].Height)
	_, faults := job.Resolve()
	assert.Empty(t, faults)
}

// A grab bar is offered 33 to 36 in over the floor (ADA 609.4): beside a tub with the floor 58 in
// under the level line 25 to 22 in under it, over a shower base or a floor 40 in under the line 7 to 4.
func TestAGrabBarIsOfferedOverTheFloor(t *testing.T) {
	for key, want := range map[string]survey.Mark{"three": {From: "-7", To: "-4"}, "tub": {From: "-25", To: "-22"}, "one": {From: "-7", To: "-4"}} {
		job := room(t, key)
		wall := len(job.Walls) - 1
		require.NoError(t, Apply(&job, fmt.Sprintf("add walls[%d].fixtures grab bar", wall)))
		assert.Equal(t, want, *job.Walls[wall].Fixtures[len(job.Walls[wall].Fixtures)-1].Height.Mark, key)
		sound(t, job)
	}
}

// What is added to a half wall stands under its head. Found by adding a corner shelf to one: it was
// offered 8 to 20 in over the level line, over a wall that ended at 4.
func TestAFixtureIsOfferedUnderTheHead(t *testing.T) {
	job := room(t, "half wall")
	job.Walls[2].Head.Stops = &survey.Mark{At: "4"}
	for _, kind := range []string{"corner shelf", "glass line"} {
		require.NoError(t, Apply(&job, "add walls[2].fixtures "+kind))
	}
	assert.Equal(t, survey.Mark{From: "-10", To: "2"}, *job.Walls[2].Fixtures[0].Height.Mark, "as high, 2 in under the head")
	assert.Equal(t, []survey.Drilled{{Height: "-30"}, {Height: "2"}}, job.Walls[2].Fixtures[1].Holes)
	require.NoError(t, Apply(&job, "add walls[0].fixtures corner shelf"))
	assert.Equal(t, survey.Mark{From: "8", To: "20"}, *job.Walls[0].Fixtures[0].Height.Mark)
	sound(t, job)
}
