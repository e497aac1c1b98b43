package bench_test

import (
	"context"
	"math"
	"strconv"
	"testing"

	"coursewright/layout/length"
	"coursewright/web/trial"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// onMap is where parts of the width and height of the map's field lie in the window.
func onMap(t *testing.T, ctx context.Context, across, up float64) [2]float64 {
	t.Helper()
	at := trial.See[[]float64](t, ctx, `(() => { const m = document.querySelector(".phases"), r = m.querySelector("svg").getBoundingClientRect();
		const [left, top, right, foot] = m.dataset.field.split(" ").map(Number);
		return [r.x + r.width * left, r.x + r.width * right, r.y + r.height * foot, r.y + r.height * top] })()`)
	return [2]float64{at[0] + (at[1]-at[0])*across, at[2] + (at[3]-at[2])*up}
}

// mapShows waits until the map stands in the window, without moving any more.
func mapShows(t *testing.T, ctx context.Context) {
	t.Helper()
	opened(t, ctx, "compare-starts")
	trial.See[bool](t, ctx, `(() => { document.querySelector(".phases svg").scrollIntoView({ block: "center" }); return true })()`)
	trial.Await(t, ctx, `(() => { const r = document.querySelector(".phases svg").getBoundingClientRect(); return r.width > 200 && r.top >= 0 && r.bottom <= innerHeight && r.left >= 0 && r.right <= innerWidth })()`)
}

// asked is the start and the line, in steps of the tape, of the field of the map that stands there: what its colour
// tells of.
func asked(t *testing.T, ctx context.Context, across, up float64) [2]float64 {
	t.Helper()
	of := trial.See[[]float64](t, ctx, `(() => { const d = document.querySelector(".phases").dataset; return [d.edge, d.across, d.wide, d.line, d.up, d.high].map(Number) })()`)
	field := func(from, one, all, x float64) float64 { return from + one*math.Floor(x*all/one) }
	return [2]float64{field(of[0], of[1], of[2], across), field(of[3], of[4], of[5], up)}
}

// pinnedAt holds start and line of a job in millimetres to what was asked for, to the mark of the tape.
func pinnedAt(t *testing.T, s trial.Site, want [2]float64) {
	t.Helper()
	_, job := s.Stored()
	for i, text := range []string{job.Pins.Walls["long"].Edge, job.Pins.Course.Line} {
		l, err := length.Parse(text, length.Metric)
		require.NoError(t, err)
		assert.InDelta(t, want[i], float64(l)/float64(length.Millimetre), 0.51, "start, then line")
	}
}

// The map is dragged by the mouse on a desk and by a finger on a phone: the mark goes with the
// hand, the drawing follows, and what is let go is pinned where it was.
func TestAPhaseIsDraggedOnItsMap(t *testing.T) {
	ctx := trial.Browse(t)
	s := trial.OfFile(t, "hexagon")
	openAt(t, ctx, s, "/jobs/1")
	mapShows(t, ctx)
	before, _ := s.Stored()
	drawn := trial.See[string](t, ctx, paper)
	from, to, want := onMap(t, ctx, 0.3, 0.3), onMap(t, ctx, 0.7, 0.6), asked(t, ctx, 0.7, 0.6)
	trial.Steps(t, ctx, chromedp.MouseEvent(chromedp.MousePressed, from[0], from[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	for i := 1.0; i <= 5; i++ {
		moveTo(t, ctx, from[0]+(to[0]-from[0])*i/5, from[1]+(to[1]-from[1])*i/5)
	}
	mark := trial.See[[]float64](t, ctx, `(() => { const r = document.querySelector(".phase-mark").getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	assert.InDelta(t, to[0], mark[0], 1.5)
	assert.InDelta(t, to[1], mark[1], 1.5)
	trial.Await(t, ctx, paper+" !== "+strconv.Quote(drawn))
	trial.Shot(t, ctx, "map-drag-1440")
	release(t, ctx, to[0], to[1])
	trial.Await(t, ctx, status+` === "Saved"`)
	after, _ := s.Stored()
	assert.Equal(t, before.Revision+1, after.Revision, "one drag, one step")
	pinnedAt(t, s, want)

	fingersOn(t, ctx, true)
	defer fingersOn(t, ctx, false)
	trial.Steps(t, ctx, chromedp.EmulateViewport(390, 844), chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	mapShows(t, ctx)
	assert.LessOrEqual(t, trial.See[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`), 0.0)
	from, to, want = onMap(t, ctx, 0.6, 0.7), onMap(t, ctx, 0.25, 0.4), asked(t, ctx, 0.25, 0.4)
	fingers(t, ctx, "touchStart", from)
	for i := 1.0; i <= 6; i++ { // a browser that scrolls instead takes over after a few
		fingers(t, ctx, "touchMove", [2]float64{from[0] + (to[0]-from[0])*i/6, from[1] + (to[1]-from[1])*i/6})
	}
	trial.Shot(t, ctx, "map-drag-390")
	fingers(t, ctx, "touchEnd")
	trial.Await(t, ctx, status+` === "Saved"`)
	last, _ := s.Stored()
	assert.Equal(t, after.Revision+1, last.Revision, "a finger drags, the page does not scroll")
	pinnedAt(t, s, want)
}
