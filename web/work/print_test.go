package work_test

import (
	"coursewright/web/trial"

	"context"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

// shown tells whether anything that a selector names takes room on the page.
const shown = `(s) => [...document.querySelectorAll(s)].some((e) => e.getClientRects().length > 0)`

// media lays the page out for the screen or for paper.
func media(name string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: name})
		return err
	})
}

func TestPaperShowsNothingThatIsPressed(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	for path, wanted := range map[string]string{"/jobs/1": "#drawing svg", "/jobs/1/work": "#cut-schedule", "/jobs/1/choices": ".facts"} {
		trial.Steps(t, ctx, chromedp.Navigate(s.URL+path), chromedp.WaitVisible("#main"))
		assert.True(t, trial.See[bool](t, ctx, `(`+shown+`)("button, .button, input, .brand")`), "%s on the screen", path)
		trial.Steps(t, ctx, media("print"))
		assert.False(t, trial.See[bool](t, ctx, `(`+shown+`)("button.quiet:not(.starts *), .button, input, select, .brand, .handle")`), "%s on paper", path)
		assert.True(t, trial.See[bool](t, ctx, `(`+shown+`)("`+wanted+`")`), path)
		assert.True(t, trial.See[bool](t, ctx, `(`+shown+`)("h1")`), "%s names its job", path)
		trial.Steps(t, ctx, media("screen"))
	}
}

func TestACutAndItsPiecesMarkEachOther(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1/work"), chromedp.WaitVisible("#drawing svg"))
	trial.See[bool](t, ctx, `(() => { document.querySelector("#C1 td").click(); return true })()`)
	assert.Equal(t, trial.See[float64](t, ctx, `document.getElementById("C1").dataset.pieces.split(" ").length`),
		trial.See[float64](t, ctx, `document.querySelectorAll("#drawing .piece.selected").length`))
	trial.See[bool](t, ctx, `(() => { const id = document.getElementById("C3").dataset.pieces.split(" ")[2]; document.querySelector("#drawing .piece[data-piece='" + id + "']").dispatchEvent(new MouseEvent("click", { bubbles: true })); return true })()`)
	assert.Equal(t, "C3", trial.See[string](t, ctx, `document.querySelector("tr.selected").id`))
}
