package form

import (
	"net/url"
	"slices"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A bench and a curb are added between two walls: no other wall changes, and the room solves.
func TestABenchIsAddedBetweenTwoWalls(t *testing.T) {
	job := room(t, "three")
	before := job.Walls[2].Right
	require.NoError(t, Apply(&job, "add walls bench"))
	require.NoError(t, Apply(&job, "add walls curb"))
	assert.Equal(t, before, job.Walls[2].Right)
	bench, curb := job.Walls[3], job.Walls[4]
	assert.Equal(t, []string{"bench", "wall", "wall", "seat"}, []string{bench.Name, bench.Left.Meets, bench.Right.Meets, bench.Top.Kind})
	assert.Equal(t, "-22", bench.Head.Stops.At, "18 in over a base 40 in under the level line")
	assert.Equal(t, []string{"curb", "curb", "-36"}, []string{curb.Name, curb.Top.Kind, curb.Head.Stops.At})
	assert.Contains(t, job.Guess, "walls[3].top.depth")
	sound(t, job)
	require.NoError(t, Apply(&job, "add walls bench"))
	assert.NotEqual(t, "bench", job.Walls[5].Name)
	sound(t, job)
}

// A top is put on a wall, typed over, laid with a tile or a slab of its own, and left out.
func TestATopIsPutOnAWall(t *testing.T) {
	job := room(t, "half wall")
	require.NoError(t, Apply(&job, "add walls[2].top cap"))
	w := func() *survey.Wall { return &job.Walls[2] }
	assert.Equal(t, "cap", w().Top.Kind)
	assert.Empty(t, w().Head.Finish, "the edge is made as the top says")
	sound(t, job)
	trimmed := job
	trimmed.Walls = slices.Clone(job.Walls)
	require.NoError(t, Apply(&trimmed, "add trims bullnose"))
	assert.Empty(t, trimmed.Walls[3].Head.Trim, "the cap lies over the end of the half wall too")
	assert.NotEmpty(t, trimmed.Walls[0].Left.Trim)
	sound(t, trimmed)
	require.NoError(t, Decode(&job, url.Values{"walls[2].top.corner": {"profile"}, "walls[2].top.laps": {"front"}, "walls[2].top.depth": {"6"}}))
	assert.Equal(t, "6", w().Top.Depth)
	assert.Empty(t, w().Top.Laps, "at a profile neither laps")
	assert.NotEmpty(t, w().Top.Trim, "a profile needs a bar")
	sound(t, job)
	require.NoError(t, Decode(&job, url.Values{"trims[0].name": {"steel"}}))
	assert.Equal(t, "steel", w().Top.Trim, "it follows the name of its trim")
	require.NoError(t, Apply(&job, "set walls[2].top.corner=mitre"))
	assert.Empty(t, w().Top.Trim)
	require.NoError(t, Apply(&job, "add walls[2].top.face.tile"))
	assert.NotNil(t, w().Top.Face.Tile)
	sound(t, job)
	require.NoError(t, Apply(&job, "forget walls[2].top.face.tile"))
	assert.Equal(t, survey.InsideFace{}, w().Top.Face)
	require.NoError(t, Apply(&job, "set walls[2].top.face.slab=3/4"))
	sound(t, job)
	require.NoError(t, Apply(&job, "forget walls[2].top"))
	assert.Nil(t, w().Top)
	sound(t, job)
	for _, do := range []string{"add walls[2].top shelf", "add walls[2].top.face.tile", "forget walls[2].top", "add walls[9].top seat"} {
		assert.Error(t, Apply(&job, do), do)
	}
	require.NoError(t, Apply(&job, "add walls[2].top cap"))
	require.NoError(t, Apply(&job, "set walls[2].head.meets=ceiling"))
	assert.Nil(t, w().Top, "there is none under a ceiling")
	sound(t, job)
}
