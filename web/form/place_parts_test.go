package form

import (
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPartsAreDragged(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add bands mosaic"))
	require.NoError(t, Apply(&job, "place 2 band mosaic=19"))
	assert.Equal(t, "19", job.Bands[0].Near, "a free band is wished there")
	job.Bands[0].Bottom = survey.Mark{At: "20"}
	require.NoError(t, Apply(&job, "place 1 band mosaic=18 1/2"))
	assert.Equal(t, survey.Mark{At: "18 1/2"}, job.Bands[0].Bottom, "a measured one is moved")

	for _, kind := range []string{"corner shelf", "soap dish", "glass line"} {
		require.NoError(t, Apply(&job, "add walls[1].fixtures "+kind))
	}
	require.NoError(t, Apply(&job, "place 2 fixture corner shelf=9"))
	assert.Equal(t, "9", job.Walls[1].Fixtures[0].Near)
	require.NoError(t, Apply(&job, "place 2 fixture soap dish=20;-3"))
	assert.Equal(t, []string{"20", "-3"}, []string{job.Walls[1].Fixtures[1].At, job.Walls[1].Fixtures[1].Near})
	job.Walls[1].Fixtures[1].Height, job.Walls[1].Fixtures[1].Near = survey.Measure{Plain: "-4"}, ""
	require.NoError(t, Apply(&job, "place 2 fixture soap dish=21;-2"))
	assert.Equal(t, "-2", job.Walls[1].Fixtures[1].Height.Plain)
	require.NoError(t, Apply(&job, "place 2 fixture glass line=30"))
	assert.Equal(t, "30", job.Walls[1].Fixtures[2].At)

	job.Walls[2].Right.Stops = &survey.Mark{At: "33"}
	require.NoError(t, Apply(&job, "place 3 stop right=32 1/2"))
	assert.Equal(t, "32 1/2", job.Walls[2].Right.Stops.At)
	_, faults := job.Resolve()
	require.Empty(t, faults)
	for _, bad := range []string{"place 1 band other=3", "place 2 fixture other=3", "place 2 fixture soap dish=3", "place 2 fixture glass line=3;4",
		"place 2 fixture corner shelf=3;4", "place 1 stop left=3", "place 1 stop side=3", "place 2 stop left=3"} {
		assert.Error(t, Apply(&job, bad), bad)
	}
}

func TestAFlushDishSlidesOrIsMeasured(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add walls[2].fixtures soap dish"))
	f := &job.Walls[2].Fixtures[0]
	at := f.At
	assert.Error(t, Apply(&job, "along walls[2].fixtures[0]"), "it is not flush")
	f.Flush = true
	require.NoError(t, Apply(&job, "along walls[2].fixtures[0]"))
	require.NotNil(t, f.Along)
	assert.Empty(t, f.At)
	_, faults := job.Resolve()
	require.Empty(t, faults)
	require.NoError(t, Apply(&job, "place 3 soap dish soap dish left=12"))
	assert.Equal(t, "12", job.Pins.Walls["right"].Marks["soap dish soap dish left"])
	require.NoError(t, Apply(&job, "along walls[2].fixtures[0]"))
	assert.Equal(t, at, f.At)
	require.NoError(t, Apply(&job, "along walls[2].fixtures[0]"))
	f.Flush = false
	Tidy(&job)
	assert.Nil(t, f.Along)
	assert.NotEmpty(t, f.At)
	assert.Empty(t, job.Pins.Walls["right"].Marks)
	assert.Error(t, Apply(&job, "along walls[2].fixtures[3]"))
}
