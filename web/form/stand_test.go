package form

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

func TestCoursesStandAndAreForgotten(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "stand walls[1]=8;-32 5/16;-32 1/4;left edge;12 3/8;right"))
	assert.Equal(t, &survey.AsSet{Course: "8", Left: "-32 5/16", Right: "-32 1/4", Start: survey.SetStart{Is: "left edge", At: "12 3/8"}}, job.Walls[1].Set)
	assert.Equal(t, "right", job.Bond.Hand, "the hand the courses step is known now")
	require.NoError(t, Apply(&job, "stand walls[1]=9;-29;-29;joint;9;left"))
	assert.Equal(t, "right", job.Bond.Hand, "what was said of it stays")
	require.NoError(t, Apply(&job, "forget walls[1].set"))
	assert.Nil(t, job.Walls[1].Set)

	job.Bond = survey.Bond{Kind: "stack"}
	require.NoError(t, Apply(&job, "stand walls[0]=1;0;0;joint;1;left"))
	assert.Empty(t, job.Bond.Hand, "a stack bond has none")
	for _, do := range []string{"stand", "stand walls[0]=1", "stand walls[9]=1;0;0;joint;1;", "stand tile=1;0;0;joint;1;",
		"forget", "forget walls[9].set", "forget walls[0].head", "forget walls[0].set.course", "forget tile"} {
		assert.Error(t, Apply(&job, do), do)
	}
}

func TestASampleIsTidied(t *testing.T) {
	job := demo(t)
	posted := url.Values{
		"tile.sample.across.tiles": {"10"}, "tile.sample.across.joints": {"between"}, "tile.sample.across.length": {""},
		"tile.sample.singles[0].width": {""}, "tile.sample.singles[1].height": {""},
	}
	require.NoError(t, Decode(&job, posted))
	assert.Nil(t, job.Tile.Sample, "boxes as they come say nothing")

	posted.Set("tile.sample.singles[1].height", "2 7/8")
	posted.Set("tile.sample.singles[2].height", "")
	posted.Set("tile.sample.up.spacer", "1/16")
	require.NoError(t, Decode(&job, posted))
	assert.Equal(t, &survey.Sample{Up: survey.Run{Spacer: "1/16"}, Singles: []survey.Single{{}, {Height: "2 7/8"}}}, job.Tile.Sample,
		"every tile keeps its place")
	require.NoError(t, Apply(&job, "forget tile.sample"))
	assert.Nil(t, job.Tile.Sample)
}

func TestAChangeOfUnitsKeepsWhatWasMeasuredOfTileAndCourses(t *testing.T) {
	job := demo(t)
	job.Tile.Sample = &survey.Sample{Use: true, Across: survey.Run{Tiles: "8", Joints: "each", Length: "48"}}
	job.Walls[1].Set = &survey.AsSet{Course: "8", Left: "-32", Right: "-32", Start: survey.SetStart{Is: "tile", At: "12"}}
	require.NoError(t, Decode(&job, url.Values{"units": {"mm"}}))
	assert.Equal(t, survey.Run{Tiles: "8", Joints: "each", Length: "48 in"}, job.Tile.Sample.Across)
	assert.Equal(t, &survey.AsSet{Course: "8", Left: "-32 in", Right: "-32 in", Start: survey.SetStart{Is: "tile", At: "12 in"}}, job.Walls[1].Set)
	assert.True(t, job.Tile.Sample.Use)
}
