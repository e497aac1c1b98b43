package choices_test

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

// A choice that leaves poor cuts leads to what would help it; one without them does not.
func TestATroubledChoiceLeadsToWhatWouldHelp(t *testing.T) {
	s := trial.Of(t, trial.File(t, "hexagon.json"))
	_, page := s.Get("/jobs/1/choices")
	assert.Contains(t, page, `href="/jobs/1/choices/help"`)
	answer, help := s.Get("/jobs/1/choices/help")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, help, "Set with joints of")
	answer, _ = s.Get("/jobs/1/choices/help?of=nobody")
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)

	sound := trial.Of(t, trial.File(t, "toy.json"))
	_, page = sound.Get("/jobs/1/choices")
	assert.NotContains(t, page, "What would help")
}
