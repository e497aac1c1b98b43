package bench_test

import (
	"net/http"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/ask"
	"coursewright/web/form"
	"coursewright/web/trial"
)

// A slip in one box keeps no other reading from being saved; what was typed there stays, and the job
// keeps what it had there.
func TestARefusedFigureKeepsNoOtherFromBeingSaved(t *testing.T) {
	for box, slip := range map[string]struct{ path, text string }{
		"joint":                                 {"joint", "thin"},
		"walls[1].width":                        {"walls[1].width", "6'-"},
		"right walls[0].base[0].readings[1].at": {"walls[0].base[0].readings[1].at", "3o 1/4"},
		"walls[0].base[1].readings[1].drop":     {"walls[0].base[1].readings[1].drop", "38 1/"},
		"right walls[0].openings[0].at":         {"walls[0].openings[0].at", "60"},
		"measured.doubt":                        {"measured.doubt", "a bit"},
		"updown walls[0].openings[0].height":    {"walls[0].openings[0].height", "l2 in."},
		"walls[1].openings[0].width.from":       {"walls[1].openings[0].width.from", "eleven"},
	} {
		t.Run(box, func(t *testing.T) {
			s := trial.New(t)
			_, before := s.Stored()
			_, page := s.Get("/jobs/1")
			posted := trial.Fields(t, page)
			require.True(t, posted.Has(box))
			was := fieldOf(t, s, slip.path)
			posted.Set(box, slip.text)
			posted.Set("walls[0].width", "35 3/8")
			answer, page := s.Post("/jobs/1", posted)
			require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
			assert.Contains(t, page, "Saved but for 1 figure")
			assert.Contains(t, page, "1 thing to put right; all else is saved")
			_, job := s.Stored()
			assert.Equal(t, "35 3/8", job.Walls[0].Width)
			assert.Equal(t, was, fieldOf(t, s, slip.path), "the last good figure")
			shown := trial.Fields(t, page)
			assert.Equal(t, slip.text, shown.Get(box), "what was typed stays")

			shown.Set("walls[2].width", "34 7/8") // and the next one
			_, page = s.Post("/jobs/1", shown)
			_, job = s.Stored()
			assert.Equal(t, "34 7/8", job.Walls[2].Width)

			shown = trial.Fields(t, page)
			mended := trial.Fields(t, trial.Second(s.Get("/jobs/1")))
			shown.Set(box, mended.Get(box))
			answer, _ = s.Post("/jobs/1", shown)
			require.Equal(t, http.StatusSeeOther, answer.StatusCode, "put right, all of it is saved")
			_, job = s.Stored()
			before.Walls[0].Width, before.Walls[2].Width = job.Walls[0].Width, job.Walls[2].Width
			assert.Equal(t, before.Joint, job.Joint)
			assert.Equal(t, was, fieldOf(t, s, slip.path))
		})
	}
}

// fieldOf is what a field holds in the stored job, as the form with every field shows it.
func fieldOf(t *testing.T, s trial.Site, path string) string {
	t.Helper()
	return s.Bench().Get(path)
}

// A button does nothing by halves, and what meets an edit of another window is asked about as ever.
func TestBesideAButtonOrAnotherWindowNothingIsSavedByHalves(t *testing.T) {
	s := trial.New(t)
	kept, _ := s.Stored()
	posted := s.Bench()
	posted.Set("joint", "thin")
	posted.Set("walls[0].width", "35 3/8")
	posted.Set("do", "add walls[0].openings pipe")
	_, page := s.Post("/jobs/1", posted)
	assert.NotContains(t, page, "Saved but for")
	now, _ := s.Stored()
	assert.Equal(t, kept.Revision, now.Revision)

	mine := s.Bench()
	s.Post("/jobs/1", s.With("walls[2].width", "34 7/8"))
	mine.Set("joint", "thin")
	mine.Set("walls[0].width", "35 3/8")
	_, page = s.Post("/jobs/1", mine)
	assert.NotContains(t, page, "Saved but for")
	_, job := s.Stored()
	assert.Equal(t, "34 7/8", job.Walls[2].Width)
	assert.NotEqual(t, "35 3/8", job.Walls[0].Width)
}

// Each figure is a revision of its own also beside one that is refused: undo takes back the last good one.
func TestUndoBesideARefusedFigure(t *testing.T) {
	s := trial.New(t)
	posted := s.Bench()
	was := posted.Get("walls[0].width")
	posted.Set("joint", "thin")
	posted.Set("walls[0].width", "35 3/8")
	_, page := s.Post("/jobs/1", posted)
	assert.Contains(t, page, "Undo: width of left")
	s.Post("/jobs/1/undo", url.Values{"revision": {trial.Fields(t, page).Get("revision")}})
	assert.Equal(t, was, s.Bench().Get("walls[0].width"))
}

// “Clear” makes a guess of what is saved, also where its box was emptied by hand before or holds what does not read. Found by a
// walk: it was answered with “there is nothing at walls[0].width”.
func TestClearTakesABoxThatIsEmptyAlready(t *testing.T) {
	for path, box := range map[string]string{"walls[0].width": "walls[0].width", "walls[0].openings[0].at": ask.FromRight + "walls[0].openings[0].at"} {
		for _, typed := range []string{"", "abc"} {
			s := trial.New(t)
			_, job := s.Stored()
			was := form.Get(job, path)
			answer, page := s.Post("/jobs/1", s.With("do", "guess "+path, box, typed))
			require.Equal(t, http.StatusSeeOther, answer.StatusCode, "%s %q: %.300s", path, typed, page)
			_, job = s.Stored()
			assert.Equal(t, was, form.Get(job, path))
			assert.Equal(t, []string{path}, job.Guess)
		}
	}
}
