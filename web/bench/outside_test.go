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

// A wall is added round an outside corner; how the corner is made is asked in both ways
// of the survey, saved, drawn, and stands in the cut schedule.
func TestOutsideCornersAreAskedFor(t *testing.T) {
	s := trial.New(t)
	press := func(do string) survey.Job {
		t.Helper()
		posted := s.Bench()
		posted.Set(form.Do, do)
		answer, body := s.Post("/jobs/1", posted)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, "%s: %s", do, body)
		_, job := s.Stored()
		return job
	}
	_, page := s.Get("/jobs/1")
	assert.NotContains(t, page, "section-outside", "nothing is asked where no wall turns")
	assert.Contains(t, page, "add walls round")

	job := press("add walls round")
	last := len(job.Walls) - 1
	assert.Equal(t, "outside corner", job.Walls[last].Left.Meets)
	path := form.At("walls", last-1) + ".right"
	_, page = s.Get("/jobs/1")
	assert.Contains(t, page, "section-outside")
	assert.Contains(t, page, `name="`+path+`.laps"`)
	assert.NotContains(t, page, `name="`+path+`.lean`, "an outside corner is not asked whether it leans")

	press("set " + path + ".corner=mitre")
	_, page = s.Get("/jobs/1")
	assert.Contains(t, page, `name="`+path+`.angle"`)
	assert.NotContains(t, page, `name="`+path+`.laps"`)
	_, work := s.Get("/jobs/1/work")
	assert.Contains(t, work, "Mitred edges")
	assert.Contains(t, work, "tilt the saw to 45°")
	_, all := s.Get("/jobs/1?all=1")
	assert.Contains(t, all, `name="`+path+`.angle"`)
	assert.Contains(t, all, "stands at the right end of the wall before it")

	job = press("set " + path + ".corner=profile")
	assert.NotEmpty(t, job.Walls[last-1].Right.Trim)
	_, page = s.Get("/jobs/1")
	assert.Contains(t, page, `name="`+path+`.trim"`)

	posted := s.Bench()
	posted.Set(path+".corner", "mitre")
	posted.Set(path+".angle", "200")
	_, page = s.Post("/jobs/1", posted)
	assert.Contains(t, page, "whole degrees from 60 to 150", "what is wrong is said, and nothing typed is lost")
	assert.Contains(t, page, `value="200"`)
}
