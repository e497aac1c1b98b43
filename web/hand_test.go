package web_test

import (
	"context"
	"net/http"
	"os"
	"strings"
	"testing"
	"time"

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
	ctx, cancel := context.WithTimeout(t.Context(), 2*patience)
	t.Cleanup(cancel)
	ctx = chromium(t, ctx)
	for name, try := range map[string]func(*testing.T, context.Context){
		"a drag is looked at, then saved once": aDrag,
		"Esc gives up, and late answers":       lateAnswers,
		"one look at a time":                   oneLook,
		"a clash":                              aClash,
		"a reading is nudged":                  aReading,
		"the slider is one step":               theSlider,
		"pieces by the keys":                   piecesByKeys,
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
func openAt(t *testing.T, ctx context.Context, s site, path string) {
	t.Helper()
	steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+path), chromedp.WaitVisible("#drawing svg"), ready)
}

func testdata(t *testing.T, name string) []byte {
	t.Helper()
	file, err := os.ReadFile("../testdata/jobs/" + name)
	require.NoError(t, err)
	return file
}

const (
	paper  = `document.querySelector("#paper svg").outerHTML.replace(/ (tabindex|aria-selected|aria-valuetext)="[^"]*"/g, "")`
	status = `document.getElementById("status").textContent`
)

// grasp takes hold of a handle with the mouse and gives where it is.
func grasp(t *testing.T, ctx context.Context, handle string) (x, y float64) {
	t.Helper()
	at := see[[]float64](t, ctx, `(() => { const h = document.querySelector('#drawing [data-handle="`+handle+`"]'); h.scrollIntoView({block: "center"}); const r = h.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	steps(t, ctx, chromedp.MouseEvent(chromedp.MousePressed, at[0], at[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	return at[0], at[1]
}

func moveTo(t *testing.T, ctx context.Context, x, y float64) {
	t.Helper()
	steps(t, ctx, chromedp.MouseEvent(chromedp.MouseMoved, x, y, chromedp.ButtonLeft))
}

func release(t *testing.T, ctx context.Context, x, y float64) {
	t.Helper()
	steps(t, ctx, chromedp.MouseEvent(chromedp.MouseReleased, x, y, chromedp.ButtonLeft, chromedp.ClickCount(1)))
}

func focus(t *testing.T, ctx context.Context, selector string) {
	t.Helper()
	require.True(t, see[bool](t, ctx, `(() => { const e = document.querySelector('`+selector+`'); e.focus(); return document.activeElement === e })()`), selector)
}

func aDrag(t *testing.T, ctx context.Context) {
	s := newSiteOf(t, testdata(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1?wall=1")
	before, job := s.stored()
	drawn := see[string](t, ctx, paper)
	x, y := grasp(t, ctx, "course")
	moveTo(t, ctx, x, y-30)
	assert.Contains(t, see[string](t, ctx, `document.querySelector(".ghost").textContent`), "″", "the figures follow at once")
	await(t, ctx, `document.querySelector('[data-handle="course"]').classList.contains("pinned")`)
	assert.NotEqual(t, drawn, see[string](t, ctx, paper), "the drawing follows")
	during, _ := s.stored()
	assert.Equal(t, before.Revision, during.Revision, "nothing is saved while it is held")
	assert.Equal(t, "Not saved yet", see[string](t, ctx, status))

	figure := see[string](t, ctx, `document.querySelector(".ghost text").textContent`)
	release(t, ctx, x, y-30)
	await(t, ctx, status+` === "Saved"`)
	after, moved := s.stored()
	assert.Equal(t, before.Revision+1, after.Revision, "one drag, one step")
	assert.Equal(t, strings.TrimSuffix(figure, "″"), moved.Pins.Course.Line)
	assert.Contains(t, see[string](t, ctx, `document.getElementById("pins").textContent`), "Course line")
	steps(t, ctx, chromedp.Click(`#pins button`))
	await(t, ctx, `document.getElementById("pins") === null`)
	_, free := s.stored()
	assert.Equal(t, job.Pins, free.Pins, "released with one tap")
}

func lateAnswers(t *testing.T, ctx context.Context) {
	s := newSiteOf(t, testdata(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1?wall=1")
	before, _ := s.stored()
	drawn := see[string](t, ctx, paper)
	see[bool](t, ctx, `(() => { const real = fetch; window.fetch = async (...a) => { delete a[1].signal; const r = await real(...a); await new Promise((d) => { window.answer = d }); window.answered = 1; return r }; return true })()`)
	x, y := grasp(t, ctx, "start")
	moveTo(t, ctx, x+60, y)
	await(t, ctx, `window.answer !== undefined`)
	steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	see[bool](t, ctx, `(() => { window.answer(); return true })()`)
	await(t, ctx, `window.answered === 1`)
	see[bool](t, ctx, `new Promise((d) => setTimeout(() => d(true), 50)) && true`)
	release(t, ctx, x+60, y)
	assert.Equal(t, drawn, see[string](t, ctx, paper))
	assert.Equal(t, "start", see[string](t, ctx, `document.activeElement.dataset.handle ?? ""`))
	after, _ := s.stored()
	assert.Equal(t, before.Revision, after.Revision)
}

func oneLook(t *testing.T, ctx context.Context) {
	s := newSiteOf(t, testdata(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1?wall=1")
	see[bool](t, ctx, `(() => { const real = fetch; window.now = 0; window.most = 0; window.asked = [];
		window.fetch = async (...a) => { now++; most = Math.max(most, now); asked.push(a[1].body.get("do")); await new Promise((d) => setTimeout(d, 60)); try { return await real(...a) } finally { now-- } }; return true })()`)
	x, y := grasp(t, ctx, "start")
	for i := range 12 {
		moveTo(t, ctx, x+float64(3*(i+1)), y)
	}
	want := see[string](t, ctx, `document.querySelector(".ghost text").textContent`)
	await(t, ctx, `asked.at(-1).endsWith("=`+strings.TrimSuffix(want, "″")+`") && now === 0`)
	assert.Equal(t, 1.0, see[float64](t, ctx, `most`))
	assert.Less(t, see[float64](t, ctx, `asked.length`), 12.0, "those passed over were not asked for")
	steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	release(t, ctx, x, y)
}

func aClash(t *testing.T, ctx context.Context) {
	s := newSiteOf(t, testdata(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1?wall=1")
	before, _ := s.stored()
	drawn := see[string](t, ctx, paper)
	x, y := grasp(t, ctx, "end right")
	moveTo(t, ctx, x+80, y)
	await(t, ctx, `document.querySelector("#clash p") !== null`)
	said := see[string](t, ctx, `document.getElementById("clash").textContent`)
	assert.Contains(t, said, "Right end of basin")
	assert.Regexp(t, `which is .*" outside the mark's range; write a length from 46 to 50|which is .*" outside`, said)
	assert.Equal(t, "alert", see[string](t, ctx, `document.getElementById("clash").getAttribute("role")`))
	release(t, ctx, x+80, y)
	await(t, ctx, status+` === "Not moved"`)
	assert.Equal(t, drawn, see[string](t, ctx, paper), "the last good drawing")
	assert.NotEmpty(t, see[string](t, ctx, `document.getElementById("clash").textContent`), "the message stays")
	after, _ := s.stored()
	assert.Equal(t, before.Revision, after.Revision)
}

func aReading(t *testing.T, ctx context.Context) {
	s := newSite(t)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	before, _ := s.stored()
	focus(t, ctx, `[data-handle="base 1 reading 2"]`)
	steps(t, ctx, chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowRight, chromedp.KeyModifiers(chromedp.ModifierShift)))
	await(t, ctx, status+` === "Saved"`)
	after, moved := s.stored()
	assert.Equal(t, before.Revision+1, after.Revision, "a run of keys is one step")
	assert.Equal(t, "38 11/16", moved.Walls[1].Base[0].Readings[1].Drop)
	assert.Equal(t, "30 1/2", moved.Walls[1].Base[0].Readings[1].At)
	assert.Equal(t, "38 11/16", see[string](t, ctx, `document.getElementById("walls[1].base[0].readings[1].drop").value`))
	assert.Equal(t, "base 1 reading 2", see[string](t, ctx, `document.activeElement.dataset.handle ?? ""`), "the handle keeps the focus")

	typed := newSite(t) // typing the same gives the same
	form := typed.bench()
	form.Set("walls[1].base[0].readings[1].drop", "38 11/16")
	form.Set("walls[1].base[0].readings[1].at", "30 1/2")
	typed.post("/jobs/1", form)
	_, same := typed.stored()
	assert.Equal(t, same, moved)
}

func theSlider(t *testing.T, ctx context.Context) {
	s := newSiteOf(t, testdata(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1")
	before, _ := s.stored()
	drawn := see[string](t, ctx, `document.querySelector("#curve-0 svg").outerHTML`)
	focus(t, ctx, "#slide-0")
	steps(t, ctx, chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
	await(t, ctx, `document.querySelector("#curve-0 svg").outerHTML !== `+quote(drawn))
	await(t, ctx, status+` === "Saved"`)
	after, job := s.stored()
	assert.Equal(t, before.Revision+1, after.Revision)
	assert.NotEmpty(t, job.Pins.Walls["basin"])
	assert.Equal(t, "slide-0", see[string](t, ctx, `document.activeElement.id`))
}

const here = `(document.activeElement.dataset.piece ?? "none")`

func piecesByKeys(t *testing.T, ctx context.Context) {
	s := newSite(t)
	openAt(t, ctx, s, "/jobs/1")
	assert.Equal(t, 3.0, see[float64](t, ctx, `document.querySelectorAll(".pieces [tabindex]").length`), "one tab stop a wall")
	assert.Zero(t, see[float64](t, ctx, `[...document.querySelectorAll("#drawing [role=option]")].filter((p) => !p.getAttribute("aria-label")).length`))
	see[bool](t, ctx, `document.querySelector('.pieces [data-piece="B-10-04"]').dispatchEvent(new MouseEvent("click", { bubbles: true }))`)
	for _, press := range []struct{ key, want string }{
		{kb.ArrowRight, "B-10-05"}, {kb.ArrowLeft, "B-10-04"}, {kb.End, "B-10-10"}, {kb.Home, "B-10-01"}, {kb.ArrowRight, "B-10-02"},
	} {
		steps(t, ctx, chromedp.KeyEvent(press.key))
		assert.Equal(t, press.want, see[string](t, ctx, here))
	}
	for range 4 {
		steps(t, ctx, chromedp.KeyEvent(kb.ArrowUp))
	}
	assert.Regexp(t, "^B-14-0[23]$", see[string](t, ctx, here), "straight up, without drifting")
	steps(t, ctx, chromedp.KeyEvent(kb.Enter))
	await(t, ctx, `document.activeElement.matches("#card .piececard")`)
	card := see[string](t, ctx, `document.getElementById("card").textContent`)
	for _, said := range []string{"B-14-0", "back, course 14", "whole tile", "factory: left, right, bottom, top"} {
		assert.Contains(t, card, said)
	}
	steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	await(t, ctx, `document.querySelector("#card .piececard") === null`)
	assert.Regexp(t, "^B-14-0[23]$", see[string](t, ctx, here), "the focus is back on the piece")
	assert.Equal(t, 3.0, see[float64](t, ctx, `document.querySelectorAll(".pieces [tabindex]").length`))
}

func piecesByMouse(t *testing.T, ctx context.Context) {
	s := newSite(t)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	see[bool](t, ctx, `(() => { for (const d of document.querySelectorAll("#more > details")) d.open = true; return true })()`)
	at := see[[]float64](t, ctx, `(() => { const r = document.querySelector('#drawing .piece[data-piece="B-10-10"]').getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	steps(t, ctx, chromedp.MouseEvent(chromedp.MouseMoved, at[0], at[1]))
	await(t, ctx, `document.querySelector("#card .piececard")?.dataset.piece === "B-10-10"`)
	steps(t, ctx, chromedp.MouseClickXY(at[0], at[1]))
	await(t, ctx, `document.querySelector("#row-B-10-10").classList.contains("selected")`)
	assert.Equal(t, "?wall=2&piece=B-10-10", see[string](t, ctx, `location.search`))
	assert.True(t, see[bool](t, ctx, `document.querySelector('tr[data-pieces~="B-10-10"]').classList.contains("selected")`), "its cut too")
	assert.Contains(t, see[string](t, ctx, `document.getElementById("card").textContent`), "Cut C")
	assert.Zero(t, see[float64](t, ctx, `scrollY`), "the page stays where it is")

	see[bool](t, ctx, `(() => { document.querySelector('#row-B-12-01 a').click(); return true })()`)
	assert.Equal(t, "true", see[string](t, ctx, `document.querySelector('#drawing [data-piece="B-12-01"]').getAttribute("aria-selected")`))
	see[bool](t, ctx, `(() => { document.querySelector('tr[data-pieces] td').click(); return true })()`)
	assert.Equal(t, see[float64](t, ctx, `document.querySelector('tr[data-pieces]').dataset.pieces.split(" ").length`),
		see[float64](t, ctx, `document.querySelectorAll("#drawing .rings path").length`), "a cut selects all its pieces")

	steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1?wall=2&piece=B-10-10"), ready, chromedp.WaitVisible("#card .piececard"))
	see[bool](t, ctx, `(() => { document.querySelector(".bar a[href$=work]").click(); return true })()`)
	steps(t, ctx, chromedp.WaitVisible("#cut-schedule"))
	see[bool](t, ctx, `(() => { history.back(); return true })()`)
	assert.Eventually(t, func() bool { // a page that is left answers with an error
		id, err := chromedp.Run(ctx, chromedp.Evaluate[string](`document.querySelector(".scripted #card .piececard")?.dataset.piece ?? ""`))
		return err == nil && id == "B-10-10"
	}, patience, 50*time.Millisecond, "back finds it again")
}

func zoomKeeps(t *testing.T, ctx context.Context) {
	s := newSite(t)
	openAt(t, ctx, s, "/jobs/1")
	wide := `Math.round(document.querySelector("#drawing svg").getBoundingClientRect().width)`
	fit := see[float64](t, ctx, wide)
	steps(t, ctx, chromedp.Click(`[data-zoom=in]`), chromedp.Click(`[data-zoom=in]`))
	near := see[float64](t, ctx, wide)
	assert.InDelta(t, 2.25*fit, near, 3)
	focus(t, ctx, "#drawing")
	steps(t, ctx, chromedp.KeyEvent("-"))
	assert.InDelta(t, 1.5*fit, see[float64](t, ctx, wide), 3)

	see[bool](t, ctx, `(() => { const d = document.getElementById("drawing"), r = d.getBoundingClientRect();
		window.at = [r.x + 200, r.y + 200]; window.under = () => { const b = document.querySelector("#drawing svg").getBoundingClientRect(); return (at[0] - b.x) / b.width };
		window.share = under();
		d.dispatchEvent(new WheelEvent("wheel", { ctrlKey: true, deltaY: -200, clientX: at[0], clientY: at[1], bubbles: true, cancelable: true })); return true })()`)
	assert.InDelta(t, 0, see[float64](t, ctx, `under() - share`), 0.003, "what is under the pointer stays under it")
	near = see[float64](t, ctx, wide)
	assert.Greater(t, near, 1.6*fit)
	await(t, ctx, `location.search.includes("view=")`)
	left := `Math.round(document.getElementById("drawing").scrollLeft)`
	before := see[float64](t, ctx, left)
	require.Positive(t, before)

	typeInto(t, ctx, "joint", "3/16")
	await(t, ctx, status+` === "Saved"`)
	assert.InDelta(t, near, see[float64](t, ctx, wide), 2, "an edit keeps the place")
	assert.InDelta(t, before, see[float64](t, ctx, left), 4)
	steps(t, ctx, chromedp.Reload(), chromedp.WaitVisible("#drawing svg"), ready)
	assert.InDelta(t, near, see[float64](t, ctx, wide), 2, "and so does a reload")
	assert.InDelta(t, before, see[float64](t, ctx, left), 4)
	steps(t, ctx, chromedp.Click(`[data-zoom=fit]`))
	assert.InDelta(t, fit, see[float64](t, ctx, wide), 3)
}

// overlapping counts the pairs of sizes shown that overlap, and the sizes shown
// that are too small to be read.
const overlapping = `(() => { const all = [...document.querySelectorAll("#drawing text.size")].map((t) => t.getBoundingClientRect()).filter((r) => r.width);
	let n = 0; for (const [i, a] of all.entries()) for (const b of all.slice(i + 1)) if (a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 2 && b.top < a.bottom - 2) n++;
	return [all.length, n, all.filter((r) => Math.min(r.width, r.height) < 6).length] })()`

func nothingOverlaps(t *testing.T, ctx context.Context) {
	s := newSiteOf(t, testdata(t, "alcove.json"))
	for _, path := range []string{"/jobs/1", "/jobs/1?wall=2", "/jobs/1?view=4,0.5,0.5"} {
		openAt(t, ctx, s, path)
		found := see[[]int](t, ctx, overlapping)
		assert.Zero(t, found[1], path)
		assert.Zero(t, found[2], path)
		if path != "/jobs/1" {
			assert.Positive(t, found[0], path)
		}
	}
}

func wrongWidth(t *testing.T, ctx context.Context) {
	s := newSiteOf(t, testdata(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1")
	see[bool](t, ctx, `(() => { document.getElementById("widths").open = true; return true })()`)
	await(t, ctx, `document.querySelectorAll("#widths tbody tr").length === 2`)
	said := see[string](t, ctx, `document.getElementById("widths").textContent`)
	assert.Contains(t, said, `basin 1/4" narrower`)
	assert.Contains(t, said, `basin 1/4" wider`)
}

func manyPieces(t *testing.T, ctx context.Context) {
	s := newSiteOf(t, testdata(t, "mosaic.json"))
	answer, _ := s.get("/jobs/1")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	openAt(t, ctx, s, "/jobs/1")
	assert.Less(t, see[float64](t, ctx, `document.querySelectorAll("#drawing *").length`), 4000.0, "whole tiles are one shape")
	steps(t, ctx, chromedp.Click(`[data-zoom=in]`))
	focus(t, ctx, `.pieces [tabindex]`)
	first := see[string](t, ctx, here)
	steps(t, ctx, chromedp.KeyEvent(kb.End))
	assert.NotEqual(t, first, see[string](t, ctx, here))
	await(t, ctx, `document.querySelector("#card .piececard") !== null`)
}
