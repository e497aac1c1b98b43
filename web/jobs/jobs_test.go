package jobs_test

import (
	"net/http"
	"net/url"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/shapes"
	"coursewright/web/trial"
)

func TestEveryShapeMakesAJobThatSolves(t *testing.T) {
	s := trial.New(t)
	for _, shape := range shapes.All() {
		for _, units := range []string{"in", "mm"} {
			answer, page := s.Post("/jobs", url.Values{"shape": {shape.Key}, "units": {units}, "title": {"My " + shape.Key}})
			require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
			answer, page = s.Get(answer.Header.Get("Location"))
			assert.Equal(t, http.StatusOK, answer.StatusCode)
			assert.NotContains(t, page, `class="faults"`, shape.Key+units)
		}
	}
	answer, _ := s.Post("/jobs", url.Values{"shape": {"dome"}, "units": {"in"}})
	assert.Equal(t, http.StatusBadRequest, answer.StatusCode)
}

func TestAnExportedJobComesBackTheSame(t *testing.T) {
	s := trial.New(t)
	answer, document := s.Get("/jobs/1/job.json")
	assert.Contains(t, answer.Header.Get("Content-Disposition"), ".json")
	answer, _ = s.Upload([]byte(document))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	assert.Equal(t, "/jobs/2", answer.Header.Get("Location"))
	_, again := s.Get("/jobs/2/job.json")
	assert.Equal(t, document, again)
}

func TestAFaultyImportIsRefusedWithEveryFault(t *testing.T) {
	s := trial.New(t)
	answer, page := s.Upload([]byte(`{"format": "coursewright-job/1", "units": "ell", "colour": "blue"}`))
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, "colour")
	answer, _ = s.Upload([]byte(`not a job`))
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
}

func TestADeletedJobCanBeBroughtBack(t *testing.T) {
	s := trial.New(t)
	answer, _ := s.Post("/jobs/1/delete", nil)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, page := s.Get(answer.Header.Get("Location"))
	assert.Contains(t, page, "Bring it back")
	answer, _ = s.Get("/jobs/1")
	assert.Equal(t, http.StatusGone, answer.StatusCode)
	answer, _ = s.Post("/jobs/1/restore", nil)
	assert.Equal(t, "/jobs/1", answer.Header.Get("Location"))
	answer, _ = s.Get("/jobs/1")
	assert.Equal(t, http.StatusOK, answer.StatusCode)
}

// Jobs begun already stand on the first screen under the plain rooms; rooms with more in them are folded away.
func TestTheJobsStandOnTheFirstScreen(t *testing.T) {
	ctx, s := trial.Browse(t), trial.New(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/"), chromedp.WaitVisible("#main"))
	assert.Less(t, trial.See[float64](t, ctx, `document.querySelector(".jobs li").getBoundingClientRect().bottom`), 900.0)
	assert.Equal(t, 4.0, trial.See[float64](t, ctx, `[...document.querySelectorAll("button.shape")].filter((b) => b.checkVisibility()).length`))
	assert.Equal(t, float64(len(shapes.All())), trial.See[float64](t, ctx, `document.querySelectorAll("button.shape").length`))
}
