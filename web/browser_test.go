package web_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

// patience is how long a page may take on a busy machine before a test gives up.
const patience = 60 * time.Second

// browse starts a real Chromium with a profile of its own.
func browse(t *testing.T) context.Context {
	t.Helper()
	if testing.Short() {
		t.Skip("needs a browser")
	}
	ctx, cancel := context.WithTimeout(t.Context(), patience)
	t.Cleanup(cancel)
	return chromium(t, ctx)
}

// ready waits for the page's script.
var ready = chromedp.WaitReady("html.scripted")

// see evaluates a script in the page.
func see[T any](t *testing.T, ctx context.Context, script string) T {
	t.Helper()
	out, err := chromedp.Run(ctx, chromedp.Evaluate[T](script))
	require.NoError(t, err)
	return out
}

// await waits until a script gives true.
func await(t *testing.T, ctx context.Context, script string) {
	t.Helper()
	_, err := chromedp.Run(ctx, chromedp.Poll[bool](script))
	require.NoError(t, err, script)
}

func steps(t *testing.T, ctx context.Context, list ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	require.NoError(t, chromedp.Do(ctx, list...))
}

// typeInto writes a field as a person does: focus, all of it replaced.
func typeInto(t *testing.T, ctx context.Context, id, text string) {
	t.Helper()
	see[bool](t, ctx, `(() => { const f = document.getElementById(`+quote(id)+`); f.closest("details").open = true; f.focus(); f.select(); return true })()`)
	steps(t, ctx, chromedp.KeyEvent(text))
}

func quote(s string) string { return "`" + s + "`" }

func TestEditRedrawUndoReload(t *testing.T) {
	s := newSite(t)
	ctx := browse(t)
	steps(t, ctx, chromedp.Navigate(s.URL+"/"), chromedp.Click("a.job"), chromedp.WaitVisible("#drawing svg"), ready)
	before := see[string](t, ctx, `document.getElementById("drawing").innerHTML`)

	see[bool](t, ctx, `window.same = true`)
	typeInto(t, ctx, "walls[1].width", "59 3/4")
	await(t, ctx, `document.getElementById("status").textContent === "Saved"`)
	_, job := s.stored()
	assert.Equal(t, "59 3/4", job.Walls[1].Width, "said only after the commit")
	assert.True(t, before != see[string](t, ctx, `document.getElementById("drawing").innerHTML`), "redrawn")
	assert.True(t, see[bool](t, ctx, `window.same === true`), "without a reload")
	assert.Equal(t, "walls[1].width", see[string](t, ctx, `document.activeElement.id`), "the focus stays")
	assert.Equal(t, "59 3/4", see[string](t, ctx, `document.getElementById("walls[1].base[0].readings[2].at").value`), "the reading at the end came along")

	steps(t, ctx, chromedp.Click("#undo"))
	await(t, ctx, `document.getElementById("walls[1].width").value === "59 7/8"`)
	assert.True(t, before == see[string](t, ctx, `document.getElementById("drawing").innerHTML`), "the drawing as it was")
	steps(t, ctx, chromedp.Click("#redo"))
	await(t, ctx, `document.getElementById("walls[1].width").value === "59 3/4"`)
	steps(t, ctx, chromedp.Reload(), chromedp.WaitVisible("#drawing svg"), ready)
	assert.Equal(t, "59 3/4", see[string](t, ctx, `document.getElementById("walls[1].width").value`))
}

func TestAFaultKeepsTheDrawingAndTheText(t *testing.T) {
	s := newSite(t)
	ctx := browse(t)
	steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), ready)
	before := see[string](t, ctx, `document.getElementById("drawing").innerHTML`)
	typeInto(t, ctx, "walls[1].width", "sixty")
	await(t, ctx, `document.querySelector(".faults a") !== null`)
	assert.Equal(t, "sixty", see[string](t, ctx, `document.getElementById("walls[1].width").value`))
	assert.True(t, see[bool](t, ctx, `document.getElementById("walls[1].width").hasAttribute("aria-invalid")`))
	assert.True(t, before == see[string](t, ctx, `document.getElementById("drawing").innerHTML`), "the drawing as it was")
	_, job := s.stored()
	assert.Equal(t, "59 7/8", job.Walls[1].Width)
}

func TestWithoutAServerThePageKeepsWhatWasTyped(t *testing.T) {
	s := newSite(t)
	ctx := browse(t)
	steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), ready)
	see[bool](t, ctx, `(() => { window.real = fetch; window.fetch = () => Promise.reject(new TypeError("gone")); return true })()`)
	typeInto(t, ctx, "joint", "3/16")
	await(t, ctx, `document.getElementById("status").textContent.startsWith("Not saved: the server")`)
	assert.Equal(t, "3/16", see[string](t, ctx, `document.getElementById("joint").value`))
	see[bool](t, ctx, `(() => { window.fetch = window.real; return true })()`)
	await(t, ctx, `document.getElementById("status").textContent === "Saved"`)
	_, job := s.stored()
	assert.Equal(t, "3/16", job.Joint.Plain)
}

func TestAStartIsDraggedNudgedAndReleased(t *testing.T) {
	file, err := os.ReadFile("../testdata/jobs/one-wall.json")
	require.NoError(t, err)
	s := newSiteOf(t, file)
	ctx := browse(t)
	pinned := func() survey.WallPin { _, job := s.stored(); return job.Pins.Walls["basin"] }
	steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1?wall=1"), chromedp.WaitVisible("#drawing svg"), ready)
	from := see[[]float64](t, ctx, `(() => { const r = document.querySelector("[data-handle=start]").getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)

	steps(t, ctx, chromedp.DragAndDropXY(from[0], from[1], from[0]+40, from[1], 5))
	await(t, ctx, `document.getElementById("status").textContent === "Saved" && document.querySelector(".card .pinned") !== null`)
	dragged := pinned()
	assert.NotEmpty(t, dragged.Joint+dragged.Tile)

	see[bool](t, ctx, `(() => { document.querySelector("[data-handle=start]").focus(); return true })()`)
	steps(t, ctx, chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
	await(t, ctx, `document.getElementById("status").textContent === "Saved"`)
	nudged := pinned()
	assert.NotEqual(t, dragged, nudged)
	assert.Equal(t, "start", see[string](t, ctx, `document.activeElement.dataset.handle`), "the handle keeps the focus")

	see[bool](t, ctx, `(() => { [...document.querySelectorAll("button")].find((b) => b.textContent === "Release the pin").click(); return true })()`)
	await(t, ctx, `document.querySelector(".card .pinned") === null`)
	assert.Empty(t, pinned())
	steps(t, ctx, chromedp.Click("#undo"))
	await(t, ctx, `document.querySelector(".card .pinned") !== null`)
	assert.Equal(t, nudged, pinned(), "one release, one step back")
}

func TestEscGivesUpADrag(t *testing.T) {
	file, err := os.ReadFile("../testdata/jobs/one-wall.json")
	require.NoError(t, err)
	s := newSiteOf(t, file)
	ctx := browse(t)
	before, _ := s.stored()
	steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), ready)
	// Both keys in one go: however slow the machine, no pause comes between them.
	moved := see[bool](t, ctx, `(() => {
		const handle = document.querySelector("[data-handle=course]");
		const press = (key) => handle.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
		handle.focus();
		press("ArrowUp");
		const moved = document.querySelector(".ghost, .handle.moved") !== null;
		press("Escape");
		return moved;
	})()`)
	assert.True(t, moved, "the arrow moved it")
	assert.False(t, see[bool](t, ctx, `document.querySelector(".ghost, .handle.moved") !== null`))
	after, _ := s.stored()
	assert.Equal(t, before.Revision, after.Revision)
}

// TestPictures takes a picture of every page at three widths into the folder
// named by SHOTS, for people to look at, and holds that no page is wider than
// its window.
func TestPictures(t *testing.T) {
	s := newSite(t)
	ctx := browse(t)
	for _, page := range []struct{ name, path string }{{"jobs", "/"}, {"bench", "/jobs/1"}, {"wall", "/jobs/1?wall=2"}, {"work", "/jobs/1/work"}, {"choices", "/jobs/1/choices"}, {"bathroom", "/jobs/1/bathroom"}} {
		for name, width := range map[string]int64{"1440": 1440, "768": 768, "390": 390, "320": 320} {
			steps(t, ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate(s.URL+page.path), chromedp.WaitVisible("#main"))
			over := see[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`)
			assert.LessOrEqual(t, over, 0.0, "%s at %s", page.name, name)
			if dir := os.Getenv("SHOTS"); dir != "" {
				shot, err := chromedp.Run(ctx, chromedp.FullScreenshot(100))
				require.NoError(t, err)
				require.NoError(t, os.WriteFile(filepath.Join(dir, page.name+"-"+name+".png"), shot, 0o600))
			}
		}
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
	s := newSiteOf(t, wall)
	ctx := browse(t)
	const found = `axe.run().then((r) => r.violations.map((v) => v.id + ": " + v.nodes.map((n) => n.target + " " + n.failureSummary).slice(0, 4).join("; ")))`
	for _, path := range []string{"/", "/jobs/1", "/jobs/1?wall=1", "/jobs/1?wall=1&piece=B-01-01", "/jobs/1/widths", "/jobs/1/work?cut=C1", "/jobs/1/choices", "/jobs/1/bathroom", "/nowhere"} {
		for _, width := range []int64{1440, 768, 390} {
			steps(t, ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate(s.URL+path), chromedp.WaitVisible("#main"))
			see[bool](t, ctx, `(() => { for (const d of document.querySelectorAll("details")) d.open = true; return true })()`)
			_, err := chromedp.Run(ctx, chromedp.Evaluate[bool](string(axe)+";true"))
			require.NoError(t, err)
			bad, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](found, chromedp.EvalAwaitPromise))
			require.NoError(t, err)
			assert.Empty(t, bad, "%s at %d", path, width)
		}
	}
}
