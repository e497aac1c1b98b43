package bench_test

import (
	"coursewright/web/trial"

	"context"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
)

func theSlider(t *testing.T, ctx context.Context) {
	s := trial.Of(t, trial.File(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1")
	before, _ := s.Stored()
	opened(t, ctx, "compare-starts")
	drawn := trial.See[string](t, ctx, `document.querySelector("#curve-0 svg").outerHTML`)
	focus(t, ctx, "#slide-0")
	trial.See[bool](t, ctx, `(() => { const nudge = (n) => setTimeout(() => { const r = document.activeElement; r.stepUp();
		for (const e of ["input", "change"]) r.dispatchEvent(new Event(e, { bubbles: true })) }, 40 * n); [1, 2, 3].forEach(nudge); return true })()`)
	trial.Await(t, ctx, `document.querySelector("#curve-0 svg").outerHTML !== `+trial.Quote(drawn))
	trial.Await(t, ctx, status+` === "Saved"`)
	after, job := s.Stored()
	assert.Equal(t, before.Revision+1, after.Revision)
	assert.NotEmpty(t, job.Pins.Walls["basin"])
	assert.Equal(t, "slide-0", trial.See[string](t, ctx, `document.activeElement.id`))

	on := trial.See[[]float64](t, ctx, `(() => { const c = document.querySelector("#curve-0"); c.scrollIntoView({ block: "center" }); const r = c.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	trial.Steps(t, ctx, chromedp.MouseEvent(chromedp.MousePressed, on[0], on[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	moveTo(t, ctx, on[0]+30, on[1])
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	moveTo(t, ctx, on[0]+40, on[1])
	release(t, ctx, on[0]+40, on[1])
	assert.Empty(t, trial.See[string](t, ctx, status), "given up with the hand still down")
	trial.Steps(t, ctx, chromedp.MouseEvent(chromedp.MousePressed, on[0], on[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	moveTo(t, ctx, on[0]+30, on[1])
	release(t, ctx, on[0]+30, on[1])
	trial.Await(t, ctx, status+` === "Saved"`)
	last, moved := s.Stored()
	assert.Equal(t, after.Revision+1, last.Revision, "along the curve itself")
	assert.NotEqual(t, job.Pins, moved.Pins)
}
