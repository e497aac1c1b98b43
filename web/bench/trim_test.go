package bench_test

import (
	"net/http"
	"testing"

	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/trial"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Buttons lay trim, set a leg in single tiles and add a fixture; each is saved, drawn, and
// has its card or its place in the form.
func TestTrimLegsAndFixturesAreAskedFor(t *testing.T) {
	s := trial.New(t)
	press := func(do string) survey.Job {
		posted := s.Bench()
		posted.Set(form.Do, do)
		answer, body := s.Post("/jobs/1", posted)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, "%s: %s", do, body)
		_, job := s.Stored()
		return job
	}
	job := press("add trims bullnose")
	require.Len(t, job.Trims, 1)
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, `data-piece="T-`)
	assert.Contains(t, page, `name="trims[0].width"`)
	answer, card := s.Get("/jobs/1/piece/T-" + "L-01")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, card, "left end")
	_, table := s.Get("/jobs/1/cuts.csv")
	assert.Contains(t, table, "T-L-")

	job = press("set walls[0].base[0].leg=single")
	assert.Equal(t, "single", job.Walls[0].Base[0].Leg)
	job = press("add walls[1].fixtures corner shelf")
	require.Len(t, job.Walls[1].Fixtures, 1)
	_, page = s.Get("/jobs/1?all=1")
	assert.Contains(t, page, `name="walls[1].fixtures[0].height.from"`)
	assert.Contains(t, page, `name="walls[0].base[0].leg"`)
}

// Where a cove is not offered, the page says why.
func TestThePageSaysWhereNoCoveStands(t *testing.T) {
	s := trial.OfFile(t, "bench")
	_, page := s.Get("/jobs/1?all=1")
	assert.NotContains(t, page, "No cove is offered")
	posted := s.Bench()
	posted.Set(form.Do, "add trims cove")
	answer, body := s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, body)
	_, page = s.Get("/jobs/1?all=1")
	assert.NotContains(t, page, "No cove is offered")
	assert.Contains(t, page, "left, over the seat")
	_, job := s.Stored()
	assert.NotEmpty(t, job.Walls[0].Base[1].Trim, "along every stretch")
	assert.NotEmpty(t, job.Walls[1].Base[0].Trim)

	s = trial.OfFile(t, "alcove")
	posted = s.Bench()
	posted.Set(form.Do, "add trims cove")
	answer, body = s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, body)
	_, page = s.Get("/jobs/1?all=1")
	assert.Contains(t, page, "No cove is offered on left, right: beside a leg")
}

// What is under a top takes no trim of its own: a choice that is offered there would be dropped.
func TestTheHeadUnderATopIsOfferedNoTrim(t *testing.T) {
	s := trial.OfFile(t, "bench")
	posted := s.Bench()
	posted.Set(form.Do, "add trims bullnose")
	answer, body := s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, body)
	_, page := s.Get("/jobs/1?all=1")
	assert.Contains(t, page, `name="walls[0].left.trim"`)
	_, job := s.Stored()
	for i, w := range job.Walls {
		if w.Top != nil {
			assert.NotContains(t, page, `name="`+form.At("walls", i)+`.head.trim"`, w.Name)
		}
	}
}
