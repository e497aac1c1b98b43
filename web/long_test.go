package web_test

import (
	"coursewright/web/trial"

	"net/http"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The longest title and wall names a job may have make no page wider than a
// phone.
func TestLongNamesStayOnThePage(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("title", strings.Repeat("W", 200))
	posted.Set("walls[1].name", strings.Repeat("w", 80))
	answer, page := s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	ctx := trial.Browse(t)
	for _, path := range []string{"/", "/jobs/1", "/jobs/1?wall=2"} {
		for _, width := range []int64{768, 390} {
			trial.Steps(t, ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate(s.URL+path), chromedp.WaitVisible("#main"))
			widest := trial.See[float64](t, ctx, `Math.max(document.documentElement.scrollWidth, ...[...document.querySelectorAll("#bar h1, .job")].map((e) => e.getBoundingClientRect().right))`)
			assert.LessOrEqual(t, widest, float64(width), "%s at %d", path, width)
			over := trial.See[[]string](t, ctx, `[...document.querySelectorAll("main *")].filter((e) => !e.closest("svg, .scroll, .curve, .fronts, .drawing, .hidden, select, .line") && e.getBoundingClientRect().right > innerWidth + 1).map((e) => e.tagName + "." + e.className + " " + e.textContent.slice(0, 40)).slice(0, 5)`)
			assert.Empty(t, over, "%s at %d", path, width)
		}
	}
}
