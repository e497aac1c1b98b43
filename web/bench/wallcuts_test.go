package bench_test

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/web/page"
	"coursewright/web/sheet"
	"coursewright/web/trial"
)

// Beside a single wall stand its cuts, each of them once; not beside all walls, and not beside the finish.
func TestTheCutsOfASingleWallStandBesideIt(t *testing.T) {
	s := trial.New(t)
	list := func(query string) string {
		_, page := s.Get("/jobs/1" + query)
		_, after, found := strings.Cut(page, `id="wallcuts"`)
		require.True(t, found)
		list, _, _ := strings.Cut(after, `<p class="hint scripted"`)
		return list
	}
	assert.NotContains(t, list(""), "<table")
	assert.NotContains(t, list("?wall=2&look=finish"), "<table")
	back := list("?wall=2")
	assert.Contains(t, back, "Cuts of this wall")

	_, job := s.Stored()
	plan, err := layout.Now(job)
	require.NoError(t, err)
	schedule := page.Schedule(plan)
	for i, w := range plan.Walls {
		cut, listed := map[string]bool{}, map[string]bool{}
		for _, c := range schedule.Cuts {
			cut[c.Piece] = true
		}
		for _, row := range sheet.WallCuts(plan, i, schedule) {
			assert.NotEmpty(t, row.Size)
			for _, id := range row.Pieces {
				assert.False(t, listed[id], id)
				listed[id] = true
			}
		}
		for _, p := range w.Pieces {
			assert.Equal(t, cut[p.ID], listed[p.ID], p.ID)
		}
	}
}

// A wall that needs all of its frame keeps it. Found on one ten feet wide with shelves, dishes and strips:
// beside the list the handles of two lay over each other.
func TestAWideWallKeepsItsFrame(t *testing.T) {
	s := trial.Of(t, fittedWall(t))
	_, page := s.Get("/jobs/1?wall=1")
	_, list, _ := strings.Cut(page, `id="wallcuts"`)
	list, _, _ = strings.Cut(list, `<p class="hint scripted"`)
	assert.NotContains(t, list, "<table")
}

// The list is shown where the frame has room, the drawing is laid out for what it leaves, and a row rings its pieces.
func TestTheListLeavesTheDrawingItsWidth(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/1?wall=2"), chromedp.WaitVisible("#wallcuts table"), trial.Ready)
	trial.Laid(t, ctx)
	trial.Await(t, ctx, `document.getElementById("drawing").getBoundingClientRect().right < document.querySelector("#wallcuts table").getBoundingClientRect().left`)
	assert.False(t, trial.See[bool](t, ctx, `document.getElementById("drawing").scrollHeight > document.getElementById("drawing").clientHeight + 1`), "all of the wall is seen")
	trial.Shot(t, ctx, "wallcuts")
	trial.Steps(t, ctx, chromedp.Click("#wallcuts tr[data-pieces] td"))
	trial.Await(t, ctx, `document.querySelectorAll("#drawing .rings path:not(.ground)").length === document.querySelector("#wallcuts tr.selected").dataset.pieces.split(" ").length`)
	trial.Steps(t, ctx, chromedp.EmulateViewport(768, 900))
	trial.Await(t, ctx, `document.getElementById("wallcuts").offsetWidth === 0`)
	trial.Laid(t, ctx)
}
