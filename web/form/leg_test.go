package form

import (
	"net/url"
	"testing"

	"coursewright/layout/survey"

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
