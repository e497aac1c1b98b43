package bench_test

import (
	"testing"

	"coursewright/web/trial"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
)

// The map of a pattern's phases: a click pins start and line in one step, a drag shows
// what would come of it and pins where it ends, and Esc gives it up.
func TestAPhaseIsPinnedOnItsMap(t *testing.T) {
	ctx := trial.Browse(t)
	s := trial.OfFile(t, "hexagon")
	openAt(t, ctx, s, "/jobs/1")
	opened(t, ctx, "compare-starts")
	on := trial.See[[]float64](t, ctx, `(() => { const c = document.querySelector(".phases svg"); c.scrollIntoView({ block: "center" }); const r = c.getBoundingClientRect(); return [r.x + r.width * 0.4, r.y + r.height * 0.4] })()`)
	press := func() {
		trial.Steps(t, ctx, chromedp.MouseEvent(chromedp.MousePressed, on[0], on[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	}
	before, _ := s.Stored()
	press()
	moveTo(t, ctx, on[0]+20, on[1]-10)
	assert.True(t, trial.See[bool](t, ctx, `!!document.querySelector(".phase-mark")`))
	trial.Shot(t, ctx, "map-held")
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	release(t, ctx, on[0]+20, on[1]-10)
	assert.False(t, trial.See[bool](t, ctx, `!!document.querySelector(".phase-mark")`))
	given, _ := s.Stored()
	assert.Equal(t, before.Revision, given.Revision, "given up")

	press()
	release(t, ctx, on[0], on[1])
	trial.Await(t, ctx, status+` === "Saved"`)
	clicked, job := s.Stored()
	assert.Equal(t, before.Revision+1, clicked.Revision, "one click, one step")
	assert.NotEmpty(t, job.Pins.Course.Line)
	assert.NotEmpty(t, job.Pins.Walls["long"].Edge)
	trial.Shot(t, ctx, "map-pinned")

	focus(t, ctx, "#line-0")
	trial.See[bool](t, ctx, `(() => { const r = document.activeElement; r.stepUp(); for (const e of ["input", "change"]) r.dispatchEvent(new Event(e, { bubbles: true })); return true })()`)
	trial.Await(t, ctx, status+` === "Saved"`)
	_, moved := s.Stored()
	assert.NotEqual(t, job.Pins.Course.Line, moved.Pins.Course.Line)
	assert.Equal(t, job.Pins.Walls["long"].Edge, moved.Pins.Walls["long"].Edge)
}
