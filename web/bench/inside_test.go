package bench_test

import (
	"encoding/json"
	"net/http"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/web/trial"
)

// insideJob is a job with a niche between studs and a window with tiled returns.
func insideJob(t *testing.T) []byte {
	t.Helper()
	file, err := os.ReadFile("../../testdata/insides/shower.json")
	require.NoError(t, err)
	return file
}

// The page draws what is inside, folded out, and the form posted as it came changes
// nothing of it.
func TestThePageShowsWhatIsInside(t *testing.T) {
	s := trial.Of(t, insideJob(t))
	for address, want := range map[string][]string{"/jobs/1": {"B-N1, inside of niche shelf", "W-W1, inside of window north"}, "/jobs/1?wall=1": {"B-N1"}} {
		_, page := s.Get(address)
		for _, words := range want {
			assert.Contains(t, page, words, address)
		}
	}
	_, page := s.Get("/jobs/1?wall=1")
	assert.NotContains(t, page, "W-W1, inside", "only that of the wall in front")
	before := trial.Second(s.Get("/jobs/1/job.json"))
	for _, address := range []string{"/jobs/1", "/jobs/1?all=1"} {
		_, page := s.Get(address)
		answer, said := s.Post("/jobs/1", trial.Fields(t, page))
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, said)
		now, err := survey.Read([]byte(trial.Second(s.Get("/jobs/1/job.json"))))
		require.NoError(t, err)
		was, err := survey.Read([]byte(before))
		require.NoError(t, err)
		assert.Equal(t, was.Walls, now.Walls, address)
	}
}

// A fault of an inside stands at its field, and what was typed is kept.
func TestAFaultOfAnInsideStandsAtItsField(t *testing.T) {
	s := trial.Of(t, insideJob(t))
	_, page := s.Get("/jobs/1")
	filled := trial.Fields(t, page)
	const path = "walls[0].openings[0].inside.studs.right"
	filled.Set(path, "23")
	answer, page := s.Post("/jobs/1", filled)
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, `href="#`+path+`"`)
	assert.Contains(t, page, "studs more than 2 apart")
	assert.Equal(t, "23", trial.Fields(t, page).Get(path))
	assert.Contains(t, page, "B-N1, inside of niche shelf", "over the last good drawing")
}

// The stud that is measured first takes the guess of the other along, and is not refused for it.
func TestTheFirstStudTakesTheOtherAlong(t *testing.T) {
	const left, right = "walls[0].openings[0].inside.studs.left", "walls[0].openings[0].inside.studs.right"
	job, err := survey.Read(insideJob(t))
	require.NoError(t, err)
	job.Guess = []string{left, right}
	require.Equal(t, survey.Studs{Left: "22", Right: "36 1/2"}, *job.Walls[0].Openings[0].Inside.Studs)
	file, err := json.Marshal(job)
	require.NoError(t, err)
	s := trial.Of(t, file)
	answer, page := s.Post("/jobs/1", s.With(left, "20 1/4"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, stored := s.Stored()
	assert.Equal(t, survey.Studs{Left: "20 1/4", Right: "34 3/4"}, *stored.Walls[0].Openings[0].Inside.Studs)
}

// From a new job to a niche by its studs, with the buttons of the page.
func TestANicheIsAddedByItsStuds(t *testing.T) {
	s := newTub(t)
	for _, do := range []string{"add walls[1].openings niche", "add walls[1].openings[0].inside studs", "set walls[1].openings[0].inside.sill.slab=3/4"} {
		_, page := s.Get("/jobs/2")
		filled := trial.Fields(t, page)
		filled.Set("do", do)
		answer, said := s.Post("/jobs/2", filled)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, "%s: %s", do, said)
	}
	_, page := s.Get("/jobs/2")
	for _, said := range []string{"Left stud of niche", "inside of niche", "slab 1", "It stands free between its studs"} {
		assert.Contains(t, page, said)
	}
	answer, page := s.Post("/jobs", url.Values{"shape": {"niche"}, "units": {"mm"}, "title": {"Gym"}})
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
}

// The fold-out follows what is typed, in a real browser.
func TestTheFoldOutFollowsTheTyping(t *testing.T) {
	s := trial.Of(t, insideJob(t))
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	before := trial.See[string](t, ctx, `document.getElementById("insides").innerHTML`)
	trial.Type(t, ctx, "walls[0].openings[0].inside.depth", "4")
	trial.Await(t, ctx, `document.getElementById("status").textContent === "Saved"`)
	after := trial.See[string](t, ctx, `document.getElementById("insides").textContent`)
	assert.NotEqual(t, before, after)
	assert.Contains(t, after, "4 1/16 deep", "a back thinner by 1/16 leaves so much more")
}

// It follows a choice too, of which no key tells.
func TestTheFoldOutFollowsAChoice(t *testing.T) {
	s := trial.OfFile(t, "bench")
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1?all=1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	trial.Await(t, ctx, `document.getElementById("insides").textContent.includes("edge mitred")`)
	trial.See[bool](t, ctx, `(() => {
		const box = document.getElementById("walls[3].top.corner");
		box.value = "";
		return box.dispatchEvent(new Event("change", { bubbles: true }));
	})()`)
	trial.Await(t, ctx, `document.getElementById("insides").textContent.includes("edge lapped")`)
	after := trial.See[string](t, ctx, `document.getElementById("insides").textContent`)
	assert.NotContains(t, after, "edge mitred")
}

// What a face without a tile of its own is laid in is said as it is: of back and sides that a band goes on upon with the
// band, of the top that it is in the tile of the field, and of a niche within a band that all is in it.
func TestAFaceIsSaidToGoOnWithTheBand(t *testing.T) {
	says := func(bottom, high string, courses int) string {
		job, err := survey.Read(insideJob(t))
		require.NoError(t, err)
		o := &job.Walls[0].Openings[0]
		o.Inside.Back = survey.InsideFace{}
		o.Bottom, o.Height = &survey.Mark{At: bottom}, &survey.Measure{Mark: &survey.Mark{At: high}}
		job.Pins.Course.Line = "1 3/8"
		job.Bands = []survey.Band{{Name: "stripe", Walls: []string{"back"}, Bottom: survey.Mark{At: "5 1/2"}, Courses: courses,
			Tile: survey.Tile{Width: "4", Height: "2", Thickness: "5/16"}}}
		text, err := json.Marshal(job)
		require.NoError(t, err)
		return trial.Second(trial.Of(t, text).Get("/jobs/1"))
	}
	page := says("1 1/4", "14 5/8", 1)
	assert.Equal(t, 3, strings.Count(page, "<span>as on the wall, stripe too</span>"), "back, left and right")
	assert.Equal(t, 1, strings.Count(page, "<span>the tile of the field</span>"), "the top; the sill is a slab")
	assert.Equal(t, 4, strings.Count(says("6 3/4", "5 7/8", 8), "<span>as on the wall: all in stripe</span>"))
}
