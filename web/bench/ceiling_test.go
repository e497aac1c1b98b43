package bench_test

import (
	"net/http"
	"testing"

	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/shapes"
	"coursewright/web/trial"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The step asks whether tile goes up to the ceiling, for all walls at once or one by one; then how high that is, and
// where it bends. Found by a walk: of a tub the steps knew lines only.
func TestWhetherTileGoesToTheCeilingIsAsked(t *testing.T) {
	s := newTub(t)
	_, page := s.Get("/jobs/2")
	assert.Contains(t, page, "Where does the tile stop?")
	press := func(do string) string {
		filled := trial.Fields(t, page)
		filled.Set("do", do)
		answer, _ := s.Post("/jobs/2", filled)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode)
		_, page = s.Get("/jobs/2")
		return page
	}
	assert.Contains(t, press("ceiling walls[0] walls[1] walls[2]"), "Front of wall left, ceiling above the line")
	assert.Contains(t, page, "The ceiling bends over wall back")
	press("add walls[1].head.readings")
	assert.Contains(t, page, "Bend over wall back, from the left end of wall back")
	assert.Contains(t, page, "Bend over wall back, ceiling above the line")
	assert.NotContains(t, page, "The ceiling bends over wall back")
	assert.Contains(t, press("line walls[1]"), "Tile stops")
	job, err := survey.Read([]byte(trial.Second(s.Get("/jobs/2/job.json"))))
	require.NoError(t, err)
	assert.Equal(t, "ceiling", job.Walls[0].Head.Meets)
	assert.Nil(t, job.Walls[0].Head.Stops)
	assert.NotNil(t, job.Walls[1].Head.Stops)
}

// A step that is opened at the foot of the window comes into view.
func TestAStepThatIsOpenedComesIntoView(t *testing.T) {
	s := newTub(t)
	ctx := trial.Chromium(t, t.Context())
	trial.Steps(t, ctx, chromedp.EmulateViewport(1440, 900), chromedp.Navigate(s.URL+"/jobs/2"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	require.Greater(t, trial.See[float64](t, ctx, `(() => { for (const step of document.querySelectorAll("#survey details.step")) step.open = step.id !== "section-top";
		const s = document.querySelector("#section-top > summary"), panel = document.querySelector(".survey"); s.focus(); panel.scrollTop += s.getBoundingClientRect().top - (innerHeight - 60);
		const at = s.getBoundingClientRect().top; s.click(); return at })()`), 700.0)
	trial.Await(t, ctx, `(() => { const q = document.querySelector("#section-top .question").getBoundingClientRect(); return q.top > 0 && q.bottom < innerHeight - 200 })()`)
}

// A wall that is added had the name “wall”, and the buttons called it wall wall.
func TestNoWallIsCalledWallWall(t *testing.T) {
	shower, err := shapes.New("corner", "mm", "A corner")
	require.NoError(t, err)
	require.NoError(t, form.Apply(&shower, "add walls"))
	file, err := survey.Write(shower)
	require.NoError(t, err)
	s := trial.Of(t, file)
	for _, at := range []string{"/jobs/1", "/jobs/1?all=1"} {
		_, page := s.Get(at)
		assert.NotContains(t, page, "wall wall", at)
	}
}
