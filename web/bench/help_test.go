package bench_test

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"testing"

	"coursewright/layout"
	"coursewright/web/trial"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatWouldHelpIsWorkedOutWhenItIsAskedFor(t *testing.T) {
	s := trial.Of(t, trial.File(t, "one-wall.json"))
	before, _ := s.Stored()
	answer, page := s.Get("/jobs/1/help")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, "fewer, because more off-cuts are used")
	after, _ := s.Stored()
	assert.Equal(t, before, after)
	_, bench := s.Get("/jobs/1")
	assert.Contains(t, bench, `data-load="/jobs/1/help"`)
}

// A change that would help is made by its button: it is saved as typed, the bench follows, and undo takes it back. A field that no
// job has, and a form that says nothing, are refused and save nothing.
func TestWhatHelpsIsDoneByItsButton(t *testing.T) {
	s := trial.Of(t, trial.File(t, "hexagon.json"))
	_, shown := s.Get("/jobs/1/help")
	found := regexp.MustCompile(`(?s)<form method="post" action="/jobs/1/help">(.*?)</form>`).FindStringSubmatch(shown)
	require.NotNil(t, found, shown)
	form := url.Values{}
	for _, m := range regexp.MustCompile(`name="([a-z]+)" value="([^"]*)"`).FindAllStringSubmatch(found[1], -1) {
		form.Add(m[1], html.UnescapeString(m[2]))
	}
	require.NotEmpty(t, form["path"])
	_, before := s.Stored()
	want, err := layout.Take(before, []layout.Use{{Path: form.Get("path"), Text: form.Get("text")}})
	require.NoError(t, err)
	for _, bad := range []url.Values{{"revision": form["revision"]}, {"revision": form["revision"], "path": {"walls[0].colour"}, "text": {"x"}},
		{"revision": form["revision"], "path": {"joint"}, "text": {"a lot"}}} {
		answer, _ := s.Post("/jobs/1/help", bad)
		assert.Equal(t, http.StatusBadRequest, answer.StatusCode, bad)
	}
	_, same := s.Stored()
	require.Equal(t, before, same)
	answer, _ := s.Post("/jobs/1/help", form)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	assert.Equal(t, "/jobs/1", answer.Header.Get("Location"))
	_, after := s.Stored()
	if len(form["path"]) == 1 {
		assert.Equal(t, want, after)
	}
	assert.NotEqual(t, before, after)
}
