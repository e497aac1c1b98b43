package bench_test

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

// TestOneTabStopAWall walks over the drawing with the keys.
func TestOneTabStopAWall(t *testing.T) {
	ctx := trial.Browse(t)
	for name, try := range map[string]func(*testing.T, context.Context){
		"the arrow keys reach everything":      everythingIsReached,
		"a handle is passed by until Enter":    takenWithEnter,
		"few tab stops":                        fewStops,
		"a redraw keeps the stop of each wall": stopsStay,
		"the window follows the arrow keys":    windowFollows,
	} {
		t.Run(name, func(t *testing.T) { try(t, ctx) })
	}
}

// reached walks from the tab stop of each drawing along every arrow key and counts which of
// its items it never comes to.
func reached(drawings, items string) string {
	return strings.NewReplacer("DRAWINGS", drawings, "ITEMS", items).Replace(walk)
}

const walk = `(async () => {
	const { near } = await import("/static/neighbours.js");
	let missed = [], all = 0;
	for (const wall of document.querySelectorAll("DRAWINGS")) {
		const items = [...wall.querySelectorAll("ITEMS")];
		const seen = new Set([wall.querySelector('[tabindex="0"]')]), wait = [...seen];
		while (wait.length) {
			const at = wait.pop();
			for (const key of ["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"]) {
				const to = near(at, key, false);
				if (to && !seen.has(to)) { seen.add(to); wait.push(to); }
			}
		}
		all += items.length;
		missed.push(...items.filter((i) => !seen.has(i)).map((i) => i.dataset.piece ?? i.dataset.handle));
	}
	return [String(all), ...missed];
})()`

func everythingIsReached(t *testing.T, ctx context.Context) {
	for _, job := range []string{"alcove", "corner-shower", "one-wall", "old-house"} {
		s := trial.OfFile(t, job)
		for _, path := range []string{"/jobs/1", "/jobs/1?wall=1"} {
			openAt(t, ctx, s, path)
			found, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](reached("#drawing .wall", "[role=option][data-piece], .handle"), chromedp.EvalAwaitPromise))
			require.NoError(t, err)
			assert.Empty(t, found[1:], "%s%s: of %s pieces and handles", job, path, found[0])
		}
	}
}

// In a window lower than the wall the piece that had the focus was not to be seen.
func windowFollows(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	trial.Steps(t, ctx, chromedp.EmulateViewport(1280, 420))
	trial.Laid(t, ctx)
	trial.See[bool](t, ctx, `(() => { scrollTo(0, 0); document.querySelector('#drawing [tabindex="0"]').focus(); return true })()`)
	const seen = `(() => { const b = document.activeElement.getBoundingClientRect(); return b.top >= -1 && b.bottom <= innerHeight + 1 })()`
	for range 24 {
		trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowUp))
		assert.True(t, trial.See[bool](t, ctx, seen), "%s is to be seen", trial.See[string](t, ctx, there))
	}
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900))
}

const there = `(document.activeElement.dataset.piece ?? document.activeElement.dataset.handle ?? "none")`

func takenWithEnter(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1?wall=2")
	before, job := s.Stored()
	at := trial.See[string](t, ctx, `(() => { const h = document.querySelector('[data-handle="niche shelf left"]'); h.focus(); return document.activeElement.dataset.handle })()`)
	require.Equal(t, "niche shelf left", at)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowLeft), chromedp.KeyEvent(kb.ArrowRight))
	assert.Zero(t, trial.See[int](t, ctx, `document.querySelectorAll(".ghost, .handle.taken").length`), "walking over it moves nothing")
	trial.See[bool](t, ctx, `(() => { document.querySelector('[data-handle="niche shelf left"]').focus(); return true })()`)
	const heard = `document.activeElement.getAttribute("aria-valuetext")`
	rest := trial.See[string](t, ctx, heard)
	assert.Regexp(t, `^\d.*" across$`, rest, "in the units of the job")
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Enter))
	taken := strings.Replace(rest, `"`, "″", 1) + ": the arrow keys move it, Enter lets it go"
	assert.Equal(t, taken, trial.See[string](t, ctx, heard), "the script says it as the server does")
	moving := trial.See[[]string](t, ctx, `["ArrowLeft", "Escape"].map((key) => { document.activeElement.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true })); return `+heard+` })`)
	assert.Regexp(t, `^\d.*″ across$`, moving[0])
	assert.NotContains(t, taken, moving[0], "as it moves")
	assert.Equal(t, taken, moving[1], "and as it is put back")
	assert.Zero(t, trial.See[int](t, ctx, `document.querySelectorAll(".ghost").length`), "given up")
	assert.Equal(t, "Put back as it was", trial.See[string](t, ctx, status))
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowLeft), chromedp.KeyEvent(kb.Enter))
	trial.Await(t, ctx, status+` === "Saved"`)
	after, pinned := s.Stored()
	assert.Equal(t, before.Revision+1, after.Revision)
	assert.NotEqual(t, job.Pins, pinned.Pins)
	assert.Equal(t, "niche shelf left", trial.See[string](t, ctx, there), "the focus stays")
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowUp))
	assert.NotEqual(t, "niche shelf left", trial.See[string](t, ctx, there), "let go, the keys walk on")
}

// stops counts what the tab key comes to, in a part of the page.
const stops = `((within) => [...document.querySelectorAll(within + " :is(a[href], button, input, select, textarea, summary, [tabindex])")]
	.filter((e) => e.tabIndex >= 0 && !e.disabled && e.checkVisibility({ visibilityProperty: true }) && e.type !== "hidden").length)`

func fewStops(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1")
	assert.Equal(t, 3, trial.See[int](t, ctx, stops+`("#drawing")`), "one a wall")
	assert.Equal(t, "-1", trial.See[string](t, ctx, `document.getElementById("drawing").getAttribute("tabindex")`), "the frame needs none")
	t.Logf("tab stops of the bench: %d", trial.See[int](t, ctx, stops+`("body")`))
	assert.LessOrEqual(t, trial.See[int](t, ctx, stops+`("body")`), 76, "72, and the helps of the four lists that stand open")
	openAt(t, ctx, s, "/jobs/1?look=finish")
	assert.Equal(t, "0", trial.See[string](t, ctx, `document.getElementById("drawing").getAttribute("tabindex")`), "a picture scrolls by its frame")
}

func stopsStay(t *testing.T, ctx context.Context) {
	s := trial.New(t)
	openAt(t, ctx, s, "/jobs/1")
	trial.See[bool](t, ctx, `document.querySelector('.pieces [data-piece="B-10-04"]').dispatchEvent(new MouseEvent("click", { bubbles: true }))`)
	trial.Type(t, ctx, "walls[0].width", "35 1/2")
	trial.Await(t, ctx, status+` === "Saved"`)
	assert.Equal(t, 3, trial.See[int](t, ctx, `document.querySelectorAll('#drawing [tabindex="0"]').length`))
	assert.Equal(t, "B-10-04", trial.See[string](t, ctx, `document.querySelector('#drawing .wall[data-wall="1"] [tabindex="0"]').dataset.piece`))
}
