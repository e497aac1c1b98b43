package bench_test

import (
	"net/http"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/trial"
)

var wallHash = regexp.MustCompile(`id="(drawing-wall-\d)"[^>]* data-hash="([0-9a-f]+)"`)

// settled is the demo with everything pinned but the niche, so that to move it changes one wall.
func settled(t *testing.T) []byte {
	t.Helper()
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	job.Pins.Course.Line = "-39"
	job.Pins.Walls = map[string]survey.WallPin{}
	for name, edge := range map[string]string{"left": "22 5/8", "back": "27", "right": "12 3/4"} {
		job.Pins.Walls[name] = survey.WallPin{Edge: edge, Marks: map[string]string{"head": "36"}}
	}
	document, err := survey.Write(job)
	require.NoError(t, err)
	return document
}

// Of the walls of a drawing only those travel that the script does not have.
func TestOnlyChangedWallsTravel(t *testing.T) {
	s := trial.Of(t, settled(t))
	_, page := s.Get("/jobs/1")
	var have []string
	for _, found := range wallHash.FindAllStringSubmatch(page, -1) {
		have = append(have, found[1]+"="+found[2])
	}
	require.Len(t, have, 3)
	look := func(headers ...string) string {
		form := s.Bench()
		form.Set("do", "place 2 niche shelf left=34")
		answer, text := s.Post("/jobs/1/look", form, headers...)
		require.Equal(t, http.StatusOK, answer.StatusCode, text)
		return text
	}
	all, some := look(), look("X-Have", strings.Join(have, " "))
	assert.Equal(t, 0, strings.Count(all, "data-held"))
	assert.Equal(t, 2, strings.Count(some, "data-held"), "the end walls stay as they are")
	assert.Less(t, len(some), len(all)*3/4, "%d of %d bytes", len(some), len(all))
	assert.Contains(t, some, `data-handle="niche shelf left"`)
	t.Logf("a look at the niche: %d bytes, %d with the walls that stay", len(some), len(all))
}

// What is put together of walls that stayed and walls that came is what a whole page would show.
func TestADrawingPutTogetherIsTheWholeOne(t *testing.T) {
	s := trial.Of(t, settled(t))
	ctx := trial.Browse(t)
	openAt(t, ctx, s, "/jobs/1")
	// All that scripts put into it is taken out again: pieces of whole tiles, marks of focus and choice.
	const bare = `(() => { const p = document.getElementById("paper").cloneNode(true);
		for (const e of p.querySelectorAll(".tile, .rings, .hover")) e.remove();
		for (const e of p.querySelectorAll("*")) for (const a of ["tabindex", "aria-selected", "data-runs", "role", "aria-label", "aria-valuetext", "data-stood"]) e.removeAttribute(a);
		for (const e of p.querySelectorAll(".taken, .small")) e.classList.remove("taken", "small");
		return p.innerHTML.replace(/ class=""/g, "").replace(/>\s+</g, "><") })()`
	kept := trial.See[string](t, ctx, bare)
	x, y := grasp(t, ctx, "niche shelf left")
	moveTo(t, ctx, x+12, y)
	trial.Await(t, ctx, `document.querySelector('[data-handle="niche shelf left"]').classList.contains("pinned")`)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	release(t, ctx, x+12, y)
	assert.Equal(t, kept, trial.See[string](t, ctx, bare), "given up after a look, all of it is as it was")
	x, y = grasp(t, ctx, "niche shelf left")
	moveTo(t, ctx, x+12, y)
	trial.Await(t, ctx, `document.querySelector('[data-handle="niche shelf left"]').classList.contains("pinned")`)
	release(t, ctx, x+12, y)
	trial.Await(t, ctx, status+` === "Saved"`)
	together := trial.See[string](t, ctx, bare)
	assert.NotEqual(t, kept, together)
	trial.Steps(t, ctx, chromedp.Reload(), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	assert.Equal(t, strings.Split(trial.See[string](t, ctx, bare), "><"), strings.Split(together, "><"))
	assert.Zero(t, trial.See[int](t, ctx, `document.querySelectorAll("[data-held]").length`))
}
