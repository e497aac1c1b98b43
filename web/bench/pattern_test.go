package bench_test

import (
	"net/http"
	"strconv"
	"testing"

	"coursewright/web/trial"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A bond is picked on the bench, with what it needs; sizes that do not close come back
// with those that would, and the drawing stays.
func TestAPatternIsPickedOnTheBench(t *testing.T) {
	s := trial.OfFile(t, "one-wall")
	posted := s.With("bond.kind", "herringbone", "tile.width", "6", "tile.height", "3")
	answer, _ := s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.Stored()
	assert.Equal(t, "herringbone", job.Bond.Kind)
	assert.Empty(t, job.Bond.Offset)
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, `<option value="herringbone" selected>herringbone</option>`)
	assert.Contains(t, page, `name="bond.turn"`)
	assert.Contains(t, page, "Least cut over the ")
	_, page = s.Get("/jobs/1/told")
	assert.Contains(t, page, "Map of the ", "in place of the slide curve")

	posted = s.With("bond.kind", "basket weave")
	answer, page = s.Post("/jobs/1", posted)
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, "side by side with their joints")
	assert.Contains(t, page, `name="bond.tiles[0].width"`, "the dot is asked for")
	_, job = s.Stored()
	assert.Equal(t, "herringbone", job.Bond.Kind, "nothing was saved")
	assert.Contains(t, page, "Use a tile of 6 1/8 × 3", "what would close is one press away")
	assert.Contains(t, page, "choice: herringbone, 1/8&#34; joint", "the frame says what is drawn")

	posted.Set("do", trial.Button(t, page, "fit bond"))
	answer, _ = s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job = s.Stored()
	assert.Equal(t, []string{"basket weave", "6 1/8", "3"}, []string{job.Bond.Kind, job.Tile.Width, job.Tile.Height})
	assert.Contains(t, job.Guess, "tile.width", "nobody has measured it")
}

// A tile of a pattern beside the first may have grain of its own.
func TestAFurtherTileMayNotBeTurned(t *testing.T) {
	s := trial.OfFile(t, "one-wall")
	answer, _ := s.Post("/jobs/1", s.With("bond.kind", "mixed heights"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, page := s.Get("/jobs/1")
	assert.Contains(t, page, `<input type="checkbox" name="bond.tiles[0].grain" value="true">`)
	for _, grain := range []string{"true", ""} {
		answer, _ = s.Post("/jobs/1", s.With("bond.tiles[0].grain", grain))
		require.Equal(t, http.StatusSeeOther, answer.StatusCode)
		_, job := s.Stored()
		assert.Equal(t, grain == "true", job.Bond.Tiles[0].Grain)
		assert.False(t, job.Tile.Grain)
	}
}

// Sizes that are offered one beside the other keep apart, also on a phone.
func TestSizesThatCloseStandApart(t *testing.T) {
	ctx := trial.Browse(t)
	s := trial.OfFile(t, "one-wall")
	openAt(t, ctx, s, "/jobs/1?all=1")
	trial.See[bool](t, ctx, `(() => { document.getElementById("section-bond").open = true; const kind = document.querySelector('[name="bond.kind"]'); kind.value = "hexagon"; kind.dispatchEvent(new Event("change", { bubbles: true })); return true })()`)
	trial.Await(t, ctx, `document.querySelectorAll(".fits button").length === 2`)
	for _, wide := range []int64{1440, 390} {
		trial.Steps(t, ctx, chromedp.EmulateViewport(wide, 900))
		trial.See[bool](t, ctx, `(() => { document.querySelector(".fits").scrollIntoView({ block: "center" }); return true })()`)
		trial.Shot(t, ctx, "fits-"+strconv.FormatInt(wide, 10))
		apart := trial.See[float64](t, ctx, `(() => { const [a, b] = [...document.querySelectorAll(".fits button")].map((f) => f.getBoundingClientRect()); return Math.max(b.left - a.right, b.top - a.bottom) })()`)
		assert.GreaterOrEqual(t, apart, 8.0, "at %d", wide)
	}
}
