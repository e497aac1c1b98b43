package web_test

import (
	"context"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
)

func theSlider(t *testing.T, ctx context.Context) {
	s := newSiteOf(t, testdata(t, "one-wall.json"))
	openAt(t, ctx, s, "/jobs/1")
	before, _ := s.stored()
	drawn := see[string](t, ctx, `document.querySelector("#curve-0 svg").outerHTML`)
	focus(t, ctx, "#slide-0")
	see[bool](t, ctx, `(() => { const nudge = (n) => setTimeout(() => { const r = document.activeElement; r.stepUp();
		for (const e of ["input", "change"]) r.dispatchEvent(new Event(e, { bubbles: true })) }, 40 * n); [1, 2, 3].forEach(nudge); return true })()`)
	await(t, ctx, `document.querySelector("#curve-0 svg").outerHTML !== `+quote(drawn))
	await(t, ctx, status+` === "Saved"`)
	after, job := s.stored()
	assert.Equal(t, before.Revision+1, after.Revision)
	assert.NotEmpty(t, job.Pins.Walls["basin"])
	assert.Equal(t, "slide-0", see[string](t, ctx, `document.activeElement.id`))

	on := see[[]float64](t, ctx, `(() => { const c = document.querySelector("#curve-0"); c.scrollIntoView({ block: "center" }); const r = c.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	steps(t, ctx, chromedp.MouseEvent(chromedp.MousePressed, on[0], on[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	moveTo(t, ctx, on[0]+30, on[1])
	steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	moveTo(t, ctx, on[0]+40, on[1])
	release(t, ctx, on[0]+40, on[1])
	assert.Empty(t, see[string](t, ctx, status), "given up with the hand still down")
	steps(t, ctx, chromedp.MouseEvent(chromedp.MousePressed, on[0], on[1], chromedp.ButtonLeft, chromedp.ClickCount(1)))
	moveTo(t, ctx, on[0]+30, on[1])
	release(t, ctx, on[0]+30, on[1])
	await(t, ctx, status+` === "Saved"`)
	last, moved := s.stored()
	assert.Equal(t, after.Revision+1, last.Revision, "along the curve itself")
	assert.NotEqual(t, job.Pins, moved.Pins)
}
