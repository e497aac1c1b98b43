package bench_test

import (
	"context"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"

	"coursewright/web/trial"
)

// Who goes over the page with the keys sees where he is and leaves nothing open behind him.
func TestTheKeysPassBy(t *testing.T) {
	ctx := trial.Browse(t)
	for name, try := range map[string]func(*testing.T, context.Context){
		"a card goes with them":                cardPasses,
		"they lead on from a card":             onFromTheCard,
		"no head covers a step that they open": stepInSight,
	} {
		t.Run(name, func(t *testing.T) { try(t, ctx) })
	}
}

const carded = `(document.querySelector("#card .piececard")?.dataset.piece ?? "none")`

func cardPasses(t *testing.T, ctx context.Context) {
	openAt(t, ctx, trial.OfFile(t, "toy"), "/jobs/1?wall=1")
	tabInto := func() {
		trial.See[bool](t, ctx, `(document.querySelector("[data-zoom=in]").focus(), true)`)
		trial.Steps(t, ctx, chromedp.KeyEvent(kb.Tab))
		trial.Await(t, ctx, carded+` === `+there+` && `+carded+` !== "none"`)
	}
	leave := `(document.querySelector("#survey summary").focus(), ` + carded + `)`
	tabInto()
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowRight))
	trial.Await(t, ctx, carded+` === `+there)
	assert.Equal(t, "none", trial.See[string](t, ctx, leave))
	assert.Equal(t, "?wall=1", trial.See[string](t, ctx, `location.search`), "nothing is selected any more")
	tabInto()
	picked := trial.See[string](t, ctx, carded)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Enter))
	assert.Equal(t, picked, trial.See[string](t, ctx, leave), "what Enter has picked stays")
}

func onFromTheCard(t *testing.T, ctx context.Context) {
	openAt(t, ctx, trial.OfFile(t, "toy"), "/jobs/1?wall=1&piece=W-01-01")
	trial.See[bool](t, ctx, `(document.querySelector('[data-piece="W-01-01"]').focus(), true)`)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Enter))
	trial.Await(t, ctx, `document.activeElement.matches(".piececard")`)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowRight))
	trial.Await(t, ctx, carded+` === "W-01-02" && `+there+` === "W-01-02"`)
}

// A step that is opened at the foot of the survey comes up under its head, not behind it.
func stepInSight(t *testing.T, ctx context.Context) {
	openAt(t, ctx, trial.New(t), "/jobs/1?wall=1")
	step := func(n string) string { return `document.querySelectorAll("#survey details.step")[` + n + `]` }
	trial.See[bool](t, ctx, `(`+step("2")+`.open = true, `+step("3")+`.querySelector("summary").focus(), true)`)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Enter))
	trial.Await(t, ctx, step("3")+`.open`)
	trial.Await(t, ctx, `(() => { const top = document.activeElement.getBoundingClientRect().top; return top >= document.querySelector(".survey-head").getBoundingClientRect().bottom && top < innerHeight / 2 })()`)
}
