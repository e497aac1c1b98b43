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
	assert.Equal(t, "Put back as it was", trial.See[string](t, ctx, status), "given up with the hand still down")
	trial.Steps(t, ctx, chromedp.MouseEvent(chromedp.MousePressed, on[0], on[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	moveTo(t, ctx, on[0]+30, on[1])
	release(t, ctx, on[0]+30, on[1])
	trial.Await(t, ctx, status+` === "Saved"`)
	last, moved := s.Stored()
	assert.Equal(t, after.Revision+1, last.Revision, "along the curve itself")
	assert.NotEqual(t, job.Pins, moved.Pins)
}

// On a phone a slide curve stands in the window with texts that can be read, and says where the
// wall starts as everything else does: by what is struck.
func TestASlideCurveOnAPhone(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	for _, width := range []int64{390, 320} {
		trial.Steps(t, ctx, chromedp.EmulateViewport(width, 844))
		openAt(t, ctx, s, "/jobs/1?wall=2")
		opened(t, ctx, "compare-starts")
		trial.Await(t, ctx, `document.querySelector(".slide svg") !== null`)
		assert.LessOrEqual(t, trial.See[float64](t, ctx, `document.querySelector(".curve").scrollWidth - document.querySelector(".curve").clientWidth`), 0.0, "%d", width)
		assert.GreaterOrEqual(t, trial.See[float64](t, ctx, `Math.min(...[...document.querySelectorAll(".slide svg text")].map((e) => e.getBoundingClientRect().height))`), 11.0, "%d", width)
		starts := trial.See[[]string](t, ctx, `[document.querySelector("[id^=start-is-]").firstChild.textContent, document.querySelector("output[for^=slide-]").textContent,
			...[...document.querySelectorAll(".slide svg text")].map((e) => e.textContent).filter((t) => t.startsWith("START"))].map((t) => /START [^"]*"/.exec(t)[0])`)
		assert.Equal(t, []string{`START 27"`, `START 27"`, `START 27"`}, starts, "%d", width)
		trial.See[bool](t, ctx, `(() => { const r = document.querySelector("[data-pin]"); r.stepUp(); r.dispatchEvent(new Event("input", { bubbles: true })); return true })()`)
		assert.Equal(t, "START 27 1/16″", trial.See[string](t, ctx, `document.querySelector("output[for^=slide-]").textContent`), "%d", width)
	}
}
