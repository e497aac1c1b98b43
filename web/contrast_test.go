package web_test

import (
	"context"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

// Every text is read against what lies behind it, on light ground, on dark and in forced colours, on every page and in the
// drawings of all examples: 4.5 to 1, large text and the edges of boxes, rings and lines 3 to 1 (WCAG 2.2, SC 1.4.3 and 1.4.11).
func TestNothingIsFaint(t *testing.T) {
	if testing.Short() {
		t.Skip("needs a browser")
	}
	faint, err := os.ReadFile("testdata/contrast.js")
	require.NoError(t, err)
	s := trial.New(t)
	paths := strings.Fields("/ /jobs/1 /jobs/1?all=1 /jobs/1?wall=2&piece=B-01-01 /jobs/1?look=finish /jobs/1/widths /jobs/1/pieces /jobs/1/work?cut=C1 " +
		"/jobs/1/choices /jobs/1/sheets /jobs/1/history /jobs/1/bathroom /jobs/1/bathroom?wall=2&step=1 /devices /nowhere")
	names, err := filepath.Glob("../testdata/jobs/*.json")
	require.NoError(t, err)
	for _, name := range names {
		file, err := os.ReadFile(name)
		require.NoError(t, err)
		answer, page := s.Upload(file)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		paths = append(paths, answer.Header.Get("Location"))
	}
	for _, shape := range []string{"trimmed", "tub"} { // cut trim, and a room of guesses
		answer, page := s.Post("/jobs", url.Values{"shape": {shape}, "units": {"in"}, "title": {"A new " + shape}})
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		paths = append(paths, answer.Header.Get("Location"))
	}
	ctx, cancel := context.WithTimeout(t.Context(), 20*trial.Patience)
	t.Cleanup(cancel)
	ctx = trial.Chromium(t, ctx)
	trial.Steps(t, ctx, trial.Focused(), chromedp.EmulateViewport(1440, 9000))
	look := func(page string) {
		trial.See[bool](t, ctx, `(() => { for (const d of document.querySelectorAll("details")) d.open = true; return true })()`)
		for name, colours := range map[string]chromedp.Action[chromedp.Void]{"light": trial.Colours("light"), "dark": trial.Colours("dark"), "forced": trial.Forced("dark")} {
			trial.Steps(t, ctx, colours)
			assert.Empty(t, trial.See[[]string](t, ctx, string(faint)), "%s, %s", page, name)
		}
	}
	for _, path := range paths {
		trial.Steps(t, ctx, chromedp.Navigate(s.URL+path), chromedp.WaitVisible("#main"))
		look(path)
	}
	post := func(joint, gives string) {
		trial.See[bool](t, ctx, `(() => { document.getElementById("joint").value = "`+joint+`"; HTMLFormElement.prototype.submit.call(document.getElementById("survey")); return true })()`)
		trial.Steps(t, ctx, chromedp.WaitVisible(gives))
		look("what is refused and asked, " + gives)
	}
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1?all=1"), chromedp.WaitVisible("#main"))
	post("much", ".faults")
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1?all=1"), chromedp.WaitVisible("#main"))
	answer, page := s.Post("/jobs/1", s.With("joint", "3/16"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	post("3/32", ".odds")
}
