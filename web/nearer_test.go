package web_test

import (
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
		steps(t, ctx, chromedp.KeyEvent(kb.ArrowRight))
	}
	middle := `(() => { const r = document.activeElement.getBoundingClientRect(); return r.x + r.width / 2 })()`
	from := see[float64](t, ctx, middle)
	for range 8 {
		steps(t, ctx, chromedp.KeyEvent(kb.ArrowUp))
	}
	assert.Regexp(t, "^B-18-0.$", see[string](t, ctx, here))
	assert.InDelta(t, from, see[float64](t, ctx, middle), 2)
	steps(t, ctx, chromedp.KeyEvent(kb.Enter))
	await(t, ctx, `document.activeElement.matches("#card .piececard")`)
	card := see[string](t, ctx, `document.getElementById("card").textContent`)
	for _, said := range []string{"B-18-0", "back, course 18", "whole tile", "factory: left, right, bottom, top"} {
		assert.Contains(t, card, said)
	}
	steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	await(t, ctx, `document.querySelector("#card .piececard") === null`)
	assert.Regexp(t, "^B-18-0.$", see[string](t, ctx, here), "the focus is back on the piece")
	assert.Equal(t, 3.0, see[float64](t, ctx, `document.querySelectorAll(".pieces [tabindex]").length`))
}

// straightUp: where each course steps by a third, a walk up keeps to its line.
func straightUp(t *testing.T, ctx context.Context) {
	s := newSiteOf(t, testdata(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1")
	see[bool](t, ctx, `document.querySelector('.pieces [data-piece="B-02-03"]').dispatchEvent(new MouseEvent("click", { bubbles: true }))`)
	box := `(() => { const r = document.activeElement.getBoundingClientRect(); return [r.x + r.width / 2, r.width] })()`
	from := see[[]float64](t, ctx, box)
	for range 5 {
		steps(t, ctx, chromedp.KeyEvent(kb.ArrowUp))
		at := see[[]float64](t, ctx, box)
		assert.InDelta(t, from[0], at[0], 0.55*from[1], see[string](t, ctx, here))
	}
	assert.Regexp(t, "^B-07-", see[string](t, ctx, here))
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
	middle := `(() => { const d = document.getElementById("drawing"); return (d.scrollLeft + d.clientWidth / 2) / document.querySelector("#drawing svg").getBoundingClientRect().width })()`
	share := see[float64](t, ctx, middle)
	steps(t, ctx, chromedp.EmulateViewport(900, 700))
	// A handle stays as large as a finger needs, once the page has heard of its new width.
	await(t, ctx, `innerWidth === 900 && Math.abs(document.querySelector(".handle circle").getBoundingClientRect().width - 24) < 0.5`)
	assert.InDelta(t, share, see[float64](t, ctx, middle), 0.01, "and a turned phone")
	steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Click(`[data-zoom=fit]`))
	await(t, ctx, `innerWidth === 1440 && Math.abs(`+wide+` - `+strconv.FormatFloat(fit, 'f', 0, 64)+`) <= 3`)
}

// overlapping counts the pairs of sizes shown that overlap, and the sizes shown
// that are too small to be read.
const overlapping = `(() => { const all = [...document.querySelectorAll("#drawing text.size")].map((t) => t.getBoundingClientRect()).filter((r) => r.width);
	let n = 0; for (const [i, a] of all.entries()) for (const b of all.slice(i + 1)) if (a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 2 && b.top < a.bottom - 2) n++;
	const svg = document.querySelector("#drawing svg"), pixels = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
	const small = [...svg.querySelectorAll("text.size")].filter((t) => t.getBoundingClientRect().width && pixels * t.parentElement.getAttribute("font-size") < 7);
	return [all.length, n, small.length] })()`

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
	steps(t, ctx, chromedp.Click(`[data-zoom=fit]`))
	at := see[[]float64](t, ctx, `(() => { const r = document.querySelector("#drawing .piece.whole").getBoundingClientRect();
		for (let x = r.x + r.width * 0.7; ; x++) { const y = r.y + r.height * 0.7 + x % 7; if (document.elementFromPoint(x, y)?.matches(".piece.whole")) return [x, y] } })()`)
	steps(t, ctx, chromedp.MouseClickXY(at[0], at[1]))
	await(t, ctx, `document.querySelector("#card .piececard")?.textContent.includes("whole tile")`)
	ring := see[[]float64](t, ctx, `(() => { const r = document.querySelector(".rings path").getBoundingClientRect(); return [r.left, r.right, r.top, r.bottom] })()`)
	assert.True(t, ring[0] <= at[0]+1 && at[0] <= ring[1]+1 && ring[2] <= at[1]+1 && at[1] <= ring[3]+1, "the ring is round what was tapped: %v in %v", at, ring)
}
