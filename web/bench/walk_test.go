package bench_test

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/web/trial"
)

// walker enters a room as a stranger would: from the first page, box by box, and
// counts what the program made of it.
type walker struct {
	t        *testing.T
	ctx      context.Context
	typed    int
	refusals []string // what the page refused, with what had been typed
	doubts   []string
}

// answers are the figures of a shower under a roof: three walls that differ, a base out of
// level, and a ceiling that rakes along both end walls.
var answers = map[string]string{
	"walls[0].width": "34 1/8", "walls[1].width": "46 3/4", "walls[2].width": "33 7/8",
	"walls[0].base[0].readings[0].drop": "41 1/4", "walls[0].base[0].readings[1].drop": "41 1/16",
	"walls[1].base[0].readings[1].drop": "40 15/16", "walls[2].base[0].readings[1].drop": "41 1/8",
	"walls[0].head.readings[0].rise": "58 1/2", "walls[0].head.readings[1].rise": "50 3/4",
	"walls[1].head.readings[1].rise": "50 5/8", "walls[2].head.readings[1].rise": "58 3/8",
	"tile.width": "7 7/8", "tile.height": "3 7/8",
}

// figure types into a box, key by key, leaves it with Enter and looks what was said.
func (w *walker) figure(id, text string) {
	w.t.Helper()
	w.typed++
	trial.Type(w.t, w.ctx, id, text)
	trial.Steps(w.t, w.ctx, chromedp.KeyEvent(kb.Enter))
	w.saved(id + " = " + text)
}

// saved waits for the answer and notes refusals and doubts that it brought.
func (w *walker) saved(after string) {
	w.t.Helper()
	trial.Await(w.t, w.ctx, `!["Not saved yet", "Saving"].includes(document.getElementById("status").textContent)`)
	for _, text := range trial.See[[]string](w.t, w.ctx, `[...document.querySelectorAll("#survey .fault, #faults li, #clash p")].map((e) => e.textContent.trim()).filter(Boolean)`) {
		w.refusals = append(w.refusals, after+": "+text)
	}
	for _, text := range trial.See[[]string](w.t, w.ctx, `[...document.querySelectorAll(".doubtbox p")].map((e) => e.textContent.trim())`) {
		w.doubts = append(w.doubts, after+": "+text)
	}
}

// button presses a button of the survey by what it is called.
func (w *walker) button(named string) {
	w.t.Helper()
	require.True(w.t, trial.See[bool](w.t, w.ctx, `(() => { const b = [...document.querySelectorAll("#survey button")].find((b) => (b.getAttribute("aria-label") ?? b.textContent).trim() === `+trial.Quote(named)+`);
		if (!b) return false; for (let d = b.closest("details"); d; d = d.parentElement.closest("details")) d.open = true; window.form0 = document.getElementById("survey"); b.click(); return true })()`), named)
	trial.Await(w.t, w.ctx, `document.getElementById("survey") !== window.form0`)
	w.saved(named)
}

// choose takes one of the words of a list.
func (w *walker) choose(selector, value string) {
	w.t.Helper()
	require.True(w.t, trial.See[bool](w.t, w.ctx, `(() => { const s = document.querySelector(`+trial.Quote(selector)+`); if (!s) return false; window.form0 = document.getElementById("survey"); s.value = `+trial.Quote(value)+`; s.dispatchEvent(new Event("change", { bubbles: true })); return s.value === `+trial.Quote(value)+` })()`), selector)
	trial.Await(w.t, w.ctx, `document.getElementById("survey") !== window.form0`)
	w.saved(selector + " = " + value)
}

// TestANewcomersWalk enters three walls with a niche, a valve and a raked ceiling into an empty
// new job. Nothing that is true of the room is refused or doubted.
func TestANewcomersWalk(t *testing.T) {
	if testing.Short() {
		t.Skip("needs a browser")
	}
	s := trial.Empty(t, layout.Solve)
	ctx, cancel := context.WithTimeout(t.Context(), 6*trial.Patience)
	t.Cleanup(cancel)
	w := &walker{t: t, ctx: trial.Chromium(t, ctx)}
	trial.Steps(t, w.ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/"), chromedp.WaitVisible("#main"))
	trial.Type(t, w.ctx, "title", "Attic shower")
	w.typed++
	trial.Steps(t, w.ctx, chromedp.Click(`button[name=shape][value=three]`))
	trial.Steps(t, w.ctx, chromedp.WaitVisible("#drawing svg"), trial.Ready)
	count := func() string {
		return trial.See[string](t, w.ctx, `document.getElementById("line-count").textContent`)
	}
	require.True(t, strings.HasPrefix(count(), "0 of "), count())

	// One question after the other, as Enter leads on.
	asked := trial.See[[]string](t, w.ctx, `[...document.querySelectorAll("#survey .asked:has(.help) input[id]")].map((i) => i.id)`)
	for _, id := range asked {
		answer, known := answers[id]
		require.True(t, known, "the room has no figure for %s: %s", id, trial.See[string](t, w.ctx, `document.querySelector('[data-field="`+id+`"] .question').textContent`))
		w.figure(id, answer)
	}

	// A corner that leans, a valve, a niche.
	w.figure("walls[1].left.lean[1].off", "3/16")
	w.button("Add a pipe to wall left")
	w.figure("walls[0].openings[0].name", "valve")
	w.figure("walls[0].openings[0].at", "15 1/2")                  // from the corner
	w.choose(`[name="side walls[0].openings[0].height"]`, "above") // and thinks better of it
	w.choose(`[name="side walls[0].openings[0].height"]`, "below")
	w.figure("walls[0].openings[0].height", "6 1/4")
	w.figure("walls[0].openings[0].diameter", "4 1/2")
	w.button("Add a niche to wall back")
	w.figure("walls[1].openings[0].name", "shelf")
	for _, range_ := range []struct{ field, from, to string }{
		{"left", "12", "22"}, {"width", "11", "14 1/2"}, {"bottom", "4", "12"}, {"height", "11", "16"},
	} {
		at := "walls[1].openings[0]." + range_.field
		if !trial.See[bool](t, w.ctx, `document.getElementById("`+at+`.from") !== null`) {
			w.button(trial.See[string](t, w.ctx, `(() => { const b = document.querySelector('#survey button[value="free `+at+`"]'); return b.getAttribute("aria-label") ?? b.textContent.trim() })()`))
		}
		w.figure(at+".from", range_.from)
		w.figure(at+".to", range_.to)
	}
	trial.Shot(t, w.ctx, "walk")

	_, job := s.Stored()
	assert.Equal(t, "-6 1/4", job.Walls[0].Openings[0].Height.Plain, "below the line without a minus")
	assert.Equal(t, "18 5/8", job.Walls[0].Openings[0].At, "from the corner")
	assert.Equal(t, "50 3/4", job.Walls[1].Head.Readings[0].Rise, "a corner is measured once")
	assert.Empty(t, job.Guess, "%s", count())
	plan, err := layout.Now(job)
	require.NoError(t, err)
	assert.NotEmpty(t, plan.Walls[1].Pieces)
	assert.Empty(t, w.refusals, "refused by the program")
	assert.Empty(t, w.doubts, "doubted, though true")
	t.Logf("typed %d values, %d refusals, %d doubts; %s", w.typed, len(w.refusals), len(w.doubts), count())
}

// What is renamed has its new name in every question and on every button, once its box is left by Tab or by Enter,
// and the focus stays where the key has put it.
func TestWhatIsRenamedIsAskedForByItsNewName(t *testing.T) {
	if testing.Short() {
		t.Skip("needs a browser")
	}
	s := trial.New(t)
	ctx, cancel := context.WithTimeout(t.Context(), trial.Patience)
	t.Cleanup(cancel)
	w := &walker{t: t, ctx: trial.Chromium(t, ctx)}
	trial.Steps(t, w.ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	for key, name := range map[string]string{kb.Tab: "window side", kb.Enter: "north"} {
		trial.Type(t, w.ctx, "walls[1].name", name)
		trial.Steps(t, w.ctx, chromedp.KeyEvent(key))
		trial.Await(t, w.ctx, `document.querySelector('label[for="walls[1].width"]').textContent === "Width of wall `+name+`"`)
		trial.Await(t, w.ctx, `[...document.querySelectorAll("#survey button")].some((b) => (b.getAttribute("aria-label") ?? "") === "Add a niche to wall `+name+`")`)
		trial.Await(t, w.ctx, `document.activeElement.closest("#survey") !== null`)
	}
}

// A box that was tabbed into is typed over, also where an answer swaps the form just then.
func TestABoxStaysMarkedWhenTheFormIsSwapped(t *testing.T) {
	if testing.Short() {
		t.Skip("needs a browser")
	}
	s := trial.Empty(t, layout.Solve)
	ctx, cancel := context.WithTimeout(t.Context(), trial.Patience)
	t.Cleanup(cancel)
	w := &walker{t: t, ctx: trial.Chromium(t, ctx)}
	trial.Steps(t, w.ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/"), chromedp.WaitVisible("#main"),
		chromedp.Click(`button[name=shape][value=tub]`), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	w.figure("tile.width", "7 7/8")
	trial.See[bool](t, w.ctx, `(() => {
		window.form0 = document.getElementById("survey");
		[...form0.querySelectorAll("button")].find((b) => (b.getAttribute("aria-label") ?? "").startsWith("Add a pipe")).click();
		const box = document.getElementById("tile.width");
		box.focus(); box.select();
		return true;
	})()`)
	trial.Await(t, w.ctx, `document.getElementById("survey") !== window.form0`)
	trial.Await(t, w.ctx, `document.activeElement.id === "tile.width"`)
	require.Equal(t, []int{0, 5}, trial.See[[]int](t, w.ctx, `[document.activeElement.selectionStart, document.activeElement.selectionEnd]`))
}
