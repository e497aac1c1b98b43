package bench_test

import (
	"net/http"
	"testing"

	"coursewright/web/trial"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatWouldHelpIsWorkedOutWhenItIsAskedFor(t *testing.T) {
	s := trial.Of(t, trial.File(t, "one-wall.json"))
	before, _ := s.Stored()
	answer, page := s.Get("/jobs/1/help")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, "fewer, because more off-cuts are used")
	after, _ := s.Stored()
	assert.Equal(t, before, after)
	_, bench := s.Get("/jobs/1")
	assert.Contains(t, bench, `data-load="/jobs/1/help"`)
}
