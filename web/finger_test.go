package web_test

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"

	"coursewright/static"
	"coursewright/web/trial"
)

// narrow are what can be pressed, beside a drawing, and is lower than a finger needs: 42 pixels within
// a frame of one. The name of the choice is left out: the pages beside it lead there too.
const narrow = `[...document.querySelectorAll("a[href], button, input:not([type=hidden]), select, textarea, summary")]
	.filter((e) => e.checkVisibility({ visibilityProperty: true }) && !e.matches(".skip, .default, .which, svg *"))
	.map((e) => [e, (e.matches("[type=checkbox], [type=radio]") && e.closest("label") || e).getBoundingClientRect()])
	.filter(([, r]) => r.width > 1 && (r.height < 41.5 || r.width < 26)).map(([e, r]) => e.textContent.trim() + " " + r.width + " by " + r.height)`

// A finger finds room on everything that can be pressed, and no page is wider than the glass.
func TestAFingerHasRoom(t *testing.T) {
	s, ctx := trial.Solving(t, static.Demo, trial.Once()), trial.Browse(t)
	for _, wide := range []int64{768, 390} {
		trial.Steps(t, ctx, chromedp.EmulateViewport(wide, 844, chromedp.EmulateTouch))
		for _, path := range []string{"/", "/jobs/1", "/jobs/1?all=1", "/jobs/1/work", "/jobs/1/choices", "/jobs/1/sheets", "/jobs/1/history", "/jobs/1/bathroom"} {
			trial.Steps(t, ctx, chromedp.Navigate(s.URL+path), chromedp.WaitReady("main"))
			assert.Empty(t, trial.See[[]string](t, ctx, narrow), "%s at %d", path, wide)
			assert.LessOrEqual(t, trial.See[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`), 0.0, "%s at %d", path, wide)
		}
	}
}
