package choices_test

import (
	"net/http"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/page"
	"coursewright/web/trial"
)

// least is the size in pixels of the smallest text in the drawings of a page, as it is seen.
const least = `Math.min(...[...document.querySelectorAll(".option .drawing > svg")].flatMap((s) => [...s.querySelectorAll("text")].map((t) =>
	parseFloat(getComputedStyle(t).fontSize) * s.getBoundingClientRect().width / s.viewBox.baseVal.width)))`

// A column that has no room for all walls shows one of every choice, its texts as large as on the bench; all walls
// scroll in their frame. The finish, which has no sizes, shows all of them at once.
func TestChoicesInNarrowColumnsCanBeRead(t *testing.T) {
	s := trial.New(t)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "kiln white", "name", "second"))
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "kiln white", "name", "third"))
	ctx := trial.Browse(t)
	for _, width := range []int64{1440, 768, 390, 320} {
		for path, shown := range map[string]string{"": "B back", "?wall=1": "L left", "?wall=all": "All walls", "?look=finish": "All walls"} {
			if path == "" && width == 768 {
				shown = "All walls" // two columns of one, wide enough
			}
			trial.Steps(t, ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate(s.URL+"/jobs/1/choices"+path))
			trial.Await(t, ctx, `(({clientWidth, dataset}) => Math.abs(Math.max(clientWidth, 280) - dataset.wide) < 12)(document.querySelector(".option .drawing"))`)
			trial.Await(t, ctx, `(document.querySelector("#fronts [aria-current]").getAttribute("aria-label") ?? "All walls") === `+trial.Quote(shown))
			assert.GreaterOrEqual(t, trial.See[float64](t, ctx, least), 10.99, "%s at %d", path, width)
			assert.LessOrEqual(t, trial.See[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`), 0.0, "%s at %d", path, width)
			over := trial.See[float64](t, ctx, `(({scrollWidth, clientWidth}) => scrollWidth - clientWidth)(document.querySelector(".option .drawing"))`)
			if shown == "All walls" && width == 390 && path == "?wall=all" {
				assert.Positive(t, over, "all walls scroll in their frame")
			} else if shown != "All walls" && width != 320 || path == "?look=finish" && width != 320 {
				assert.Zero(t, over, "%s at %d", path, width)
			}
		}
	}
}

// On a desk two choices show all their walls whole, where little is missing a little smaller.
func TestTwoChoicesAreInSightAsAWhole(t *testing.T) {
	s := trial.New(t)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "kiln white", "name", "second"))
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1/choices"))
	trial.Await(t, ctx, `(({clientWidth, dataset}) => Math.abs(clientWidth - dataset.wide) < 12)(document.querySelector(".option .drawing"))`)
	assert.Zero(t, trial.See[float64](t, ctx, `(({scrollWidth, clientWidth}) => scrollWidth - clientWidth)(document.querySelector(".option .drawing"))`))
	assert.GreaterOrEqual(t, trial.See[float64](t, ctx, least), 9.99)
	assert.Equal(t, "All walls", trial.See[string](t, ctx, `document.querySelector("#fronts [aria-current]").textContent.trim()`))
}

// Without a script too each wall can be looked at by itself, by links that keep the look, and what a button does keeps it as well.
func TestOneWallOfEveryChoice(t *testing.T) {
	s := trial.New(t)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "kiln white", "name", "second"))
	_, all := s.Get("/jobs/1/choices?look=finish")
	assert.Equal(t, 2, strings.Count(all, `aria-label="The wrap of `))
	assert.Contains(t, all, `href="/jobs/1/choices?look=finish&amp;wall=2"`)
	_, back := s.Get("/jobs/1/choices?look=finish&wall=2")
	assert.Equal(t, 2, strings.Count(back, `aria-label="Wall back of `))
	assert.Contains(t, back, `href="/jobs/1/choices?wall=2"`, "the cuts of the same wall")
	answer, body := s.Post("/jobs/1/choices?wall=2", s.With("do", "rename", "of", "second", "name", "large"))
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode, body)
	assert.Equal(t, "/jobs/1/choices?wall=2", answer.Header.Get("Location"))
	for _, nonsense := range []string{"0", "9", "-1", "x", "1e9"} {
		_, body = s.Get("/jobs/1/choices?wall=" + nonsense)
		assert.Equal(t, 2, strings.Count(body, `aria-label="The wrap of `), nonsense)
		assert.NotContains(t, body, "wall="+nonsense)
	}
	r, err := http.NewRequestWithContext(t.Context(), http.MethodGet, s.URL+"/jobs/1/choices", nil)
	require.NoError(t, err)
	r.AddCookie(&http.Cookie{Name: page.ColumnFrame, Value: "334"})
	_, narrow := s.Do(r)
	assert.Equal(t, 2, strings.Count(narrow, `aria-label="Wall back of `), "a phone begins with the widest wall")
	assert.NotContains(t, narrow, "data-finding", "no numbers of findings, which are in no list here")
}
