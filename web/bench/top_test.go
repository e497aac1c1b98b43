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

// A bench is added, its seat asked for in both ways of the survey, drawn from above, cut
// and set; a fault stands at its field, and what was typed stays.
func TestTopsAreAskedFor(t *testing.T) {
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
	job := press("add walls bench")
	last := len(job.Walls) - 1
	path := form.At("walls", last) + ".top"
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, `name="`+path+`.depth"`)
	assert.Contains(t, page, `id="section-tops"`)
	assert.Contains(t, page, "seat of bench", "drawn folded out")
	_, all := s.Get("/jobs/1?all=1")
	assert.Contains(t, all, `name="`+path+`.fall"`)
	assert.Contains(t, all, "Finished front edge, over the level line")

	press("set " + path + ".corner=mitre")
	_, work := s.Get("/jobs/1/work")
	assert.Contains(t, work, "-T front: tilt the saw to 45°")

	posted := s.Bench()
	posted.Set(path+".depth", "99")
	_, page = s.Post("/jobs/1", posted)
	assert.Contains(t, page, "99", "what was typed stays")
	_, kept := s.Stored()
	assert.NotEqual(t, "99", kept.Walls[last].Top.Depth, "nothing is saved")

	job = press("forget " + path)
	assert.Nil(t, job.Walls[last].Top)
}

// A wall that ends under a band is not offered to it: the survey says that it has no room.
func TestAWallWithoutRoomIsNotOfferedToABand(t *testing.T) {
	s := trial.New(t)
	for _, do := range []string{"add walls curb", "add bands mosaic"} {
		posted := s.Bench()
		posted.Set(form.Do, do)
		answer, _ := s.Post("/jobs/1", posted)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, do)
	}
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, "curb: no room for it")
	assert.NotContains(t, page, `value="round bands[0] curb"`)
	assert.Contains(t, page, `value="round bands[0] back"`)
}
