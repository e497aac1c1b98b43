package bench_test

import (
	"net/http"
	"testing"

	"coursewright/web/trial"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The line of a step writes its figures in one way, whichever they were typed in; the box keeps what was typed.
func TestAStepWritesItsFiguresAlike(t *testing.T) {
	s := trial.OfFile(t, "one-wall")
	answer, _ := s.Post("/jobs/1", s.With("walls[0].width", "72.25"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, `id="line-walls">72 1/4<`)
	assert.Contains(t, page, `value="72.25"`)
}
