package form

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

// trims are the names at the ends and heads of a job, from left to right.
func trims(job survey.Job) (names []string) {
	for _, w := range job.Walls {
		names = append(names, w.Left.Trim, w.Head.Trim, w.Right.Trim)
	}
	return names
}

func TestTrimIsLaidWhereTileStops(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add trims bullnose"))
	require.NoError(t, Apply(&job, "add trims bullnose"))
	assert.Equal(t, []string{"bullnose", "bullnose 2"}, trimNames(job))
	assert.Equal(t, "bullnose", job.Walls[0].Left.Trim, "the end wall's front")
	assert.Empty(t, job.Walls[0].Right.Trim, "its corner")
	_, faults := job.Resolve()
	assert.Empty(t, faults, "what a button adds solves")

	require.NoError(t, Decode(&job, url.Values{"trims[0].name": {"edge"}}))
	assert.Equal(t, "edge", job.Walls[0].Left.Trim, "edges follow the name")
	require.NoError(t, Decode(&job, url.Values{"walls[0].left.meets": {"corner"}}))
	assert.Empty(t, job.Walls[0].Left.Trim, "an end that meets a corner has none")
	require.NoError(t, Apply(&job, "remove trims[0]"))
	require.NoError(t, Apply(&job, "remove trims[0]"))
	for _, name := range trims(job) {
		assert.Empty(t, name, "trim that is gone is let go of")
	}
	assert.Nil(t, job.Trims)
}

func TestEveryKindOfTrimSolves(t *testing.T) {
	for _, kind := range []survey.Kind{survey.Bullnose, survey.QuarterRound, survey.Pencil, survey.Profile} {
		for _, units := range []string{"in", "mm"} {
			job := demo(t)
			require.NoError(t, Decode(&job, url.Values{"units": {units}}))
			require.NoError(t, Apply(&job, "add trims "+string(kind)))
			room, faults := job.Resolve()
			assert.Empty(t, faults)
			assert.Equal(t, kind, room.Trims[0].Kind)
		}
	}
}

func TestTrimHoldsWords(t *testing.T) {
	for path, is := range map[string]bool{"trims[0].width": true, "trims[0].length": true, "trims[0].place": false, "trims[0].corners": false, "walls[0].left.trim": false} {
		assert.Equal(t, is, IsLength(path), path)
	}
}

// Trim that is added leaves alone an edge at which it would take the room of a strip or of a band.
func TestTrimLeavesRoomForWhatStandsAtAnEdge(t *testing.T) {
	job := room(t, "one")
	require.NoError(t, Apply(&job, "add walls[0].strips"))
	job.Walls[0].Strips[0].Middle, job.Walls[0].Strips[0].Near = survey.Mark{At: "4"}, ""
	sound(t, job)
	require.NoError(t, Apply(&job, "add trims bullnose"))
	sound(t, job)
	w := job.Walls[0]
	assert.Equal(t, []string{"", "bullnose", "bullnose"}, []string{w.Left.Trim, w.Right.Trim, w.Head.Trim})
}
