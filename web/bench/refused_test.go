package bench_test

import (
	"context"

	"coursewright/web/page"
	"coursewright/web/trial"

	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
)

// After an edit that cannot be solved yet, the next one goes on from what the
// page shows, not from what was saved last.

func TestAWidthTypedInTwoGoesTakesItsReadingAlong(t *testing.T) {
	for _, first := range []string{"6", "6'-", ""} { // solves to a fault; does not read; emptied
		s := trial.New(t)
		posted := s.Bench()
		posted.Set("walls[1].width", first)
		answer, page := s.Post("/jobs/1?all=1", posted)
		require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode, first)
		posted = trial.Fields(t, page)
		assert.Equal(t, first, posted.Get("walls[1].width"), "what was typed stays")
		posted.Set("walls[1].width", "60")
		answer, page = s.Post("/jobs/1?all=1", posted)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, "%q: %s", first, page)
		_, job := s.Stored()
		base := job.Walls[1].Base
		last := base[len(base)-1].Readings
		assert.Equal(t, "60", last[len(last)-1].At, first)
	}
}

func TestWhatWasRemovedBesideAFaultStaysRemoved(t *testing.T) {
	s := trial.New(t)
	for _, do := range []string{"remove walls[0]", "remove walls[1].openings[0]", "measure walls[1].openings[0].left"} {
		posted := s.Bench()
		posted.Set("joint", "thin")
		posted.Set("do", do)
		_, page := s.Post("/jobs/1?all=1", posted)
		shown := trial.Fields(t, page)
		_, again := s.Post("/jobs/1?all=1", shown)
		assert.Equal(t, shown, trial.Fields(t, again), do)
	}
	posted := s.Bench()
	posted.Set("joint", "thin")
	posted.Set("do", "remove walls[0]")
	_, page := s.Post("/jobs/1?all=1", posted)
	mended := trial.Fields(t, page)
	mended.Set("joint", "1/8")
	mended.Set("walls[0].left.meets", "")
	answer, page := s.Post("/jobs/1?all=1", mended)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, job := s.Stored()
	require.Len(t, job.Walls, 2)
	assert.Equal(t, "back", job.Walls[0].Name)
	assert.Equal(t, "right", job.Walls[1].Name)
}

func TestUnitsChangedBesideAFaultAreNotChangedTwice(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("joint", "thin")
	posted.Set("units", "mm")
	_, page := s.Post("/jobs/1?all=1", posted)
	posted = trial.Fields(t, page)
	assert.Equal(t, "35 1/4 in", posted.Get("walls[0].width"))
	posted.Set("joint", "3")
	answer, page := s.Post("/jobs/1?all=1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, job := s.Stored()
	assert.Equal(t, "3", job.Joint.Plain, "typed in millimetres")
}

func TestACountThatIsNoNumberIsAFaultOfItsField(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("tile.box.count", "sixty")
	posted.Set("joint", "3/16")
	answer, page := s.Post("/jobs/1?all=1", posted)
	require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, `href="#tile.box.count"`)
	shown := trial.Fields(t, page)
	assert.Equal(t, "sixty", shown.Get("tile.box.count"))
	assert.Equal(t, "3/16", shown.Get("joint"))
	shown.Set("tile.box.count", "60")
	answer, page = s.Post("/jobs/1?all=1", shown)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, job := s.Stored()
	assert.Equal(t, 60, job.Tile.Box.Count)
	assert.Equal(t, "3/16", job.Joint.Plain)
}

func TestAWallsNameShowsItsFault(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("walls[2].name", "back")
	_, page := s.Post("/jobs/1?all=1", posted)
	assert.Regexp(t, `id="walls\[2\]\.name-said"><span class="fault">`, page)
	assert.Equal(t, "back", trial.Fields(t, page).Get("walls[2].name"))
}

func TestAJobWithoutANameCanBeFound(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("title", " ")
	s.Post("/jobs/1?all=1", posted)
	_, page := s.Get("/")
	assert.Regexp(t, `href="/jobs/1"[^>]*>A job without a name</a>`, page)
}

func TestABusyServerSaysSo(t *testing.T) {
	busy := false
	s := trial.Empty(t, func(ctx context.Context, job survey.Job) (layout.Plan, error) {
		if busy {
			return layout.Plan{}, page.ErrBusy
		}
		return trial.Resolved(ctx, job)
	})
	s.Upload(static.Demo)
	posted := s.Bench()
	posted.Set("joint", "3/16")
	busy = true
	answer, page := s.Post("/jobs/1?all=1", posted)
	assert.Equal(t, http.StatusServiceUnavailable, answer.StatusCode)
	assert.Contains(t, page, "<h1>Not done: too many rooms")
	answer, _ = s.Upload(trial.File(t, "toy.json"))
	assert.Equal(t, http.StatusServiceUnavailable, answer.StatusCode)
	busy = false
	answer, _ = s.Post("/jobs/1?all=1", posted)
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
}

// What is refused while something is held or typed speaks of what was typed, as what is refused when it is saved.
func TestALookRefusesWhatWasTyped(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	posted.Set("lean walls[1].left", "200")
	posted.Set("lean-way walls[1].left", "away")
	for _, path := range []string{"/jobs/1/look", "/jobs/1"} {
		answer, page := s.Post(path, posted, "X-Bench", "live")
		require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
		assert.Contains(t, page, "“200”", path)
		assert.NotContains(t, page, "“-200”", path)
		assert.Contains(t, page, "a gap of at most ", path)
		assert.Contains(t, page, "how far the corner leans", path)
	}
}

// A box whose figure is refused does not count as measured, in the head of the survey, on its tape or beside its step.
func TestWhatIsRefusedIsNotMeasured(t *testing.T) {
	s := trial.New(t)
	_, before := s.Get("/jobs/1")
	assert.Contains(t, before, "18 of 18 measured")
	posted := s.Bench()
	posted.Set("walls[1].width", "5o")
	_, page := s.Post("/jobs/1", posted)
	assert.Contains(t, page, "17 of 18 measured, 1 refused")
	assert.NotContains(t, page, "18 of 18 measured")
	assert.Contains(t, page, "2 of 3 measured")
	assert.Equal(t, 1, strings.Count(page, `<i class="qu">`))
}

// What leaves no room for tile is refused at the box it was typed in, and nothing else is kept from being saved.
func TestWhatLeavesNoRoomIsRefusedAtItsBox(t *testing.T) {
	for _, c := range []struct{ box, text, said string }{
		{"walls[1].width", "½", "found “1/2”, on which its corners leave no tile; write a width over 1 1/4&#34;"},
		{"walls[0].head.readings[0].rise", "-54", "found “-54”, where the base with its gap stands at -39 7/8; write how far the ceiling is above the line"},
	} {
		s := trial.New(t)
		answer, _ := s.Post("/jobs", url.Values{"shape": {"three"}, "units": {"in"}, "title": {"Gym"}})
		at := answer.Header.Get("Location")
		shown := trial.Fields(t, trial.Second(s.Get(at)))
		require.True(t, shown.Has(c.box))
		shown.Set(c.box, c.text)
		shown.Set("walls[2].width", "34")
		answer, page := s.Post(at, shown)
		require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode, c.text)
		_, said, _ := strings.Cut(page, `id="`+c.box+`-said"`)
		said, _, _ = strings.Cut(said, "</span> ")
		assert.Contains(t, said, c.said)
		assert.Contains(t, page, "Saved but for 1 figure")
	}
}
