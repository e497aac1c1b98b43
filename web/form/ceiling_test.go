package form_test

import (
	"testing"

	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/shapes"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Of a tub whose tile goes up to the ceiling the heights are guesses until they are measured, and so are those
// of a bend in it; back at a line it is a new guess again. Found by a walk: the steps had no way to the ceiling.
func TestTileGoesUpToTheCeilingAndBackToALine(t *testing.T) {
	job, err := shapes.New("tub", "in", "attic")
	require.NoError(t, err)
	job.Walls[0].Head.Sight = "low"
	require.NoError(t, form.Apply(&job, "ceiling walls[0] walls[1] walls[2]"))
	for _, w := range job.Walls {
		require.Equal(t, "ceiling", w.Head.Meets)
		require.Nil(t, w.Head.Stops)
		require.Equal(t, []survey.Rise{{At: "0", Rise: "56"}, {At: w.Width, Rise: "56"}}, w.Head.Readings)
	}
	assert.Equal(t, "low", job.Walls[0].Head.Sight)
	assert.Subset(t, job.Guess, []string{"walls[0].head.readings[0].rise", "walls[2].head.readings[1].rise"})
	assert.NotContains(t, job.Guess, "walls[0].head.stops.at")
	_, faults := job.Resolve()
	require.Empty(t, faults)

	require.NoError(t, form.Apply(&job, "add walls[1].head.readings"))
	require.Len(t, job.Walls[1].Head.Readings, 3)
	assert.Subset(t, job.Guess, []string{"walls[1].head.readings[0].rise", "walls[1].head.readings[1].at", "walls[1].head.readings[1].rise", "walls[1].head.readings[2].rise"})

	require.NoError(t, form.Apply(&job, "line walls[1]"))
	require.Equal(t, survey.Head{Stops: &survey.Mark{At: "33"}, Finish: "trim"}, job.Walls[1].Head)
	assert.Contains(t, job.Guess, "walls[1].head.stops.at")
	assert.NotContains(t, job.Guess, "walls[1].head.readings[0].rise")
	require.Error(t, form.Apply(&job, "ceiling walls[7]"))
	require.Error(t, form.Apply(&job, "line walls[0].head"))
}

// In a corner the ceiling is as high on one wall as on the other: a wall that goes up to it later has there what was
// measured, as a wall that is added has, and is asked for its other end alone. Found by a walk through a wet room of four walls, of
// which one ceiling stood in the same corner at 1423 mm and at a guess of 1400.
func TestACeilingIsOneHeightInACorner(t *testing.T) {
	job, err := shapes.New("three", "mm", "wet room")
	require.NoError(t, err)
	require.NoError(t, form.Apply(&job, "add walls"))
	assert.Equal(t, "ceiling", job.Walls[3].Head.Meets)
	require.NoError(t, form.Apply(&job, "close"))
	require.NoError(t, form.Apply(&job, "line walls[3]"))
	require.NoError(t, form.Set(&job, "walls[0].head.readings[0].rise", "1420"))
	require.NoError(t, form.Set(&job, "walls[2].head.readings[1].rise", "1423"))

	require.NoError(t, form.Apply(&job, "ceiling walls[3]"))
	assert.Equal(t, []survey.Rise{{At: "0", Rise: "1423"}, {At: "760", Rise: "1420"}}, job.Walls[3].Head.Readings)
	assert.NotContains(t, job.Guess, "walls[3].head.readings[0].rise")
	assert.NotContains(t, job.Guess, "walls[3].head.readings[1].rise")

	require.NoError(t, form.Apply(&job, "line walls[3]"))
	require.NoError(t, form.Apply(&job, "guess walls[2].head.readings[1].rise"))
	require.NoError(t, form.Apply(&job, "ceiling walls[3]"))
	assert.Equal(t, "1423", job.Walls[3].Head.Readings[0].Rise, "as it is guessed there")
	assert.Contains(t, job.Guess, "walls[3].head.readings[0].rise")
}

// A room is closed where its two free ends were: what one of the walls has measured there holds for the other.
func TestWallsThatCloseARoomAgreeInItsLastCorner(t *testing.T) {
	for _, c := range []struct {
		guess       []string
		first, last string
	}{
		{[]string{"walls[3].base[0].readings[1].drop"}, "1001", "1001"},
		{[]string{"walls[0].base[0].readings[0].drop"}, "1004", "1004"},
		{[]string{"walls[0].base[0].readings[0].drop", "walls[3].base[0].readings[1].drop"}, "1001", "1001"},
		{nil, "1001", "1004"}, // both measured: it is asked which is right
	} {
		job, err := shapes.New("three", "mm", "wet room")
		require.NoError(t, err)
		require.NoError(t, form.Apply(&job, "add walls"))
		require.NoError(t, form.Set(&job, "walls[0].base[0].readings[0].drop", "1001"))
		require.NoError(t, form.Set(&job, "walls[3].base[0].readings[1].drop", "1004"))
		job.Guess = c.guess
		require.NoError(t, form.Apply(&job, "close"))
		assert.Equal(t, c.first, job.Walls[0].Base[0].Readings[0].Drop, "%v", c.guess)
		assert.Equal(t, c.last, job.Walls[3].Base[0].Readings[1].Drop, "%v", c.guess)
		if len(c.guess) == 1 {
			assert.Empty(t, job.Guess)
		}
	}
}
