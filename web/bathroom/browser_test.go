package bathroom_test

import (
	"strconv"

	"coursewright/web/trial"

	"context"
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
)

func TestTheBathroomAtArmsLength(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	for _, width := range []int64{320, 390, 768, 1440} {
		for name, path := range map[string]string{"first": "/jobs/1/bathroom", "set-out": "/jobs/1/bathroom?set-out", "base": "/jobs/1/bathroom?piece=B-06-03", "whole": "/jobs/1/bathroom?piece=B-08-03", "end": "/jobs/1/bathroom?piece=B-09-01", "pipe": "/jobs/1/bathroom?piece=L-16-04"} {
			trial.Steps(t, ctx, chromedp.EmulateViewport(width, 640), chromedp.Navigate(s.URL+path), chromedp.WaitVisible("#main"))
			trial.Shot(t, ctx, "bathroom-"+name+"-"+strconv.Itoa(int(width)))
			assert.LessOrEqual(t, trial.See[float64](t, ctx, `document.documentElement.scrollWidth - innerWidth`), 0.0, "%s at %d", name, width)
			small := trial.See[[]string](t, ctx, `[...document.querySelectorAll("details")].forEach((d) => d.open = true), [...document.querySelectorAll("a:not(.skip), button, summary")].filter((e) => e.checkVisibility()).map((e) => [e, e.getBoundingClientRect()]).filter(([, r]) => r.width < 44 || r.height < 44).map(([e, r]) => e.outerHTML.slice(0, 80) + r.width + "x" + r.height)`)
			assert.Empty(t, small, "targets of 44 px and more")
			trial.Shot(t, ctx, "bathroom-"+name+"-open-"+strconv.Itoa(int(width)))
		}
	}
}

func TestTheBathroomByTouchAndByKeys(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(320, 568), chromedp.Navigate(s.URL+"/jobs/1/bathroom"), chromedp.WaitVisible(".thumb .set"))
	first := trial.See[string](t, ctx, `document.querySelector(".which strong").textContent`)
	low := trial.See[bool](t, ctx, `[...document.querySelectorAll(".thumb a, .thumb button")].every((e) => { const r = e.getBoundingClientRect(); return r.height >= 56 && r.top > innerHeight / 2 && r.bottom <= innerHeight })`)
	assert.True(t, low, "all that is tapped again and again is within reach of a thumb")
	at := trial.See[[]float64](t, ctx, `(() => { const r = document.querySelector(".thumb .set").getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2] })()`)
	trial.Steps(t, ctx, chromedp.MouseClickXY(at[0], at[1]), chromedp.WaitVisible(".thumb .tick"))
	ticks := ticked(s)
	assert.NotEmpty(t, ticks)
	trial.Steps(t, ctx, chromedp.MouseClickXY(at[0], at[1]), chromedp.MouseClickXY(at[0], at[1]))
	assert.Equal(t, first, trial.See[string](t, ctx, `document.querySelector(".which strong").textContent`), "a second tap does nothing")
	assert.Equal(t, ticks, ticked(s))

	trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowRight), chromedp.WaitVisible(`.thumb a[rel="prev"]`))
	assert.NotEqual(t, first, trial.See[string](t, ctx, `document.querySelector(".which strong").textContent`))
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowLeft), chromedp.WaitVisible(".thumb .set-out"))
	assert.Equal(t, first, trial.See[string](t, ctx, `document.querySelector(".which strong").textContent`))
	assert.Equal(t, ticks, ticked(s))
}

// swipe moves one finger over the page.
func swipe(t *testing.T, ctx context.Context, selector string, dx, dy int) {
	t.Helper()
	trial.See[bool](t, ctx, fmt.Sprintf(`(() => {
		const target = document.querySelector(%q);
		const at = (x, y) => new Touch({ identifier: 1, target, clientX: x, clientY: y });
		target.dispatchEvent(new TouchEvent("touchstart", { bubbles: true, touches: [at(200, 200)], changedTouches: [at(200, 200)] }));
		target.dispatchEvent(new TouchEvent("touchend", { bubbles: true, touches: [], changedTouches: [at(%d, %d)] }));
		return true;
	})()`, selector, 200+dx, 200+dy))
}

func TestASwipeTurnsThePageAndASlipDoesNot(t *testing.T) {
	s := trial.OfFile(t, "toy")
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(390, 844), chromedp.Navigate(s.URL+"/jobs/1/bathroom"), chromedp.WaitVisible(".thumb .set"))
	trial.See[bool](t, ctx, `window.turned = 0, document.querySelector('.thumb a[rel="next"]').addEventListener("click", (e) => { window.turned++; e.preventDefault() }), true`)
	for _, slip := range [][2]int{{-60, 0}, {-120, 80}, {0, -300}, {120, 0}} {
		swipe(t, ctx, "main", slip[0], slip[1])
	}
	swipe(t, ctx, ".thumb .set", -200, 0)
	assert.Zero(t, trial.See[int](t, ctx, `window.turned`), "a slip, a scroll, back from the first, a thumb on the buttons")
	swipe(t, ctx, "main", -150, 20)
	assert.Equal(t, 1, trial.See[int](t, ctx, `window.turned`))
	assert.Empty(t, ticked(s))
}
