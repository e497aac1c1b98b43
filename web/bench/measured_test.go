package bench_test

import (
	"coursewright/web/trial"

	"context"
	"fmt"
	"net/http"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/static"
)

// openPart opens a section of the survey.
func openPart(t *testing.T, ctx context.Context, id string) {
	t.Helper()
	trial.See[bool](t, ctx, `(() => { const d = document.getElementById(`+trial.Quote(id)+`); d.open = true; d.scrollIntoView(); return true })()`)
}

// press clicks the button that asks for something beginning so.
func press(t *testing.T, ctx context.Context, do string) {
	t.Helper()
	trial.Await(t, ctx, `document.querySelector('button[name=do][value^=`+fmt.Sprintf("%q", do)+`]') !== null`)
	trial.See[bool](t, ctx, `(() => { document.querySelector('button[name=do][value^=`+fmt.Sprintf("%q", do)+`]').click(); return true })()`)
}

// saying is a script that reads what an element says.
func saying(id string) string { return `document.getElementById(` + trial.Quote(id) + `).innerText` }

// A row of ten with nine joints of 1/8 in, 60 1/8 in long, makes a tile 5.9 in
// wide; singles that differ by 1/16 in ask for a joint of 3/16 in (ANSI A108.02
// 4.3.8, quoted in TileLetter).
func TestARowOfRealTilesIsUsedWithOneTap(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1?all=1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	const drawn = `[...document.querySelectorAll("#drawing .wall")].map((w) => w.dataset.hash).join(" ")`
	trial.Await(t, ctx, `Math.abs(document.querySelector("#drawing svg").getBoundingClientRect().width - document.getElementById("drawing").clientWidth) < 12`)
	openPart(t, ctx, "section-sample")
	before := trial.See[string](t, ctx, drawn)

	trial.Type(t, ctx, "tile.sample.across.length", "60 1/8")
	trial.Await(t, ctx, saying("tile.sample-said")+`.includes('5 29/32" · 149.9 mm')`)
	assert.Contains(t, trial.See[string](t, ctx, saying("tile.sample-said")), `6 1/32" · 153 mm`, "the pitch")
	trial.Type(t, ctx, "tile.sample.singles[0].width", "5 7/8")
	trial.Type(t, ctx, "tile.sample.singles[3].width", "5 15/16")
	trial.Await(t, ctx, saying("tile.sample-said")+`.includes('three times as much; yours is 1/8"')`)
	trial.Shot(t, ctx, "sample")
	assert.True(t, before == trial.See[string](t, ctx, drawn), "not used yet")

	press(t, ctx, "set tile.sample.use=true")
	trial.Await(t, ctx, `document.getElementById("line-sample").textContent.includes("in use")`)
	_, job := s.Stored()
	require.NotNil(t, job.Tile.Sample)
	assert.True(t, job.Tile.Sample.Use)
	assert.Equal(t, "5 7/8", job.Tile.Width, "the size typed is kept")
	assert.Equal(t, "5 15/16", job.Tile.Sample.Singles[3].Width)
	assert.False(t, before == trial.See[string](t, ctx, drawn), "set out anew")
	assert.Contains(t, trial.See[string](t, ctx, `document.body.innerText`), `The tiles vary by 1/16", so the joint should be at least three times that, 3/16"; it is 1/8".`)

	trial.See[bool](t, ctx, `(() => { document.getElementById("undo").click(); return true })()`)
	trial.Await(t, ctx, `document.getElementById("line-sample").textContent.includes("not used")`)
	assert.True(t, before == trial.See[string](t, ctx, drawn), "undone")
	assert.Equal(t, "60 1/8", trial.See[string](t, ctx, `document.getElementById("tile.sample.across.length").value`), "and nothing typed is lost")
}

func TestTheRestIsSetOutFromWhereTheFirstCoursesStand(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1?all=1"), chromedp.WaitVisible("#drawing svg"))
	assert.Zero(t, trial.See[int](t, ctx, `document.querySelectorAll("#drawing .piece.set").length`))
	openPart(t, ctx, "section-set")
	press(t, ctx, "stand walls[1]=")
	trial.Await(t, ctx, `document.querySelectorAll("#drawing .piece.set").length > 5`)
	planned := trial.See[string](t, ctx, `document.getElementById("walls[1].set.right").value`)
	require.NotEmpty(t, planned)
	_, job := s.Stored()
	require.NotNil(t, job.Walls[1].Set)

	// The right end stands 3/8 in over the left one: the line moves up by half.
	trial.Type(t, ctx, "walls[1].set.left", "-36")
	trial.Type(t, ctx, "walls[1].set.right", "-35 5/8")
	trial.Await(t, ctx, saying("walls[1].set-said")+`.includes('3/8" higher at the right end')`)
	trial.Await(t, ctx, `document.body.innerText.includes("stands 3/8\" higher at its right end than at its left")`)
	assert.Contains(t, trial.See[string](t, ctx, `document.getElementById("drawing").textContent`), "set already", "the legend says it")
	openPart(t, ctx, "section-set")
	trial.Shot(t, ctx, "as-set")

	trial.Type(t, ctx, "walls[1].set.right", "low")
	trial.Await(t, ctx, `document.querySelector(".faults a[href='#walls[1].set.right']") !== null`)
	assert.Equal(t, "low", trial.See[string](t, ctx, `document.getElementById("walls[1].set.right").value`))
	_, job = s.Stored()
	assert.Equal(t, "-35 5/8", job.Walls[1].Set.Right, "what does not read is not saved")

	trial.Type(t, ctx, "walls[1].set.right", "-36")
	trial.Await(t, ctx, `document.querySelector(".faults") === null`)
	count := trial.See[int](t, ctx, `document.querySelectorAll("#drawing .piece.set").length`)
	trial.Steps(t, ctx, chromedp.Reload(), chromedp.WaitVisible("#drawing svg"))
	openPart(t, ctx, "section-set")
	press(t, ctx, "stand walls[1]=")
	trial.Await(t, ctx, fmt.Sprintf(`document.querySelectorAll("#drawing .piece.set").length > %d`, count))
	press(t, ctx, "forget walls[1].set")
	trial.Await(t, ctx, `document.querySelectorAll("#drawing .piece.set").length === 0`)
	trial.Steps(t, ctx, chromedp.Click("#undo"))
	trial.Await(t, ctx, fmt.Sprintf(`document.querySelectorAll("#drawing .piece.set").length > %d`, count))
}

// TestMeasuredAndSetPartsAreAccessible runs axe-core on a job that has both; AXE
// names the file axe.min.js.
func TestMeasuredAndSetPartsAreAccessible(t *testing.T) {
	file := os.Getenv("AXE")
	if file == "" {
		t.Skip("AXE names no axe.min.js")
	}
	axe, err := os.ReadFile(file)
	require.NoError(t, err)
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	job.Tile.Sample = &survey.Sample{Use: true, Across: survey.Run{Length: "60 1/8"}, Singles: []survey.Single{{Width: "5 7/8"}, {Width: "5 15/16"}}}
	job.Walls[1].Set = &survey.AsSet{Course: "7", Left: "-36", Right: "-35 5/8", Start: survey.SetStart{Is: "left edge", At: "12 3/8"}}
	document, err := survey.Write(job)
	require.NoError(t, err)
	s := trial.Of(t, document)
	ctx := trial.Browse(t)
	for _, width := range []int64{1440, 768, 390} {
		trial.Steps(t, ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate(s.URL+"/jobs/1?all=1"), chromedp.WaitVisible("#drawing svg"))
		trial.See[bool](t, ctx, `(() => { for (const d of document.querySelectorAll("details")) d.open = true; return true })()`)
		_, err := chromedp.Run(ctx, chromedp.Evaluate[bool](string(axe)+";true"))
		require.NoError(t, err)
		bad, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](`axe.run(document.getElementById("survey")).then((r) => r.violations.map((v) => v.id + ": " + v.nodes.map((n) => n.target)))`, chromedp.EvalAwaitPromise))
		require.NoError(t, err)
		assert.Empty(t, bad, "at %d", width)
	}
}

// Without a script the buttons of both parts post and the page comes back.
func TestSampleAndAsSetWorkWithoutAScript(t *testing.T) {
	s := trial.New(t)
	_, page := s.Get("/jobs/1?all=1")
	filled := trial.Fields(t, page)
	filled.Set("tile.sample.up.length", "29 7/8")
	filled.Set("tile.sample.singles[9].height", "2 7/8")
	filled.Set("do", "set tile.sample.use=true")
	answer, _ := s.Post("/jobs/1?all=1", filled)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.Stored()
	assert.Equal(t, &survey.Sample{Use: true, Up: survey.Run{Length: "29 7/8"}, Singles: append(make([]survey.Single, 9), survey.Single{Height: "2 7/8"})}, job.Tile.Sample)

	_, page = s.Get("/jobs/1?all=1")
	assert.Contains(t, page, "measured size")
	filled = trial.Fields(t, page)
	filled.Set("do", trial.Button(t, page, "stand walls[1]="))
	answer, _ = s.Post("/jobs/1?all=1", filled)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, page = s.Get("/jobs/1?all=1")
	filled = trial.Fields(t, page)
	filled.Set("walls[1].set.course", "none")
	answer, page = s.Post("/jobs/1?all=1", filled)
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, `value="none"`, "what was typed is kept")
	assert.Contains(t, page, "a whole number of courses")
}

// A cut piece that stands has no row in the cut schedule any more; its card and
// the bathroom have to do without.
func TestAPieceThatStandsHasACardAndIsNoStepOfTheWork(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	job.Walls[1].Set = &survey.AsSet{Course: "6", Left: "-36", Right: "-35 5/8", Start: survey.SetStart{Is: "left edge", At: "12 3/8"}}
	document, err := survey.Write(job)
	require.NoError(t, err)
	s := trial.Of(t, document)
	for _, path := range []string{"/jobs/1", "/jobs/1?piece=B-06-01", "/jobs/1/piece/B-06-01", "/jobs/1/work", "/jobs/1/choices", "/jobs/1/bathroom?wall=2&piece=B-06-01"} {
		answer, page := s.Get(path)
		require.Equal(t, http.StatusOK, answer.StatusCode, path)
		if strings.Contains(path, "bathroom") {
			assert.Contains(t, page, "B-06-01 stands already")
		} else if strings.Contains(path, "piece") {
			assert.Contains(t, page, "set already")
		}
	}
}

// A range that becomes one value again holds nothing that anybody has measured.
func TestOneValueForARangeIsAGuess(t *testing.T) {
	s := trial.New(t)
	for _, c := range []struct {
		do      string
		guesses int
	}{
		{"measure walls[0].head.stops", 1}, {"free walls[0].head.stops", 0},
	} {
		posted := s.Bench()
		posted.Set("do", c.do)
		answer, page := s.Post("/jobs/1?all=1", posted)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		_, job := s.Stored()
		assert.Len(t, job.Guess, c.guesses, c.do)
		_, page = s.Get("/jobs/1")
		assert.Equal(t, c.guesses > 0, strings.Contains(page, "This plan is a guess"), c.do)
	}
}
