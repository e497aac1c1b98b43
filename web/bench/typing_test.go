package bench_test

import (
	"bytes"
	"compress/gzip"
	"context"
	"flag"
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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
