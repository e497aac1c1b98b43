package bench_test

import (
	"coursewright/web/trial"

	"context"
	"net/http"
	"strconv"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Parts of TestInTheHand that look nearer: at one piece, at a part of the drawing.

const here = `(document.activeElement.dataset.piece ?? "none")`

func piecesByKeys(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1")
	assert.Equal(t, 3.0, trial.See[float64](t, ctx, `document.querySelectorAll('#drawing [tabindex="0"]').length`), "one tab stop a wall")
	assert.Zero(t, trial.See[float64](t, ctx, `[...document.querySelectorAll("#drawing [role=option]")].filter((p) => !p.getAttribute("aria-label")).length`))
	trial.See[bool](t, ctx, `document.querySelector('.pieces [data-piece="B-10-04"]').dispatchEvent(new MouseEvent("click", { bubbles: true }))`)
	for _, press := range []struct{ key, want string }{
		{kb.ArrowRight, "B-10-05"}, {kb.ArrowLeft, "B-10-04"}, {kb.End, "B-10-10"}, {kb.Home, "B-10-01"}, {kb.ArrowRight, "B-10-02"},
	} {
		trial.Steps(t, ctx, chromedp.KeyEvent(press.key))
		assert.Equal(t, press.want, trial.See[string](t, ctx, here))
	}
	for range 4 {
		trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowRight))
	}
	middle := `(() => { const r = document.activeElement.getBoundingClientRect(); return r.x + r.width / 2 })()`
	from := trial.See[float64](t, ctx, middle)
	for range 8 {
		trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowUp))
	}
	assert.Regexp(t, "^B-18-0.$", trial.See[string](t, ctx, here))
	assert.InDelta(t, from, trial.See[float64](t, ctx, middle), 2)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Enter))
	trial.Await(t, ctx, `document.activeElement.matches("#card .piececard")`)
	card := trial.See[string](t, ctx, `document.getElementById("card").textContent`)
	for _, said := range []string{"B-18-0", "back, course 18", "whole tile", "factory: left, right, bottom, top"} {
		assert.Contains(t, card, said)
	}
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	trial.Await(t, ctx, `document.querySelector("#card .piececard") === null`)
	assert.Regexp(t, "^B-18-0.$", trial.See[string](t, ctx, here), "the focus is back on the piece")
	assert.Equal(t, 3.0, trial.See[float64](t, ctx, `document.querySelectorAll('#drawing [tabindex="0"]').length`))
}

// straightUp: where each course steps by a third, a walk up keeps to its line.
func straightUp(t *testing.T, ctx context.Context) {
	s := trial.Of(t, trial.File(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1")
	trial.See[bool](t, ctx, `document.querySelector('.pieces [data-piece="B-02-03"]').dispatchEvent(new MouseEvent("click", { bubbles: true }))`)
	box := `(() => { const r = document.activeElement.getBoundingClientRect(); return [r.x + r.width / 2, r.width] })()`
	from := trial.See[[]float64](t, ctx, box)
	for range 5 {
		trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowUp))
		at := trial.See[[]float64](t, ctx, box)
		assert.InDelta(t, from[0], at[0], 0.55*from[1], trial.See[string](t, ctx, here))
	}
	assert.Regexp(t, "^B-07-", trial.See[string](t, ctx, here))
}

func piecesByMouse(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	trial.See[bool](t, ctx, `(() => { for (const d of document.querySelectorAll("#more > details")) d.open = true; return true })()`)
	at := trial.See[[]float64](t, ctx, `(() => { const r = document.querySelector('#drawing .piece[data-piece="B-10-10"]').getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	trial.Steps(t, ctx, chromedp.MouseEvent(chromedp.MouseMoved, at[0], at[1]))
	trial.Await(t, ctx, `document.querySelector("#card .piececard")?.dataset.piece === "B-10-10"`)
	trial.Steps(t, ctx, chromedp.MouseClickXY(at[0], at[1]))
	trial.See[bool](t, ctx, `document.getElementById("pieces").open = true`)
	trial.Await(t, ctx, `document.querySelector("#row-B-10-10")?.classList.contains("selected") ?? false`)
	assert.Equal(t, "?wall=2&piece=B-10-10", trial.See[string](t, ctx, `location.search`))
	assert.True(t, trial.See[bool](t, ctx, `document.querySelector('tr[data-pieces~="B-10-10"]').classList.contains("selected")`), "its cut too")
	assert.Contains(t, trial.See[string](t, ctx, `document.getElementById("card").textContent`), "Cut C")
	assert.Zero(t, trial.See[float64](t, ctx, `scrollY`), "the page stays where it is")

	trial.See[bool](t, ctx, `(() => { document.querySelector('#row-B-12-01 a').click(); return true })()`)
	assert.Equal(t, "true", trial.See[string](t, ctx, `document.querySelector('#drawing [data-piece="B-12-01"]').getAttribute("aria-selected")`))
	trial.See[bool](t, ctx, `(() => { document.querySelector('tr[data-pieces] td').click(); return true })()`)
	assert.Equal(t, trial.See[float64](t, ctx, `document.querySelector('tr[data-pieces]').dataset.pieces.split(" ").length`),
		trial.See[float64](t, ctx, `document.querySelectorAll("#drawing .rings path:not(.ground)").length`), "a cut selects all its pieces")

	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1?wall=2&piece=B-10-10"), trial.Ready, chromedp.WaitVisible("#card .piececard"))
	trial.See[bool](t, ctx, `(() => { document.querySelector(".bar a[href$=work]").click(); return true })()`)
	trial.Steps(t, ctx, chromedp.WaitVisible("#cut-schedule"))
	trial.See[bool](t, ctx, `(() => { history.back(); return true })()`)
	assert.Eventually(t, func() bool { // a page that is left answers with an error
		id, err := chromedp.Run(ctx, chromedp.Evaluate[string](`document.querySelector(".scripted #card .piececard")?.dataset.piece ?? ""`))
		return err == nil && id == "B-10-10"
	}, trial.Patience, 50*time.Millisecond, "back finds it again")
}

func zoomKeeps(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1")
	wide := `Math.round(document.querySelector("#drawing svg").getBoundingClientRect().width)`
	fit := trial.See[float64](t, ctx, wide)
	trial.Steps(t, ctx, chromedp.Click(`[data-zoom=in]`), chromedp.Click(`[data-zoom=in]`))
	near := trial.See[float64](t, ctx, wide)
	assert.InDelta(t, 2.25*fit, near, 3)
	focus(t, ctx, "#drawing")
	trial.Steps(t, ctx, chromedp.KeyEvent("-"))
	assert.InDelta(t, 1.5*fit, trial.See[float64](t, ctx, wide), 3)

	trial.See[bool](t, ctx, `(() => { const d = document.getElementById("drawing"), r = d.getBoundingClientRect();
		window.at = [r.x + 200, r.y + 200]; window.under = () => { const b = document.querySelector("#drawing svg").getBoundingClientRect(); return (at[0] - b.x) / b.width };
		window.share = under();
		d.dispatchEvent(new WheelEvent("wheel", { ctrlKey: true, deltaY: -200, clientX: at[0], clientY: at[1], bubbles: true, cancelable: true })); return true })()`)
	assert.InDelta(t, 0, trial.See[float64](t, ctx, `under() - share`), 0.003, "what is under the pointer stays under it")
	near = trial.See[float64](t, ctx, wide)
	assert.Greater(t, near, 1.6*fit)
	trial.Await(t, ctx, `location.search.includes("view=")`)
	left := `Math.round(document.getElementById("drawing").scrollLeft)`
	before := trial.See[float64](t, ctx, left)
	require.Positive(t, before)

	trial.Type(t, ctx, "joint", "3/16")
	trial.Await(t, ctx, status+` === "Saved"`)
	assert.InDelta(t, near, trial.See[float64](t, ctx, wide), 2, "an edit keeps the place")
	assert.InDelta(t, before, trial.See[float64](t, ctx, left), 4)
	trial.Steps(t, ctx, chromedp.Reload(), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	assert.InDelta(t, near, trial.See[float64](t, ctx, wide), 2, "and so does a reload")
	assert.InDelta(t, before, trial.See[float64](t, ctx, left), 4)
	middle := `(() => { const d = document.getElementById("drawing"); return (d.scrollLeft + d.clientWidth / 2) / document.querySelector("#drawing svg").getBoundingClientRect().width })()`
	share := trial.See[float64](t, ctx, middle)
	trial.Steps(t, ctx, chromedp.EmulateViewport(900, 700))
	// A handle stays as large as a finger needs, once the page has heard of its new width.
	trial.Await(t, ctx, `innerWidth === 900 && Math.abs(document.querySelector(".handle circle").getBoundingClientRect().width - 24) < 0.5`)
	trial.Await(t, ctx, `Math.abs(`+middle+` - `+strconv.FormatFloat(share, 'f', 4, 64)+`) < 0.01`) // and so does a turned phone
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Click(`[data-zoom=fit]`))
	trial.Await(t, ctx, `innerWidth === 1440 && Math.abs(`+wide+` - `+strconv.FormatFloat(fit, 'f', 0, 64)+`) <= 3`)
}

// overlapping counts the pairs of sizes shown that overlap, and the sizes shown
// that are too small to be read.
const overlapping = `(() => { const all = [...document.querySelectorAll("#drawing text.size")].map((t) => t.getBoundingClientRect()).filter((r) => r.width);
	let n = 0; for (const [i, a] of all.entries()) for (const b of all.slice(i + 1)) if (a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 2 && b.top < a.bottom - 2) n++;
	const svg = document.querySelector("#drawing svg"), pixels = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
	const small = [...svg.querySelectorAll("text.size")].filter((t) => t.getBoundingClientRect().width && pixels * t.parentElement.getAttribute("font-size") < 7);
	return [all.length, n, small.length] })()`

func nothingOverlaps(t *testing.T, ctx context.Context) {
	shown := 0 // ends of which all pieces are alike are told over the wall, not in the pieces
	for _, job := range []string{"alcove.json", "corner-shower.json"} {
		s := trial.Of(t, trial.File(t, job))
		for _, path := range []string{"/jobs/1", "/jobs/1?wall=2", "/jobs/1?view=4,0.5,0.5"} {
			openAt(t, ctx, s, path)
			found := trial.See[[]int](t, ctx, overlapping)
			assert.Zero(t, found[1], "%s %s", job, path)
			assert.Zero(t, found[2], "%s %s", job, path)
			shown += found[0]
		}
	}
	assert.Greater(t, shown, 5)
}

func wrongWidth(t *testing.T, ctx context.Context) {
	s := trial.Of(t, trial.File(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1")
	trial.See[bool](t, ctx, `(() => { document.getElementById("widths").open = true; return true })()`)
	trial.Await(t, ctx, `document.querySelectorAll("#widths tbody tr").length === 2`)
	said := trial.See[string](t, ctx, `document.getElementById("widths").textContent`)
	assert.Contains(t, said, `basin 1/4" narrower`)
	assert.Contains(t, said, `basin 1/4" wider`)
}

func manyPieces(t *testing.T, ctx context.Context) {
	s := trial.Of(t, trial.File(t, "mosaic.json"))
	answer, _ := s.Get("/jobs/1")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	openAt(t, ctx, s, "/jobs/1")
	assert.Less(t, trial.See[float64](t, ctx, `document.querySelectorAll("#drawing *").length`), 4000.0, "whole tiles are one shape")
	trial.Steps(t, ctx, chromedp.Click(`[data-zoom=in]`))
	focus(t, ctx, `.wall [tabindex="0"]`)
	first := trial.See[string](t, ctx, here)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.End))
	assert.NotEqual(t, first, trial.See[string](t, ctx, here))
	trial.Await(t, ctx, `document.querySelector("#card .piececard") !== null`)
	trial.Steps(t, ctx, chromedp.Click(`[data-zoom=fit]`))
	at := trial.See[[]float64](t, ctx, `(() => { const r = document.querySelector("#drawing .piece.whole").getBoundingClientRect();
		for (let x = r.x + r.width * 0.7; ; x++) { const y = r.y + r.height * 0.7 + x % 7; if (document.elementFromPoint(x, y)?.matches(".piece.whole, .piece.tile")) return [x, y] } })()`)
	trial.Steps(t, ctx, chromedp.MouseClickXY(at[0], at[1]))
	trial.Await(t, ctx, `document.querySelector("#card .piececard")?.textContent.includes("whole tile")`)
	ring := trial.See[[]float64](t, ctx, `(() => { const r = document.querySelector(".rings path:not(.ground)").getBoundingClientRect(); return [r.left, r.right, r.top, r.bottom] })()`)
	assert.True(t, ring[0] <= at[0]+1 && at[0] <= ring[1]+1 && ring[2] <= at[1]+1 && at[1] <= ring[3]+1, "the ring is round what was tapped: %v in %v", at, ring)
}
