package web_test

import (
	"net/http"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/form"
	"coursewright/web/shapes"
)

func TestTheFormCarriesTheWholeJob(t *testing.T) {
	s := newSite(t)
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	posted := s.bench()
	for _, f := range form.Fields(job) {
		if f.Path == "format" {
			continue
		}
		assert.Equal(t, f.Value, posted.Get(f.Path), f.Path)
	}
	var again survey.Job
	again.Format = survey.Format
	require.NoError(t, form.Decode(&again, posted))
	assert.Equal(t, job, again)
}

func TestPostingTheFormUnchangedAddsNoRevision(t *testing.T) {
	s := newSite(t)
	before, _ := s.stored()
	answer, _ := s.post("/jobs/1?wall=2", s.bench())
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
	assert.Equal(t, "/jobs/1?wall=2", answer.Header.Get("Location"), "the wall stays in front")
	after, _ := s.stored()
	assert.Equal(t, before.Revision, after.Revision)
}

func TestAnEditIsSavedAsTyped(t *testing.T) {
	s := newSite(t)
	posted := s.bench()
	posted.Set("walls[1].width", "4'  11½")
	answer, _ := s.post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.stored()
	assert.Equal(t, "4'  11½", job.Walls[1].Width)
	_, page := s.get("/jobs/1")
	assert.Contains(t, page, `4&#39;-11 1/2&#34; · 1511 mm`)
}

func TestALiveEditIsAnsweredWithTheNewPage(t *testing.T) {
	s := newSite(t)
	posted := s.bench()
	posted.Set("joint", "3/16")
	answer, page := s.post("/jobs/1", posted, "X-Bench", "live")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, ">Saved</p>")
	kept, job := s.stored()
	assert.Equal(t, "3/16", job.Joint.Plain)
	assert.NotEqual(t, posted.Get("revision"), fields(t, page).Get("revision"))
	assert.True(t, kept.CanUndo)
}

func TestFaultsAreListedAtTheTopAndAtTheField(t *testing.T) {
	s := newSite(t)
	before, _ := s.stored()
	posted := s.bench()
	posted.Set("walls[1].width", "sixty")
	posted.Set("joint", "1/0")
	answer, page := s.post("/jobs/1", posted)
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, `href="#walls[1].width"`)
	assert.Contains(t, page, `href="#joint"`)
	assert.Equal(t, "sixty", fields(t, page).Get("walls[1].width"), "what was typed stays")
	assert.Contains(t, page, "<svg", "the last good drawing stays")
	after, _ := s.stored()
	assert.Equal(t, before, after)
}

func TestUndoAndRedo(t *testing.T) {
	s := newSite(t)
	posted := s.bench()
	posted.Set("joint", "3/16")
	s.post("/jobs/1", posted)
	undo := url.Values{"revision": {s.bench().Get("revision")}}
	answer, _ := s.post("/jobs/1/undo", undo)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.stored()
	assert.Equal(t, "1/8", job.Joint.Plain)
	s.post("/jobs/1/redo", url.Values{"revision": {s.bench().Get("revision")}})
	_, job = s.stored()
	assert.Equal(t, "3/16", job.Joint.Plain)
	answer, _ = s.post("/jobs/1/undo", nil)
	assert.Equal(t, http.StatusBadRequest, answer.StatusCode, "an undo says what it undoes")
}

func TestButtonsEditWithoutAScript(t *testing.T) {
	file, err := os.ReadFile("../testdata/jobs/one-wall.json")
	require.NoError(t, err)
	s := newSiteOf(t, file)
	for _, do := range []string{"add walls", "add walls[1].openings pipe", "add walls[0].base[0].readings",
		"add walls[1].left.lean", "add walls[1].base", "add walls[1].base", "remove walls[1]"} {
		posted := s.bench()
		posted.Set("do", do)
		answer, page := s.post("/jobs/1", posted)
		assert.Equal(t, http.StatusSeeOther, answer.StatusCode, "%s: %s", do, page)
	}
	posted := s.bench()
	posted.Set("do", "paint it")
	answer, _ := s.post("/jobs/1", posted)
	assert.Equal(t, http.StatusBadRequest, answer.StatusCode)
}

func TestEveryShapeMakesAJobThatSolves(t *testing.T) {
	s := newSite(t)
	for _, shape := range shapes.All() {
		for _, units := range []string{"in", "mm"} {
			answer, page := s.post("/jobs", url.Values{"shape": {shape.Key}, "units": {units}, "title": {"My " + shape.Key}})
			require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
			answer, page = s.get(answer.Header.Get("Location"))
			assert.Equal(t, http.StatusOK, answer.StatusCode)
			assert.NotContains(t, page, `class="faults"`, shape.Key+units)
		}
	}
	answer, _ := s.post("/jobs", url.Values{"shape": {"dome"}, "units": {"in"}})
	assert.Equal(t, http.StatusBadRequest, answer.StatusCode)
}

func TestAnExportedJobComesBackTheSame(t *testing.T) {
	s := newSite(t)
	answer, document := s.get("/jobs/1/job.json")
	assert.Contains(t, answer.Header.Get("Content-Disposition"), ".json")
	answer, _ = s.upload([]byte(document))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	assert.Equal(t, "/jobs/2", answer.Header.Get("Location"))
	_, again := s.get("/jobs/2/job.json")
	assert.Equal(t, document, again)
}

func TestAFaultyImportIsRefusedWithEveryFault(t *testing.T) {
	s := newSite(t)
	answer, page := s.upload([]byte(`{"format": "coursewright-job/1", "units": "ell", "colour": "blue"}`))
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, "colour")
	answer, _ = s.upload([]byte(`not a job`))
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
}

func TestADeletedJobCanBeBroughtBack(t *testing.T) {
	s := newSite(t)
	answer, _ := s.post("/jobs/1/delete", nil)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, page := s.get(answer.Header.Get("Location"))
	assert.Contains(t, page, "Bring it back")
	answer, _ = s.get("/jobs/1")
	assert.Equal(t, http.StatusGone, answer.StatusCode)
	answer, _ = s.post("/jobs/1/restore", nil)
	assert.Equal(t, "/jobs/1", answer.Header.Get("Location"))
	answer, _ = s.get("/jobs/1")
	assert.Equal(t, http.StatusOK, answer.StatusCode)
}

func TestMissingJobsAreMissing(t *testing.T) {
	s := newSite(t)
	for _, path := range []string{"/jobs/77", "/jobs/0", "/jobs/x", "/jobs/1/nowhere", "/elsewhere"} {
		answer, page := s.get(path)
		assert.Equal(t, http.StatusNotFound, answer.StatusCode, path)
		assert.Contains(t, page, "Back to the jobs")
	}
}

func TestATitleOfMarkupIsOnlyText(t *testing.T) {
	s := newSite(t)
	posted := s.bench()
	posted.Set("title", `<script>alert(1)</script>"'`)
	posted.Set("walls[1].name", `"><img src=x>`)
	answer, page := s.post("/jobs/1", posted, "X-Bench", "live")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.NotContains(t, page, "<script>alert")
	assert.NotContains(t, page, "<img")
}

func TestWhatCanBeTakenAway(t *testing.T) {
	s := newSite(t)
	for path, begins := range map[string]string{"plan.json": "{", "cuts.csv": "\ufeff", "takeoff.csv": "\ufeff", "sheets.pdf": "%PDF-", "job.json": "{"} {
		answer, body := s.get("/jobs/1/" + path)
		assert.Equal(t, http.StatusOK, answer.StatusCode, path)
		assert.True(t, strings.HasPrefix(body, begins), "%s begins with %.20q", path, body)
		assert.Contains(t, answer.Header.Get("Content-Disposition"), "heron-street--upstairs-bath")
	}
	answer, _ := s.get("/jobs/1/sheets.pdf?paper=papyrus")
	assert.Equal(t, http.StatusBadRequest, answer.StatusCode)
}
