package bench_test

import (
	"coursewright/web/trial"

	"flag"
	"fmt"
	"slices"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// A long run: go test ./web -run TypingToPainted -v -typing 50
var typing = flag.Int("typing", 0, "how many edits TestTypingToPainted measures")

// watch notes for every redraw how long ago the last key and the request were, once the frame with
// the new drawing is out.
const watch = `(() => {
	window.took = [];
	let key = 0, sent = 0;
	const real = window.fetch;
	window.fetch = (url, ...rest) => { if (!String(url).includes("/look")) sent = performance.now(); return real(url, ...rest); };
	addEventListener("input", () => { key = performance.now(); }, true);
	document.addEventListener("redrawn", () => requestAnimationFrame(() => {
		const after = new MessageChannel();
		after.port1.onmessage = () => { const now = performance.now(); took.push([now - key, now - sent]); };
		after.port2.postMessage(0);
	}));
	return true;
})()`

// TestTypingToPainted types widths into the demo in a real browser and prints how long the new
// drawing took: solved, saved and painted.
func TestTypingToPainted(t *testing.T) {
	if *typing == 0 {
		t.Skip("only where -typing says how many edits to measure")
	}
	s := trial.New(t)
	ctx := trial.Chromium(t, t.Context())
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"))
	trial.See[bool](t, ctx, watch)
	for i := range *typing {
		trial.Type(t, ctx, "walls[1].width", []string{"59 3/4", "59 7/8", "60", "59 5/8"}[i%4])
		trial.Await(t, ctx, fmt.Sprintf("window.took.length > %d", i))
	}
	took := trial.See[[][]float64](t, ctx, "took")
	require.GreaterOrEqual(t, len(took), *typing)
	pause, err := chromedp.Run(ctx, chromedp.Evaluate[float64](`import("/static/save.js").then((m) => m.PAUSE)`, chromedp.EvalAwaitPromise))
	require.NoError(t, err)
	for i, what := range []string{"from the last key", "from sending"} {
		var ms []float64
		for _, one := range took {
			ms = append(ms, one[i])
		}
		slices.Sort(ms)
		t.Logf("%s to painted, %d edits of the demo: p50 %.0f ms, p95 %.0f ms (the page waits %.0f ms for the next key)",
			what, len(ms), ms[len(ms)/2], ms[len(ms)*95/100], pause)
	}
	_, job := s.Stored()
	require.NotEmpty(t, job.Walls[1].Width)
}
