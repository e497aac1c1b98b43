package bench_test

import (
	"coursewright/web/trial"

	"context"
	"net/http"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestInTheHand works with the drawing as a person does, in one Chromium.
func TestInTheHand(t *testing.T) {
	if testing.Short() {
		t.Skip("needs a browser")
	}
	ctx, cancel := context.WithTimeout(t.Context(), 2*trial.Patience)
	t.Cleanup(cancel)
	ctx = trial.Chromium(t, ctx)
	for name, try := range map[string]func(*testing.T, context.Context){
		"a drag is looked at, then saved once": aDrag,
		"Esc gives up, and late answers":       lateAnswers,
		"one look at a time":                   oneLook,
		"a clash":                              aClash,
		"a reading is nudged":                  aReading,
		"a window is moved and sized":          aWindow,
		"the slider is one step":               theSlider,
		"by finger":                            byFinger,
		"pieces by the keys":                   piecesByKeys,
		"straight up":                          straightUp,
		"pieces by the mouse":                  piecesByMouse,
		"zoom keeps its place":                 zoomKeeps,
		"nothing overlaps":                     nothingOverlaps,
		"a wrong width on demand":              wrongWidth,
		"fifteen thousand pieces":              manyPieces,
	} {
		t.Run(name, func(t *testing.T) { try(t, ctx) })
	}
}

// openAt goes to a page of a new site.
func openAt(t *testing.T, ctx context.Context, s trial.Site, path string) {
	t.Helper()
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+path), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	if !strings.Contains(path, "view=") {
		trial.Laid(t, ctx)
	}
}

const (
	paper  = `document.querySelector("#paper svg").outerHTML.replace(/ (tabindex|aria-selected|aria-valuetext|data-stood)="[^"]*"| taken(?=")/g, "")`
	status = `document.getElementById("status").textContent`
)

// grasp takes hold of a handle with the mouse and gives where it is.
func grasp(t *testing.T, ctx context.Context, handle string) (x, y float64) {
	t.Helper()
	at := trial.See[[]float64](t, ctx, `(() => { const h = document.querySelector('#drawing [data-handle="`+handle+`"]'); h.scrollIntoView({block: "center"}); const r = h.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	trial.Steps(t, ctx, chromedp.MouseEvent(chromedp.MousePressed, at[0], at[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	return at[0], at[1]
}

func moveTo(t *testing.T, ctx context.Context, x, y float64) {
	t.Helper()
	trial.Steps(t, ctx, chromedp.MouseEvent(chromedp.MouseMoved, x, y, chromedp.ButtonLeft))
}

func release(t *testing.T, ctx context.Context, x, y float64) {
	t.Helper()
	trial.Steps(t, ctx, chromedp.MouseEvent(chromedp.MouseReleased, x, y, chromedp.ButtonLeft, chromedp.ClickCount(1)))
}

func focus(t *testing.T, ctx context.Context, selector string) {
	t.Helper()
	require.True(t, trial.See[bool](t, ctx, `(() => { const e = document.querySelector('`+selector+`'); e.focus(); return document.activeElement === e })()`), selector)
}

func aDrag(t *testing.T, ctx context.Context) {
	s := trial.Of(t, trial.File(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1?wall=1")
	before, job := s.Stored()
	drawn := trial.See[string](t, ctx, paper)
	x, y := grasp(t, ctx, "course")
	moveTo(t, ctx, x, y-30)
	assert.Contains(t, trial.See[string](t, ctx, `document.querySelector(".ghost").textContent`), "″", "the figures follow at once")
	trial.Await(t, ctx, `document.querySelector('[data-handle="course"]').classList.contains("pinned")`)
	assert.NotEqual(t, drawn, trial.See[string](t, ctx, paper), "the drawing follows")
	during, _ := s.Stored()
	assert.Equal(t, before.Revision, during.Revision, "nothing is saved while it is held")
	assert.Equal(t, "Not saved yet", trial.See[string](t, ctx, status))

	figure := asTyped(trial.See[string](t, ctx, `document.querySelector(".ghost text").textContent`))
	release(t, ctx, x, y-30)
	trial.Await(t, ctx, status+` === "Saved"`)
	after, moved := s.Stored()
	assert.Equal(t, before.Revision+1, after.Revision, "one drag, one step")
	assert.Equal(t, strings.TrimSuffix(figure, "″"), moved.Pins.Course.Line)
	assert.Contains(t, trial.See[string](t, ctx, `document.getElementById("pins").textContent`), "Course line")
	trial.Steps(t, ctx, chromedp.Click(`#pins button`))
	trial.Await(t, ctx, `document.getElementById("pins") === null`)
	_, free := s.Stored()
	assert.Equal(t, job.Pins, free.Pins, "released with one tap")
}

func lateAnswers(t *testing.T, ctx context.Context) {
	s := trial.Of(t, trial.File(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1?wall=1")
	before, _ := s.Stored()
	drawn := trial.See[string](t, ctx, paper)
	trial.See[bool](t, ctx, `(() => { const real = fetch; window.fetch = async (...a) => { delete a[1].signal; const r = await real(...a); const text = await r.text(); r.text = async () => { setTimeout(() => { window.answered = 1 }, 100); return text }; await new Promise((d) => { window.answer = d }); return r }; return true })()`)
	x, y := grasp(t, ctx, "start")
	moveTo(t, ctx, x+60, y)
	trial.Await(t, ctx, `window.answer !== undefined`)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	trial.See[bool](t, ctx, `(() => { window.answer(); return true })()`)
	trial.Await(t, ctx, `window.answered === 1`)
	release(t, ctx, x+60, y)
	assert.Equal(t, drawn, trial.See[string](t, ctx, paper))
	assert.Equal(t, "start", trial.See[string](t, ctx, `document.activeElement.dataset.handle ?? ""`))
	after, _ := s.Stored()
	assert.Equal(t, before.Revision, after.Revision)
}

func oneLook(t *testing.T, ctx context.Context) {
	s := trial.Of(t, trial.File(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1?wall=1")
	trial.See[bool](t, ctx, `(() => { const real = fetch; window.now = 0; window.most = 0; window.asked = [];
		window.fetch = async (...a) => { now++; most = Math.max(most, now); asked.push(a[1].body.get("do"));
			if (asked.length === 1) await new Promise((d) => { window.answer = d });
			try { return await real(...a) } finally { now-- } }; return true })()`)
	x, y := grasp(t, ctx, "start")
	for i := range 12 {
		moveTo(t, ctx, x+float64(3*(i+1)), y)
	}
	want := trial.See[string](t, ctx, `document.querySelector(".ghost text").textContent`)
	trial.See[bool](t, ctx, `(() => { answer(); return true })()`)
	trial.Await(t, ctx, `asked.length > 1 && now === 0`)
	assert.Equal(t, 1.0, trial.See[float64](t, ctx, `most`))
	assert.Equal(t, 2.0, trial.See[float64](t, ctx, `asked.length`), "those passed over were not asked for")
	assert.True(t, strings.HasSuffix(trial.See[string](t, ctx, `asked[1]`), "="+strings.TrimSuffix(want, "″")), "the newest was")
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	release(t, ctx, x, y)
}

func aClash(t *testing.T, ctx context.Context) {
	s := trial.Of(t, trial.File(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1?wall=1")
	before, _ := s.Stored()
	drawn := trial.See[string](t, ctx, paper)
	x, y := grasp(t, ctx, "end right")
	trial.See[bool](t, ctx, `(() => { window.followed = 0; document.addEventListener("redrawn", () => followed++); return true })()`)
	moveTo(t, ctx, x+8, y)
	trial.Await(t, ctx, `followed > 0`)
	moveTo(t, ctx, x+80, y)
	trial.Await(t, ctx, `document.querySelector("#clash p") !== null`)
	said := trial.See[string](t, ctx, `document.getElementById("clash").textContent`)
	assert.Contains(t, said, "Right end of basin")
	assert.Regexp(t, `which is .*" past where the survey lets it stand`, said)
	assert.Equal(t, "alert", trial.See[string](t, ctx, `document.getElementById("clash").getAttribute("role")`))
	release(t, ctx, x+80, y)
	trial.Await(t, ctx, status+` === "Not moved"`)
	assert.Equal(t, drawn, trial.See[string](t, ctx, paper), "the last good drawing")
	assert.NotEmpty(t, trial.See[string](t, ctx, `document.getElementById("clash").textContent`), "the message stays")
	after, _ := s.Stored()
	assert.Equal(t, before.Revision, after.Revision)
}

func aReading(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	before, _ := s.Stored()
	focus(t, ctx, `[data-handle="base 1 reading 2"]`)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Enter))
	trial.See[bool](t, ctx, `(() => { const press = (key, n, shiftKey) => setTimeout(() => document.activeElement.dispatchEvent(new KeyboardEvent("keydown", { key, shiftKey, bubbles: true })), 40 * n);
		press("ArrowUp", 1); press("ArrowUp", 2); press("ArrowRight", 3, true); return true })()`)
	trial.Await(t, ctx, `document.querySelector(".ghost")?.textContent.includes("+1/2″")`)
	trial.Await(t, ctx, status+` === "Saved"`)
	after, moved := s.Stored()
	assert.Equal(t, before.Revision+1, after.Revision, "a run of keys is one step")
	assert.Equal(t, "38 11/16", moved.Walls[1].Base[0].Readings[1].Drop)
	assert.Equal(t, "30 1/2", moved.Walls[1].Base[0].Readings[1].At)
	assert.Equal(t, "38 11/16", trial.See[string](t, ctx, `document.getElementById("walls[1].base[0].readings[1].drop").value`))
	assert.Equal(t, "base 1 reading 2", trial.See[string](t, ctx, `document.activeElement.dataset.handle ?? ""`), "the handle keeps the focus")

	typed := trial.New(t) // typing the same gives the same
	form := typed.Bench()
	form.Set("walls[1].base[0].readings[1].drop", "38 11/16")
	form.Set("walls[1].base[0].readings[1].at", "30 1/2")
	typed.Post("/jobs/1", form)
	_, same := typed.Stored()
	assert.Equal(t, same, moved)
}

func aWindow(t *testing.T, ctx context.Context) {
	s := trial.Of(t, trial.File(t, "one-wall.json"))
	form := s.Bench()
	form.Set("do", "add walls[0].openings window")
	answer, _ := s.Post("/jobs/1", form)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.Stored()
	before := job.Walls[0].Openings[0]
	openAt(t, ctx, s, "/jobs/1?wall=1")
	x, y := grasp(t, ctx, "move window window")
	moveTo(t, ctx, x+25, y)
	release(t, ctx, x+25, y)
	trial.Await(t, ctx, status+` === "Saved"`)
	_, job = s.Stored()
	after := job.Walls[0].Openings[0]
	assert.NotEqual(t, before.Left.At, after.Left.At)
	assert.Equal(t, before.Bottom.At, after.Bottom.At)
	assert.Equal(t, before.Width, after.Width, "it moves whole")
	assert.Equal(t, after.Left.At, trial.See[string](t, ctx, `document.getElementById("walls[0].openings[0].left.at").value`), "the survey shows it")
	focus(t, ctx, `[data-handle="size window window"]`)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Enter))
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowDown))
	trial.Await(t, ctx, status+` === "Saved" && document.querySelector(".ghost") === null`)
	_, job = s.Stored()
	assert.Equal(t, "23 15/16", job.Walls[0].Openings[0].Height.Mark.At)
	assert.Equal(t, before.Width, job.Walls[0].Openings[0].Width)
}

// asTyped is a figure with its minus as one types it.
func asTyped(figure string) string { return strings.ReplaceAll(figure, "−", "-") }
