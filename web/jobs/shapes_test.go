package jobs_test

import (
	"coursewright/web/trial"

	"net/http"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A tub in an alcove is offered with end walls that run past its front, so the
// plan must not say that they do not.
func TestTheTubsEndWallsRunPastItsFront(t *testing.T) {
	s := trial.New(t)
	for _, units := range []string{"in", "mm"} {
		answer, _ := s.Post("/jobs", url.Values{"shape": {"tub"}, "units": {units}})
		require.Equal(t, http.StatusSeeOther, answer.StatusCode)
		_, page := s.Get(answer.Header.Get("Location"))
		assert.NotContains(t, page, "past the tub; at least", units)
		assert.NotContains(t, page, "at its thinnest", "no sliver in a plain room, "+units)
		assert.NotContains(t, page, `class="faults"`, units)
	}
}
