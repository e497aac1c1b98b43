package bench_test

import (
	"coursewright/web/trial"

	"net/http"
	"regexp"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The number in a flag on the drawing is that of a finding in the list.
func TestEveryFlagHasItsFindingInTheList(t *testing.T) {
	s := trial.New(t)
	answer, page := s.Get("/jobs/1?wall=2")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	flags := regexp.MustCompile(`data-finding="(\d+)"`).FindAllStringSubmatch(page, -1)
	require.NotEmpty(t, flags)
	for _, f := range flags {
		assert.Regexp(t, `id="finding-`+f[1]+`"><details><summary><span class="flag"><span class="hidden">Flag</span> `+f[1]+`</span>`, page)
	}
}

func TestAFlagOpensItsFinding(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1?wall=2"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	number := trial.See[string](t, ctx, `document.querySelector("#drawing circle[data-finding]").dataset.finding`)
	trial.Steps(t, ctx, chromedp.Click("#drawing text[data-finding]"))
	trial.Await(t, ctx, `document.activeElement.closest("#finding-`+number+`") !== null`)
	assert.True(t, trial.See[bool](t, ctx, `document.activeElement.closest("details").open`))
}

// A pinned start is not called the best one: other starts may be better.
func TestAPinnedStartIsNotCalledTheBest(t *testing.T) {
	s := trial.New(t)
	best := `value="pin left [^"]*"[^>]*>best<`
	_, page := s.Get("/jobs/1/told")
	require.Regexp(t, best, page)
	posted := s.Bench()
	posted.Set("do", "pin left joint=17 5/8")
	answer, _ := s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, page = s.Get("/jobs/1/told?wall=1")
	assert.NotRegexp(t, best, page)
	assert.NotContains(t, page, ">best</text>")
}
