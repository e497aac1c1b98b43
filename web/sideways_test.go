package web_test

import (
	"net/http"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

// What can be moved sideways fades where it goes on, and nothing else does. The name of a choice is as long as it is.
func TestWhatGoesOnSidewaysFades(t *testing.T) {
	s := trial.New(t)
	answer, page := s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "kiln white", "name", "Sage_green_zellige_with_charcoal_grout_and_trim_50x"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	ctx := trial.Browse(t)
	const frames = `[...document.querySelectorAll("#main *, .bar .nav")].filter((e) => !(e instanceof SVGElement) && e.clientWidth && /auto|scroll/.test(getComputedStyle(e).overflowX))`
	for _, at := range []struct {
		path string
		wide int64
		goes bool // on, as far as the test knows
	}{{"/", 340, false}, {"/jobs/1", 768, false}, {"/jobs/1", 340, true}, {"/jobs/1/work", 340, true}, {"/jobs/1/choices", 340, true}} {
		trial.Steps(t, ctx, chromedp.EmulateViewport(at.wide, 1000), chromedp.Navigate(s.URL+at.path), chromedp.WaitVisible("#main"))
		trial.See[bool](t, ctx, `(() => { for (const d of document.querySelectorAll("details")) d.open = true; return true })()`)
		assert.Equal(t, at.goes, trial.See[bool](t, ctx, frames+`.some((e) => e.scrollWidth > e.clientWidth)`), "%s at %d", at.path, at.wide)
		trial.Await(t, ctx, frames+`.every((e) => (e.scrollWidth > e.clientWidth) === (getComputedStyle(e).maskImage !== "none"))`)
		assert.LessOrEqual(t, trial.See[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`), 0.0, "%s at %d is wider than its window", at.path, at.wide)
	}
}
