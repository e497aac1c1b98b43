package form

import (
	"net/url"
	"testing"

	"coursewright/layout/survey"
	"coursewright/web/shapes"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// rooms gives a job of a shape.
func room(t *testing.T, key string) survey.Job {
	job, err := shapes.New(key, "in", "any")
	require.NoError(t, err)
	return job
}

func sound(t *testing.T, job survey.Job) {
	t.Helper()
	_, faults := job.Resolve()
	assert.Empty(t, faults)
}

// Both ends turn a corner together, whichever is chosen, and turn back together.
func TestBothEndsTurnAnOutsideCorner(t *testing.T) {
	for _, path := range []string{"walls[1].right.meets", "walls[2].left.meets"} {
		job := room(t, "three")
		require.NoError(t, Decode(&job, url.Values{path: {"outside corner"}, "walls[1].right.gap": {"1/8"}, "walls[2].left.gap": {"1/8"}}))
		assert.Equal(t, survey.End{Meets: "outside corner"}, job.Walls[1].Right, path)
		assert.Equal(t, survey.End{Meets: "outside corner"}, job.Walls[2].Left, path)
		sound(t, job)

		require.NoError(t, Apply(&job, "set "+path+"=corner"))
		assert.Equal(t, "corner", job.Walls[1].Right.Meets)
		assert.Equal(t, "corner", job.Walls[2].Left.Meets)
		sound(t, job)

		require.NoError(t, Apply(&job, "set "+path+"=outside corner"))
		require.NoError(t, Apply(&job, "set "+path+"="))
		assert.NotNil(t, job.Walls[1].Right.Stops)
		assert.NotNil(t, job.Walls[2].Left.Stops)
		sound(t, job)
	}
}

// The last wall of a closed room turns into the first; a wall without a neighbour is
// left as chosen, and the job says so at the field.
func TestTheLastWallTurnsIntoTheFirst(t *testing.T) {
	job := room(t, "half wall")
	require.NoError(t, Apply(&job, "set walls[3].right.meets=outside corner"))
	assert.Equal(t, "outside corner", job.Walls[0].Left.Meets)
	sound(t, job)

	job = room(t, "three")
	require.NoError(t, Apply(&job, "set walls[2].right.meets=outside corner"))
	_, faults := job.Resolve()
	require.Len(t, faults, 1)
	assert.Equal(t, "walls[2].right.meets", faults[0].Path)
}

// How a corner is made decides what else it has; a profile finds its trim, or gets some.
func TestHowACornerIsMade(t *testing.T) {
	job := room(t, "half wall")
	end := func() survey.End { return job.Walls[2].Right }
	set := func(field, value string) {
		t.Helper()
		require.NoError(t, Apply(&job, "set walls[2].right."+field+"="+value))
		sound(t, job)
	}
	set("gap", "1/16")
	set("corner", "mitre")
	assert.Equal(t, survey.End{Meets: "outside corner", Corner: "mitre", Gap: "1/16"}, end(), "nobody laps")
	set("angle", "135")
	set("corner", "profile")
	assert.Equal(t, survey.End{Meets: "outside corner", Corner: "profile", Trim: "profile"}, end())
	assert.Equal(t, []survey.TrimTile{{Name: "profile", Kind: "profile", Width: "1/8", Length: "96"}}, job.Trims)
	set("corner", "bullnose")
	assert.Empty(t, end().Trim, "a profile is no bullnose")
	require.NoError(t, Apply(&job, "add trims bullnose"))
	assert.Empty(t, end().Trim, "the corner is not trimmed by itself")
	set("trim", "bullnose")
	set("laps", "right")
	set("corner", "profile")
	assert.Equal(t, "profile", end().Trim, "the one that is there")
	assert.Len(t, job.Trims, 2)
	set("corner", "")
	assert.Equal(t, survey.End{Meets: "outside corner"}, end())
}

// A wall is added round an outside corner; one that is taken away leaves ends that stop.
func TestWallsRoundAnOutsideCornerComeAndGo(t *testing.T) {
	job := room(t, "corner")
	require.NoError(t, Apply(&job, "add walls round"))
	require.Len(t, job.Walls, 3)
	assert.Equal(t, "outside corner", job.Walls[1].Right.Meets)
	assert.Equal(t, "outside corner", job.Walls[2].Left.Meets)
	assert.Equal(t, "4 1/2", job.Walls[2].Width)
	sound(t, job)
	require.NoError(t, Apply(&job, "remove walls[2]"))
	assert.NotNil(t, job.Walls[1].Right.Stops)
	sound(t, job)

	job = room(t, "half wall")
	require.NoError(t, Apply(&job, "remove walls[2]"))
	assert.NotNil(t, job.Walls[2].Left.Stops, "the end panel has no half wall")
	assert.Equal(t, "corner", job.Walls[1].Right.Meets)
	sound(t, job)
}
