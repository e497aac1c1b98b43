package web_test

import (
	"context"
	"fmt"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

// TestPictures takes a picture of every page at three widths into the folder
// named by SHOTS, for people to look at, and holds that no page is wider than
// its window.
func TestPictures(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	for _, page := range []struct{ name, path string }{{"jobs", "/"}, {"bench", "/jobs/1"}, {"wall", "/jobs/1?wall=2"}, {"work", "/jobs/1/work"}, {"choices", "/jobs/1/choices"}, {"bathroom", "/jobs/1/bathroom"}} {
		for name, width := range map[string]int64{"1440": 1440, "768": 768, "390": 390, "320": 320} {
			trial.Steps(t, ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate(s.URL+page.path), chromedp.WaitVisible("#main"))
			over := trial.See[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`)
			assert.LessOrEqual(t, over, 0.0, "%s at %s", page.name, name)
			if dir := os.Getenv("SHOTS"); dir != "" {
				shot, err := chromedp.Run(ctx, chromedp.FullScreenshot(100))
				require.NoError(t, err)
				require.NoError(t, os.WriteFile(filepath.Join(dir, page.name+"-"+name+".png"), shot, 0o600))
			}
		}
	}
}

// In forced colours nothing is told by a colour that the page chose: every text of a drawing has the colour of
// text, also that of names on a plate, and of the pages, walls and looks the one shown is marked, alone.
func TestForcedColoursHideNothing(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, trial.Forced("light"), chromedp.EmulateViewport(1440, 900))
	for _, path := range []string{"/jobs/1", "/jobs/1?wall=1", "/jobs/1?wall=2"} {
		trial.Steps(t, ctx, chromedp.Navigate(s.URL+path), chromedp.WaitVisible("#drawing svg"))
		assert.Empty(t, trial.See[[]string](t, ctx, `[...document.querySelectorAll(".drawing svg text")].filter((e) => getComputedStyle(e).fill !== getComputedStyle(document.body).color).map((e) => e.textContent)`), path)
		marked := `[...document.querySelectorAll(%q)].filter((e) => (%s)(getComputedStyle(e))).map((e) => e.textContent.trim().replace(/\s+/g, " "))`
		assert.Equal(t, []string{"Bench"}, trial.See[[]string](t, ctx, fmt.Sprintf(marked, ".bar .nav a", `(c) => c.borderBottomColor !== getComputedStyle(document.body).backgroundColor`)), path)
		assert.Len(t, trial.See[[]string](t, ctx, fmt.Sprintf(marked, "#main .seg:has(a[href*=look]) a, .fronts a", `(c) => c.outlineStyle !== "none"`)), 2, path)
		assert.Equal(t, trial.See[string](t, ctx, `getComputedStyle(document.body).backgroundColor`), trial.See[string](t, ctx, `getComputedStyle(document.querySelector(".strip-face")).fill`), "the first course, %s", path)
	}
	for _, path := range []string{"/jobs/1", "/jobs/1/bathroom", "/jobs/1/bathroom?wall=2&step=1"} {
		trial.Steps(t, ctx, chromedp.Navigate(s.URL+path), chromedp.WaitReady("main"))
		assert.NotRegexp(t, `(?i)\b(red|blue|black)\b`, trial.See[string](t, ctx, `document.body.innerText`), "%s names a colour that is not there", path)
	}
}

// On dark ground the colours that the page has for that give way too: a whole tile is one of the ground's colour, outlined.
func TestForcedColoursOnDarkGroundAreThePersons(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	const others = `[...document.querySelectorAll(".drawing .outline, .drawing .joints, .drawing .whole:not([stroke-dasharray])")].filter((e) => {
		const c = getComputedStyle(e), body = getComputedStyle(document.body), ours = ["none", body.color, body.backgroundColor];
		return !ours.includes(c.fill) || !ours.includes(c.stroke) || c.fill === c.stroke }).map((e) => e.getAttribute("class"))`
	for _, path := range []string{"/jobs/1", "/jobs/1?wall=1", "/jobs/1/work", "/jobs/1/bathroom"} {
		trial.Steps(t, ctx, trial.Forced("dark"), chromedp.EmulateViewport(390, 844), chromedp.Navigate(s.URL+path), chromedp.WaitVisible(".drawing .outline"))
		assert.Empty(t, trial.See[[]string](t, ctx, others), path)
		assert.Equal(t, trial.See[string](t, ctx, `getComputedStyle(document.body).backgroundColor`), trial.See[string](t, ctx, `getComputedStyle(document.querySelector(".drawing")).backgroundColor`), path)
	}
}

// TestAccessibility runs axe-core over every page at three widths. AXE names
// the file axe.min.js of its npm package, which the build installs.
func TestAccessibility(t *testing.T) {
	file := os.Getenv("AXE")
	if file == "" {
		t.Skip("AXE names no axe.min.js")
	}
	axe, err := os.ReadFile(file)
	require.NoError(t, err)
	wall, err := os.ReadFile("../testdata/jobs/one-wall.json")
	require.NoError(t, err)
	s := trial.Of(t, wall)
	parts := []string{"trimmed", "niche", "banded", "strip", "half wall", "herringbone", "corner bench"}
	for _, shape := range append([]string{"tub", "corner"}, parts...) { // nothing of these is measured
		answer, page := s.Post("/jobs", url.Values{"shape": {shape}, "units": {"in"}, "title": {"A new " + shape}})
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 8*trial.Patience)
	t.Cleanup(cancel)
	ctx = trial.Chromium(t, ctx)
	const found = `axe.run().then((r) => r.violations.map((v) => v.id + ": " + v.nodes.map((n) => n.target + " " + n.failureSummary).slice(0, 3).join("; ")))`
	for _, path := range []string{
		"/", "/jobs/1", "/jobs/1?wall=1&piece=B-01-01", "/jobs/1?look=finish", "/jobs/1?all=1", "/jobs/2", "/jobs/3", "/jobs/1/widths", "/jobs/1/pieces", "/jobs/1/work?cut=C1",
		"/jobs/1/choices", "/jobs/1/sheets", "/jobs/1/history", "/jobs/1/bathroom", "/devices", "/nowhere",
	} {
		for _, colours := range []string{"light", "dark"} {
			for _, width := range []int64{1440, 768, 390, 320} {
				trial.Steps(t, ctx, trial.Colours(colours), chromedp.EmulateViewport(width, 900), chromedp.Navigate(s.URL+path), chromedp.WaitVisible("#main"))
				trial.See[bool](t, ctx, `(() => { for (const d of document.querySelectorAll("details")) d.open = true; return true })()`)
				assert.LessOrEqual(t, trial.See[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`), 0.0, "%s at %d is wider than its window", path, width)
				_, err := chromedp.Run(ctx, chromedp.Evaluate[bool](string(axe)+";true"))
				require.NoError(t, err)
				bad, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](found, chromedp.EvalAwaitPromise))
				require.NoError(t, err)
				assert.Empty(t, bad, "%s at %d, %s", path, width, colours)
			}
		}
	}
	for i, shape := range parts { // what their forms and drawings add, once
		trial.Steps(t, ctx, trial.Colours("light"), chromedp.EmulateViewport(1440, 900), chromedp.Navigate(fmt.Sprintf("%s/jobs/%d", s.URL, 4+i)), chromedp.WaitVisible("#main"))
		trial.See[bool](t, ctx, `(() => { for (const d of document.querySelectorAll("details")) d.open = true; return true })()`)
		_, err := chromedp.Run(ctx, chromedp.Evaluate[bool](string(axe)+";true"))
		require.NoError(t, err)
		bad, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](found, chromedp.EvalAwaitPromise))
		require.NoError(t, err)
		assert.Empty(t, bad, shape)
	}
}
