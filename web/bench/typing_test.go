package bench_test

import (
	"bytes"
	"compress/gzip"
	"context"
	"flag"
	"fmt"
	"net/http"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/trial"
)

// A long run: go test ./web/bench -run TypingToPainted -v -typing 50
var typing = flag.Int("typing", 0, "how many keys TestTypingToPainted measures")

// typed types a width, as one key, and tells how many milliseconds later the frame with the new
// drawing is out.
const typed = `(async (text) => {
	const box = document.getElementById("walls[0].width");
	box.focus();
	const painted = new Promise((done) => document.addEventListener("redrawn", () => requestAnimationFrame(() => {
		const after = new MessageChannel();
		after.port1.onmessage = () => done(performance.now());
		after.port2.postMessage(0);
	}), { once: true }));
	const key = performance.now();
	box.value = text;
	box.dispatchEvent(new Event("input", { bubbles: true }));
	return await painted - key;
})`

// TestTypingToPainted types widths in a real browser and prints how long the new drawing took. Every
// width is solved before it counts, so that it measures all but the solver: the form read, the
// answer made, sent and taken in, and the drawing painted.
func TestTypingToPainted(t *testing.T) {
	if *typing == 0 {
		t.Skip("only where -typing says how many keys to measure")
	}
	ctx, cancel := context.WithTimeout(t.Context(), 10*trial.Patience)
	t.Cleanup(cancel)
	ctx = trial.Chromium(t, ctx)
	for job, widths := range map[string][]string{"alcove": {"35 1/4", "35 3/8", "35 1/2", "35 1/8"}, "mosaic": {"59", "58 7/8", "59 1/8", "58 3/4"}} {
		s := trial.Solving(t, trial.File(t, job+".json"), trial.Once())
		trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
		var ms []float64
		for i := range *typing + 2*len(widths) {
			took, err := chromedp.Run(ctx, chromedp.Evaluate[float64](fmt.Sprintf(`%s(%q)`, typed, widths[i%len(widths)]), chromedp.EvalAwaitPromise))
			require.NoError(t, err)
			trial.Await(t, ctx, status+` === "Saved"`)
			if i >= 2*len(widths) {
				ms = append(ms, took)
			}
			time.Sleep(20 * time.Millisecond) // a person's next key
		}
		slices.Sort(ms)
		t.Logf("from a key to painted, %d keys in %s, solved before: p50 %.0f ms, p95 %.0f ms", len(ms), job, ms[len(ms)/2], ms[len(ms)*95/100])
	}
}

// The first digit of a size makes a room of far more pieces than the whole of it. Nothing of it is solved
// while the person types on, and the last drawing stays; who pauses at it gets what it says, because a
// mosaic may well be meant. With the second digit the drawing follows at once.
func TestTheFirstDigitOfASizeIsDrawnOnlyAfterAPause(t *testing.T) {
	var mu sync.Mutex
	solved := map[string]int{} // by the width of the tile as it was typed
	s := trial.Solving(t, static.Demo, func(ctx context.Context, job survey.Job) (layout.Plan, error) {
		mu.Lock()
		solved[job.Tile.Width]++
		mu.Unlock()
		return layout.Quick(ctx, job)
	})
	times := func(width string) int {
		mu.Lock()
		defer mu.Unlock()
		return solved[width]
	}
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	const said = `document.getElementById("tile.width-said").textContent`
	trial.See[bool](t, ctx, `(window.first = document.querySelector("#paper .wall"), document.addEventListener("later", () => { window.later = true }), true)`)
	trial.Type(t, ctx, "tile.width", "1")
	trial.Await(t, ctx, said+`.includes("25.4")`) // how it is understood is said at once
	trial.Await(t, ctx, `window.later === true`)
	assert.Zero(t, times("1"), "nobody has paused yet")
	assert.True(t, trial.See[bool](t, ctx, `window.first.isConnected`), "the last drawing stays")
	trial.Steps(t, ctx, chromedp.KeyEvent("2"))
	trial.Await(t, ctx, `!window.first.isConnected`)
	assert.Positive(t, times("12"))
	trial.Await(t, ctx, status+` === "Saved"`)
	assert.Zero(t, times("1"))
	_, job := s.Stored()
	assert.Equal(t, "12", job.Tile.Width)
	trial.Type(t, ctx, "tile.width", "1")
	trial.Await(t, ctx, status+` === "Saved"`)
	_, job = s.Stored()
	assert.Equal(t, "1", job.Tile.Width, "who stays at it means it")
	assert.Positive(t, times("1"))
	trial.Type(t, ctx, "tile.width", "2")
	trial.Steps(t, ctx, chromedp.KeyEvent("\t"))
	trial.Await(t, ctx, status+` === "Saved"`)
	_, job = s.Stored()
	assert.Equal(t, "2", job.Tile.Width)
}

// The page of the alcove is under 80 kB as it is sent over a network.
func TestThePageIsLightAsSent(t *testing.T) {
	s := trial.OfFile(t, "alcove")
	_, page := s.Get("/jobs/1")
	var packed bytes.Buffer
	w, err := gzip.NewWriterLevel(&packed, 5)
	require.NoError(t, err)
	_, _ = w.Write([]byte(page))
	require.NoError(t, w.Close())
	t.Logf("%d bytes, %d as sent", len(page), packed.Len())
	assert.Less(t, packed.Len(), 80_000)
}

// A distance from the corner stays as it was typed once it is saved and the box is left: the job, which has it from the
// other end, wrote it anew, "16" for "1' 4".
func TestADistanceFromTheCornerStaysAsTyped(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	at := func() string {
		_, job := s.Stored()
		return job.Walls[0].Openings[1].At
	}
	trial.Type(t, ctx, "walls[0].openings[1].at", "1' 4")
	assert.Eventually(t, func() bool { return at() == "19 1/4" }, trial.Patience, 20*time.Millisecond)
	trial.Type(t, ctx, "walls[1].width", "59 3/4")
	trial.Await(t, ctx, `document.getElementById("undo").textContent.includes("width of back")`)
	assert.Equal(t, "1' 4", trial.See[string](t, ctx, `document.getElementById("walls[0].openings[1].at").value`))
	assert.Equal(t, "19 1/4", at())
}

// A box that has the focus and was not typed in takes over what another window has changed there: left as it was, the
// next edit would put it back, and nobody would be asked.
func TestABoxThatOnlyHasTheFocusTakesWhatAnotherWindowChanged(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	answer, page := s.Post("/jobs/1", s.With("walls[1].width", "59 5/8"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	trial.See[bool](t, ctx, `(() => { const type = (id, text) => { const b = document.getElementById(id); b.value = text; b.dispatchEvent(new Event("input", { bubbles: true })); };
		const other = document.getElementById("walls[1].width"); for (let d = other.closest("details"); d; d = d.parentElement.closest("details")) d.open = true;
		type("walls[0].width", "35 3/8"); other.focus(); return document.activeElement === other })()`)
	trial.Await(t, ctx, `document.getElementById("status").textContent.startsWith("Saved, together")`)
	assert.Equal(t, "59 5/8", trial.See[string](t, ctx, `document.getElementById("walls[1].width").value`))
}
