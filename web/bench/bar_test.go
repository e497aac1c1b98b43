package bench_test

import (
	"context"
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"

	"coursewright/web/trial"
)

// Neither the name of the job nor of what is undone nor of the choice is cut short in the bar: on a phone and a tablet
// the first two had been, and the third beside the pages.
func TestNamesInTheBarAreNotCut(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("walls[1].width", "59 3/4")
	s.Post("/jobs/1", posted)
	ctx := trial.Browse(t)
	uncut(t, ctx, s, 1440, 768, 390, 360)
	posted = s.Bench()
	posted.Set("title", "Grandmother's upstairs bath with the sloped ceiling")
	posted.Set("walls[1].width", "59 7/8")
	s.Post("/jobs/1", posted)
	s.Post("/jobs/1/choices", s.With("of", "kiln white", "do", "duplicate", "name", "stack bond and a wider joint"))
	s.Post("/jobs/1/choices", s.With("of", "stack bond and a wider joint", "do", "choose"))
	uncut(t, ctx, s, 1440, 768) // one that was longer left no room for the choice
}

func uncut(t *testing.T, ctx context.Context, s trial.Site, widths ...int64) {
	t.Helper()
	for _, wide := range widths {
		trial.Steps(t, ctx, chromedp.EmulateViewport(wide, 844), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"))
		cut := trial.See[[]string](t, ctx, `["jobtitle", "which", "undo"].map((id) => document.getElementById(id))
			.filter((e) => e.scrollWidth > e.clientWidth + 1 || e.scrollHeight > e.clientHeight + 2).map((e) => e.textContent)`)
		assert.Empty(t, cut, fmt.Sprintf("at %d", wide))
	}
}
