package bench_test

import (
	"coursewright/web/trial"

	"context"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fingersOn makes the window a phone's, or a desk's again.
func fingersOn(t *testing.T, ctx context.Context, on bool) {
	t.Helper()
	_, err := chromedp.Run(ctx, chromedp.Func(func(ctx context.Context, tab *chromedp.Target) error {
		_, err := cdp.Call(ctx, tab, emulation.SetTouchEmulationEnabled, emulation.SetTouchEmulationEnabledParams{Enabled: on, MaxTouchPoints: 2})
		return err
	}))
	require.NoError(t, err)
}

// fingers puts fingers on the glass, or moves or lifts them.
func fingers(t *testing.T, ctx context.Context, what input.DispatchTouchEventType, at ...[2]float64) {
	t.Helper()
	var points []*input.TouchPoint
	for i, p := range at {
		id := float64(i)
		points = append(points, &input.TouchPoint{X: p[0], Y: p[1], ID: &id})
	}
	_, err := chromedp.Run(ctx, chromedp.Func(func(ctx context.Context, tab *chromedp.Target) error {
		_, err := cdp.Call(ctx, tab, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: what, TouchPoints: points})
		return err
	}))
	require.NoError(t, err)
}

func byFinger(t *testing.T, ctx context.Context) {
	s := trial.Of(t, trial.File(t, "one-wall.json"))
	fingersOn(t, ctx, true)
	defer fingersOn(t, ctx, false)
	openAt(t, ctx, s, "/jobs/1?wall=1")
	trial.Steps(t, ctx, chromedp.EmulateViewport(390, 800))
	trial.Await(t, ctx, `matchMedia("(max-width: 48rem)").matches && innerWidth === 390`)
	trial.Await(t, ctx, `Math.abs(document.querySelector("#drawing svg").getBoundingClientRect().width - document.getElementById("drawing").clientWidth) < 4`) // laid out for the phone by now
	before, _ := s.Stored()
	at := trial.See[[2]float64](t, ctx, `(() => { const h = document.querySelector('#drawing [data-handle="course"]'); h.scrollIntoView({ block: "center", inline: "center" }); const r = h.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	fingers(t, ctx, "touchStart", at)
	for i := 1; i < 6; i++ { // a browser that scrolls instead takes over after a few
		fingers(t, ctx, "touchMove", [2]float64{at[0], at[1] - float64(6*i)})
	}
	fingers(t, ctx, "touchEnd")
	trial.Await(t, ctx, status+` === "Saved"`)
	after, job := s.Stored()
	assert.Equal(t, before.Revision+1, after.Revision, "a finger drags")
	assert.NotEmpty(t, job.Pins.Course.Line)

	trial.See[bool](t, ctx, `(() => { document.getElementById("drawing").scrollIntoView(); return true })()`)
	wide := `document.querySelector("#drawing svg").getBoundingClientRect().width`
	trial.Await(t, ctx, `Math.abs(`+wide+` - document.getElementById("drawing").clientWidth) < 4`) // laid out for the phone by now
	fit := trial.See[float64](t, ctx, wide)
	mid := trial.See[[2]float64](t, ctx, `(() => { const r = document.getElementById("drawing").getBoundingClientRect(); return [r.x + r.width / 2, r.y + 150] })()`)
	two := func(apart float64) [][2]float64 {
		return [][2]float64{{mid[0] - apart, mid[1]}, {mid[0] + apart, mid[1]}}
	}
	fingers(t, ctx, "touchStart", two(30)...)
	fingers(t, ctx, "touchMove", two(45)...)
	fingers(t, ctx, "touchMove", two(60)...)
	fingers(t, ctx, "touchEnd")
	assert.InDelta(t, 2*fit, trial.See[float64](t, ctx, wide), 0.1*fit, "two fingers bring it nearer")
	assert.Equal(t, 1.0, trial.See[float64](t, ctx, `visualViewport.scale`), "the drawing, not the page")

	trial.See[bool](t, ctx, `document.querySelector('#drawing .piece[data-piece^="B-03-"]').dispatchEvent(new MouseEvent("click", { bubbles: true }))`)
	trial.Await(t, ctx, `document.querySelector("#card .piececard")?.dataset.piece.startsWith("B-03-")`)
	assert.Equal(t, "sticky", trial.See[string](t, ctx, `getComputedStyle(document.getElementById("card")).position`), "the card stands under the drawing")
}
