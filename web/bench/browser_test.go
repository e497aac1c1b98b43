package bench_test

import (
	"coursewright/web/trial"

	"os"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

func TestEditRedrawUndoReload(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/"), chromedp.Click("a.job"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	trial.Laid(t, ctx)
	before := trial.See[string](t, ctx, `document.getElementById("drawing").innerHTML`)

	trial.See[bool](t, ctx, `window.same = true`)
	trial.Type(t, ctx, "walls[1].width", "59 3/4")
	trial.Await(t, ctx, `document.getElementById("status").textContent === "Saved"`)
	_, job := s.Stored()
	assert.Equal(t, "59 3/4", job.Walls[1].Width, "said only after the commit")
	trial.Await(t, ctx, `document.getElementById("solved").textContent.startsWith("Solved. Smallest cut:")`)
	assert.True(t, before != trial.See[string](t, ctx, `document.getElementById("drawing").innerHTML`), "redrawn")
	assert.True(t, trial.See[bool](t, ctx, `window.same === true`), "without a reload")
	assert.Equal(t, "walls[1].width", trial.See[string](t, ctx, `document.activeElement.id`), "the focus stays")
	assert.Equal(t, "59 3/4", job.Walls[1].Base[0].Readings[2].At, "the reading at the end came along")

	trial.Steps(t, ctx, chromedp.Click("#undo"))
	trial.Await(t, ctx, `document.getElementById("walls[1].width").value === "59 7/8"`)
	assert.True(t, before == trial.See[string](t, ctx, `document.getElementById("drawing").innerHTML`), "the drawing as it was")
	trial.Steps(t, ctx, chromedp.Click("#redo"))
	trial.Await(t, ctx, `document.getElementById("walls[1].width").value === "59 3/4"`)
	trial.Steps(t, ctx, chromedp.Reload(), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	assert.Equal(t, "59 3/4", trial.See[string](t, ctx, `document.getElementById("walls[1].width").value`))
}

func TestAFaultKeepsTheDrawingAndTheText(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	trial.Laid(t, ctx)
	before := trial.See[string](t, ctx, `document.getElementById("drawing").innerHTML`)
	trial.Type(t, ctx, "walls[1].width", "sixty")
	trial.Await(t, ctx, `document.querySelector(".faults a") !== null`)
	assert.Equal(t, "sixty", trial.See[string](t, ctx, `document.getElementById("walls[1].width").value`))
	assert.True(t, trial.See[bool](t, ctx, `document.getElementById("walls[1].width").hasAttribute("aria-invalid")`))
	assert.True(t, before == trial.See[string](t, ctx, `document.getElementById("drawing").innerHTML`), "the drawing as it was")
	_, job := s.Stored()
	assert.Equal(t, "59 7/8", job.Walls[1].Width)
}

func TestWithoutAServerThePageKeepsWhatWasTyped(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	trial.See[bool](t, ctx, `(() => { window.real = fetch; window.fetch = () => Promise.reject(new TypeError("gone")); return true })()`)
	trial.Type(t, ctx, "joint", "3/16")
	trial.Await(t, ctx, `document.getElementById("status").textContent.startsWith("Not saved: the server")`)
	assert.Equal(t, "3/16", trial.See[string](t, ctx, `document.getElementById("joint").value`))
	trial.See[bool](t, ctx, `(() => { window.fetch = window.real; return true })()`)
	trial.Await(t, ctx, `document.getElementById("status").textContent === "Saved"`)
	_, job := s.Stored()
	assert.Equal(t, "3/16", job.Joint.Plain)
}

func TestAStartIsDraggedNudgedAndReleased(t *testing.T) {
	file, err := os.ReadFile("../../testdata/jobs/one-wall.json")
	require.NoError(t, err)
	s := trial.Of(t, file)
	ctx := trial.Browse(t)
	pinned := func() survey.WallPin { _, job := s.Stored(); return job.Pins.Walls["basin"] }
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1?wall=1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	opened(t, ctx, "compare-starts")
	from := trial.See[[]float64](t, ctx, `(() => { const r = document.querySelector("[data-handle=start]").getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)

	trial.Steps(t, ctx, chromedp.DragAndDropXY(from[0], from[1], from[0]+40, from[1], 5))
	trial.Await(t, ctx, `document.getElementById("status").textContent === "Saved" && document.querySelector(".card .pinned") !== null`)
	dragged := pinned()
	assert.NotEmpty(t, dragged.Joint+dragged.Tile)

	trial.See[bool](t, ctx, `(() => { document.querySelector("[data-handle=start]").focus(); return true })()`)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
	trial.Await(t, ctx, `document.getElementById("status").textContent === "Saved"`)
	nudged := pinned()
	assert.NotEqual(t, dragged, nudged)
	assert.Equal(t, "start", trial.See[string](t, ctx, `document.activeElement.dataset.handle`), "the handle keeps the focus")

	trial.See[bool](t, ctx, `(() => { [...document.querySelectorAll("button")].find((b) => b.textContent === "Release the pin").click(); return true })()`)
	trial.Await(t, ctx, `document.querySelector(".card .pinned") === null`)
	assert.Empty(t, pinned())
	trial.Steps(t, ctx, chromedp.Click("#undo"))
	trial.Await(t, ctx, `document.querySelector(".card .pinned") !== null`)
	assert.Equal(t, nudged, pinned(), "one release, one step back")
}

func TestEscGivesUpADrag(t *testing.T) {
	file, err := os.ReadFile("../../testdata/jobs/one-wall.json")
	require.NoError(t, err)
	s := trial.Of(t, file)
	ctx := trial.Browse(t)
	before, _ := s.Stored()
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	// Both keys in one go: however slow the machine, no pause comes between them.
	moved := trial.See[bool](t, ctx, `(() => {
		const handle = document.querySelector("[data-handle=course]");
		const press = (key) => handle.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
		handle.focus();
		press("Enter");
		press("ArrowUp");
		const moved = document.querySelector(".ghost, .handle.moved") !== null;
		press("Escape");
		return moved;
	})()`)
	assert.True(t, moved, "the arrow moved it")
	assert.False(t, trial.See[bool](t, ctx, `document.querySelector(".ghost, .handle.moved") !== null`))
	after, _ := s.Stored()
	assert.Equal(t, before.Revision, after.Revision)
}
