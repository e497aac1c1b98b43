package bench_test

import (
	"context"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/trial"
)

// Every piece that is folded out of a wall, in a niche, round a window or on a top, has a
// card of its own and a row in the list, with and without a script.
func TestFoldedPiecesHaveCards(t *testing.T) {
	for _, file := range [][]byte{trial.File(t, "bench.json"), insideJob(t)} {
		s := trial.Of(t, file)
		job, err := survey.Read(file)
		require.NoError(t, err)
		p, err := layout.Now(job)
		require.NoError(t, err)
		seen := 0
		for i := range p.Walls {
			w := &p.Walls[i]
			for _, f := range w.Folded() {
				_, list := s.Get("/jobs/1/pieces?wall=" + string(rune('1'+i)))
				for _, q := range f.Pieces {
					seen++
					_, card := s.Get("/jobs/1/piece/" + q.ID)
					require.Contains(t, card, `data-piece="`+q.ID+`"`)
					assert.Contains(t, card, f.Name()+", ", q.ID)
					if !q.Whole {
						assert.Regexp(t, `/work\?cut=`, card, q.ID)
					}
					assert.Contains(t, list, `id="row-`+q.ID+`"`)
				}
			}
			for _, q := range w.AllTrim() {
				_, card := s.Get("/jobs/1/piece/" + q.ID)
				require.Contains(t, card, `data-piece="`+q.ID+`"`)
			}
		}
		assert.Greater(t, seen, 10)
	}
	s := trial.OfFile(t, "bench")
	_, card := s.Get("/jobs/1/piece/B-T-01")
	for _, want := range []string{"seat of bench, row 1 from the front", "mitred front at 45°, the face stays full"} {
		assert.Contains(t, card, want)
	}
	_, card = s.Get("/jobs/1/piece/T-C-T-01")
	assert.Contains(t, card, "curb, back")
	_, page := s.Get("/jobs/1?piece=B-T-01")
	assert.Contains(t, page, "row 1 from the front", "by address")
}

// What is folded out is walked over with the keys as walls are, from a tab stop of its own,
// and shows its cards beside it.
func TestFoldedPiecesAreReached(t *testing.T) {
	ctx := trial.Browse(t)
	s := trial.OfFile(t, "bench")
	openAt(t, ctx, s, "/jobs/1?wall=4")
	assert.Equal(t, 1, trial.See[int](t, ctx, stops+`("#insides")`), "one for the seat")
	trial.See[bool](t, ctx, `document.querySelector('#insides [data-piece="B-T-01"]').dispatchEvent(new MouseEvent("click", { bubbles: true }))`)
	trial.Await(t, ctx, `document.querySelector("#card .piececard")?.dataset.piece === "B-T-01"`)
	assert.Equal(t, 1, trial.See[int](t, ctx, `document.querySelectorAll("#insides .rings path:not(.ground)").length`))
	trial.Shot(t, ctx, "top-card")
	assert.True(t, trial.See[bool](t, ctx, `(() => {
		const card = document.querySelector("#card .piececard").getBoundingClientRect(), at = document.querySelector('#insides [data-piece="B-T-01"]').getBoundingClientRect();
		return card.bottom > 0 && card.top < innerHeight && (card.left >= at.right || card.right <= at.left || card.top >= at.bottom || card.bottom <= at.top) })()`), "seen, and not over its piece")
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.ArrowUp))
	next := trial.See[string](t, ctx, there)
	assert.NotEqual(t, "B-T-01", next)
	trial.Await(t, ctx, `document.querySelector("#card .piececard")?.dataset.piece === `+trial.Quote(next))
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Enter))
	trial.Await(t, ctx, `document.activeElement.matches("#card .piececard")`)
	trial.Steps(t, ctx, chromedp.KeyEvent(kb.Escape))
	trial.Await(t, ctx, `!document.querySelector("#card .piececard")`)
	assert.Equal(t, next, trial.See[string](t, ctx, there), "back on the piece")
	foldsAreWalked(t, ctx, s)
}

// foldsAreWalked tells whether the arrow keys reach every piece of every fold.
func foldsAreWalked(t *testing.T, ctx context.Context, s trial.Site) {
	for wall, s := range map[string]trial.Site{"4": s, "1": trial.Of(t, insideJob(t))} {
		openAt(t, ctx, s, "/jobs/1?wall="+wall)
		found, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](reached("#insides svg", "[role=option][data-piece]"), chromedp.EvalAwaitPromise))
		require.NoError(t, err)
		assert.Empty(t, found[1:], "of %s pieces", found[0])
		assert.NotEqual(t, "0", found[0])
		assert.Empty(t, trial.See[[]string](t, ctx, `[...document.querySelectorAll("#insides [role=option][data-piece]")]
	.filter((i) => !i.getAttribute("aria-label").startsWith(i.dataset.piece)).map((i) => i.dataset.piece)`), "pieces that are not named first")
	}
}
