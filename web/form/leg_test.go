package form

import (
	"net/url"
	"testing"

	"coursewright/layout/survey"
	"coursewright/web/shapes"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A leg that is added is laid as is best; what is no leg any more says nothing of how it is laid, which
// would be refused at a field that no page shows.
func TestHowALegIsLaidGoesWithIt(t *testing.T) {
	job := room(t, "three")
	job.Walls[0].Base[0].Meets = "tub"
	require.NoError(t, Apply(&job, "add walls[0].base left"))
	Tidy(&job)
	assert.Equal(t, survey.BestLeg, job.Walls[0].Base[0].Leg)
	_, faults := job.Resolve()
	require.Empty(t, faults)
	require.NoError(t, Decode(&job, url.Values{"walls[0].base[1].meets": {"floor"}}))
	Tidy(&job)
	assert.Empty(t, job.Walls[0].Base[0].Leg)
	_, faults = job.Resolve()
	require.Empty(t, faults)
}

// A bath has a leg at one side only as often as at both. What is taken out leaves no hole in the base, and a wall that is
// no wider than from the corner to the front of the tub has no leg: the leg was refused for its reading, at a field that
// only the long form shows.
func TestALegIsTakenOutAtOneSide(t *testing.T) {
	for name, takeOut := range map[string]func(*survey.Job) error{
		"by its button": func(j *survey.Job) error { return Apply(j, "remove walls[2].base[1]") },
		"by the width of the wall": func(j *survey.Job) error {
			defer Tidy(j)
			return Decode(j, url.Values{"walls[2].width": {"30"}})
		},
	} {
		t.Run(name, func(t *testing.T) {
			job, err := shapes.New("tub", "in", "A bath")
			require.NoError(t, err)
			require.NoError(t, takeOut(&job))
			require.Len(t, job.Walls[2].Base, 1)
			assert.Equal(t, job.Walls[2].Width, job.Walls[2].Base[0].Readings[1].At)
			assert.Len(t, job.Walls[0].Base, 2, "the other leg stays")
			_, faults := job.Resolve()
			assert.Empty(t, faults)
		})
	}
}

// At the left end too, where the tub is what the wall then begins with: no guess stays of where that is.
func TestALegIsTakenOutAtTheLeft(t *testing.T) {
	job, err := shapes.New("tub", "in", "A bath")
	require.NoError(t, err)
	require.NoError(t, Apply(&job, "remove walls[0].base[0]"))
	require.Len(t, job.Walls[0].Base, 1)
	assert.Equal(t, "tub", job.Walls[0].Base[0].Meets)
	assert.Equal(t, "0", job.Walls[0].Base[0].Readings[0].At)
	assert.NotContains(t, job.Guess, "walls[0].base[0].readings[0].at")
	_, faults := job.Resolve()
	assert.Empty(t, faults)
}
