package jobs_test

import (
	"bytes"
	"fmt"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
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

// The name of a new job is typed into an empty box, and may be left out. Found by a walk: “New job” stood in it to be erased,
// and a job was called “New jobMaple Lane bath”.
func TestANewJobIsNamedInAnEmptyBox(t *testing.T) {
	s := trial.New(t)
	_, page := s.Get("/")
	assert.Contains(t, page, `placeholder="New job"`)
	assert.NotContains(t, page, `value="New job"`)
	answer, _ := s.Post("/jobs", url.Values{"shape": {"one"}, "units": {"in"}, "title": {""}})
	_, page = s.Get(answer.Header.Get("Location"))
	assert.Contains(t, page, "<title>New job")
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
	answer, page = s.Upload(bytes.Repeat([]byte("x"), 3_000_000))
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, "3000000 bytes", "as large as it is, not as much of it as was read")
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
	_, page = s.Get("/jobs/1/history")
	assert.Regexp(t, `The first state\.</p>\s*<p>The job was deleted on .+, and brought back on .+\.</p>`, page, "the history says so")
	s.Post("/jobs/1", s.With("joint", "3/16"))
	_, page = s.Get("/jobs/1/history")
	assert.Regexp(t, `The first state\.</p>\s*<p>The job was deleted on`, page, "at the state it showed")
	assert.Equal(t, 1, strings.Count(page, "The job was deleted on"))
}

// Jobs begun already stand on the first screen under the plain rooms; rooms with more in them are folded away.
func TestTheJobsStandOnTheFirstScreen(t *testing.T) {
	ctx, s := trial.Browse(t), trial.New(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/"), chromedp.WaitVisible("#main"))
	assert.Less(t, trial.See[float64](t, ctx, `document.querySelector(".jobs li").getBoundingClientRect().bottom`), 900.0)
	assert.Equal(t, 4.0, trial.See[float64](t, ctx, `[...document.querySelectorAll("button.shape")].filter((b) => b.checkVisibility()).length`))
	assert.Equal(t, float64(len(shapes.All())), trial.See[float64](t, ctx, `document.querySelectorAll("button.shape").length`))
}

// Enter in the name of a new job makes no room that nobody has picked.
func TestEnterInTheNamePicksNoShape(t *testing.T) {
	ctx, s := trial.Browse(t), trial.Swift(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/"), chromedp.WaitVisible("#title"))
	trial.Type(t, ctx, "title", "Attic\r")
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/"), chromedp.WaitVisible("#title"))
	assert.Equal(t, 1.0, trial.See[float64](t, ctx, `document.querySelectorAll("a.job").length`))
}

// A copy is a job of its own: the same room under another name, none of it on the wall yet.
func TestAJobIsCopied(t *testing.T) {
	s := trial.OfFile(t, "toy")
	_, page := s.Get("/jobs/1/bathroom")
	answer, _ := s.Post("/jobs/1/bathroom", trial.Form(t, page, "All 3 set"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, page = s.Get("/")
	assert.Contains(t, page, "on the wall: 3 set")
	answer, _ = s.Post("/jobs/1/copy", nil)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	require.Equal(t, "/jobs/2", answer.Header.Get("Location"))
	was, job := s.Stored()
	stored, err := s.Store.Load(t.Context(), 2)
	require.NoError(t, err)
	copied, err := survey.Read(stored.Document)
	require.NoError(t, err)
	assert.Equal(t, job.Title+", copy", copied.Title)
	assert.Equal(t, copied.Title, stored.Title)
	copied.Title = job.Title
	assert.Equal(t, job, copied)
	_, page = s.Get("/")
	assert.Equal(t, 1, strings.Count(page, "on the wall"), "ticks are of one wall")
	again, _ := s.Stored()
	assert.Equal(t, was, again, "the first stays as it is")
	answer, _ = s.Post("/jobs/9/copy", nil)
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)
	job.Title = strings.Repeat("ü", 200)
	document, err := survey.Write(job)
	require.NoError(t, err)
	long, err := s.Store.Create(t.Context(), job.Title, document)
	require.NoError(t, err)
	answer, page = s.Post(fmt.Sprintf("/jobs/%d/copy", long.ID), nil)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, page = s.Get(answer.Header.Get("Location"))
	assert.NotContains(t, page, "200 letters", "no title longer than a title may be")
}

// No two buttons are called alike, also where jobs have one name, as after an import: they are told apart by when they were saved.
func TestJobsOfOneNameAreToldApart(t *testing.T) {
	s := trial.New(t)
	_, document := s.Get("/jobs/1/job.json")
	for range 2 {
		s.Upload([]byte(document))
	}
	label := regexp.MustCompile(`aria-label="([^"]*)"`)
	for _, gone := range []string{"", "/jobs/1", "/jobs/2"} {
		if gone != "" {
			s.Post(gone+"/delete", nil)
		}
		_, page := s.Get("/")
		seen := map[string]bool{}
		for _, found := range label.FindAllStringSubmatch(page, -1) {
			assert.False(t, seen[found[1]], "twice: %s", found[1])
			seen[found[1]] = true
		}
	}
	_, page := s.Get("/")
	assert.Regexp(t, `aria-label="Bring back Heron Street[^"]*, saved \d+ \w+ \d{4}, \d\d:\d\d:\d\d`, page)
	assert.NotRegexp(t, `aria-label="Copy Heron Street[^"]*, saved`, page, "one alone has its name")
}
