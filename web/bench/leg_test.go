package bench_test

import (
	"net/http"
	"strings"
	"testing"

	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/shapes"
	"coursewright/web/trial"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A new bath leaves its legs to the order of merit, and the form says at each how it is laid and why; by
// hand it is laid otherwise.
func TestTheFormSaysHowALegIsLaid(t *testing.T) {
	bath, err := shapes.New("tub", "in", "A bath")
	require.NoError(t, err)
	file, err := survey.Write(bath)
	require.NoError(t, err)
	s := trial.Of(t, file)
	_, page := s.Get("/jobs/1")
	_, all := s.Get("/jobs/1?all=1")
	const said = "The leg at the left of left is laid in"
	assert.True(t, strings.Contains(page, said) && strings.Contains(all, said))
	posted := s.Bench()
	posted.Set(form.Do, "set walls[0].base[0].leg=none")
	answer, body := s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, body)
	_, page = s.Get("/jobs/1")
	assert.False(t, strings.Contains(page, said))
	_, job := s.Stored()
	assert.Equal(t, "none", job.Walls[0].Base[0].Leg)
}

// Where no tile runs past the front, the step offers a leg at every end that stops over the rim.
func TestALegIsAddedInItsStep(t *testing.T) {
	shower, err := shapes.New("three", "in", "A shower")
	require.NoError(t, err)
	file, err := survey.Write(shower)
	require.NoError(t, err)
	s := trial.Of(t, file)
	_, page := s.Get("/jobs/1")
	assert.True(t, strings.Contains(page, "Add a leg at the left of left") && strings.Contains(page, "Add a leg at the right of right"))
	assert.False(t, strings.Contains(page, "Add a leg at the left of back"))
	posted := s.Bench()
	posted.Set(form.Do, "add walls[2].base right")
	answer, body := s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, body)
	_, job := s.Stored()
	assert.Equal(t, survey.BestLeg, job.Walls[2].Base[1].Leg)
	_, page = s.Get("/jobs/1")
	assert.Contains(t, page, "Add a leg at the left of left", "one side has a leg, and the other may get one")
	assert.Contains(t, page, "No leg here: the tile of wall right stops over the shower base")
}
