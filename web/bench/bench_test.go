package bench_test

import (
	"coursewright/web/trial"

	"net/http"
	"net/url"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/form"
)

func TestTheFormCarriesTheWholeJob(t *testing.T) {
	s := trial.New(t)
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	posted := s.Bench()
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
	s := trial.New(t)
	before, _ := s.Stored()
	answer, _ := s.Post("/jobs/1?wall=2", s.Bench())
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
	assert.Equal(t, "/jobs/1?wall=2", answer.Header.Get("Location"), "the wall stays in front")
	after, _ := s.Stored()
	assert.Equal(t, before.Revision, after.Revision)
}

func TestAnEditIsSavedAsTyped(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("walls[1].width", "4'  11½")
	answer, _ := s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.Stored()
	assert.Equal(t, "4'  11½", job.Walls[1].Width)
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, `4&#39;-11 1/2&#34; = 1511.3 mm`)
}

func TestALiveEditIsAnsweredWithTheNewPage(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("joint", "3/16")
	answer, page := s.Post("/jobs/1", posted, "X-Bench", "live")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, ">Saved</p>")
	kept, job := s.Stored()
	assert.Equal(t, "3/16", job.Joint.Plain)
	assert.NotEqual(t, posted.Get("revision"), trial.Fields(t, page).Get("revision"))
	assert.True(t, kept.CanUndo)
}

func TestFaultsAreListedAtTheTopAndAtTheField(t *testing.T) {
	s := trial.New(t)
	before, _ := s.Stored()
	posted := s.Bench()
	posted.Set("walls[1].width", "sixty")
	posted.Set("joint", "1/0")
	answer, page := s.Post("/jobs/1", posted)
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, `href="#walls[1].width"`)
	assert.Contains(t, page, `href="#joint"`)
	assert.Equal(t, "sixty", trial.Fields(t, page).Get("walls[1].width"), "what was typed stays")
	assert.Contains(t, page, "<svg", "the last good drawing stays")
	after, _ := s.Stored()
	assert.Equal(t, before, after)
}

func TestUndoAndRedo(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("joint", "3/16")
	s.Post("/jobs/1", posted)
	undo := url.Values{"revision": {s.Bench().Get("revision")}}
	answer, _ := s.Post("/jobs/1/undo", undo)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.Stored()
	assert.Equal(t, "1/8", job.Joint.Plain)
	s.Post("/jobs/1/redo", url.Values{"revision": {s.Bench().Get("revision")}})
	_, job = s.Stored()
	assert.Equal(t, "3/16", job.Joint.Plain)
	answer, _ = s.Post("/jobs/1/undo", nil)
	assert.Equal(t, http.StatusBadRequest, answer.StatusCode, "an undo says what it undoes")
}

func TestButtonsEditWithoutAScript(t *testing.T) {
	file, err := os.ReadFile("../../testdata/jobs/one-wall.json")
	require.NoError(t, err)
	s := trial.Of(t, file)
	for _, do := range []string{"add walls", "add walls[1].openings pipe", "add walls[0].base[0].readings",
		"add walls[1].left.lean", "add walls[1].base", "add walls[1].base", "remove walls[1]"} {
		posted := s.Bench()
		posted.Set("do", do)
		answer, page := s.Post("/jobs/1", posted)
		assert.Equal(t, http.StatusSeeOther, answer.StatusCode, "%s: %s", do, page)
	}
	posted := s.Bench()
	posted.Set("do", "paint it")
	answer, _ := s.Post("/jobs/1", posted)
	assert.Equal(t, http.StatusBadRequest, answer.StatusCode)
}

func TestATitleOfMarkupIsOnlyText(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("title", `<script>alert(1)</script>"'`)
	posted.Set("walls[1].name", `"><img src=x>`)
	answer, page := s.Post("/jobs/1", posted, "X-Bench", "live")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.NotContains(t, page, "<script>alert")
	assert.NotContains(t, page, "<img")
}
