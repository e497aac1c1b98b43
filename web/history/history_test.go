package history_test

import (
	"fmt"
	"net/http"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/web/ask"
	"coursewright/web/trial"
)

// edited changes one field of job 1 as the bench does.
func edited(t *testing.T, s trial.Site, field, value string) {
	t.Helper()
	answer, page := s.Post("/jobs/1", s.With(field, value))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
}

func joint(s trial.Site) string {
	_, job := s.Stored()
	return job.Joint.Plain
}

func TestTheHistorySaysWhatChangedAndWhen(t *testing.T) {
	s := trial.Swift(t)
	s.Store.Now = func() time.Time { return time.Date(2026, 3, 1, 8, 30, 0, 0, time.UTC) }
	edited(t, s, "joint", "3/16")
	edited(t, s, "walls[1].width", "60 1/8")
	answer, page := s.Get("/jobs/1/history")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, "Joint: 1/8 → 3/16")
	assert.Contains(t, page, "Width of wall back: ")
	assert.Contains(t, page, " → 60 1/8")
	assert.Contains(t, page, "1 Mar 2026, 08:30:00")
	assert.Contains(t, page, "The first state.")
	assert.Equal(t, 1, strings.Count(page, "shown now"))
	assert.Less(t, strings.Index(page, "→ 60 1/8"), strings.Index(page, "→ 3/16"), "the newest first")
	_, bench := s.Get("/jobs/1/work")
	assert.Contains(t, bench, `href="/jobs/1/history"`)
}

// Merge carries the new name of a wall over to the other side, where it was not told any more: the history said that the
// set-out judged anew was taken, since that is kept by the names of the walls.
func TestTheHistoryTellsOfAWallThatGotAnotherName(t *testing.T) {
	s := trial.Swift(t)
	edited(t, s, "walls[1].name", "window side")
	_, page := s.Get("/jobs/1/history")
	assert.Contains(t, page, "back → window side")
	assert.NotContains(t, page, "judged anew")
	_, bench := s.Get("/jobs/1")
	assert.NotContains(t, bench, "taking the new set-out")
	assert.Contains(t, bench, "Undo: ")
}

// What is a guess stands in the job file as paths of fields, which are no words.
func TestTheHistorySaysWhatIsMeasuredInWords(t *testing.T) {
	s := trial.Swift(t)
	edited(t, s, "do", "guess tile.width tile.height")
	edited(t, s, "tile.width", "6")
	_, page := s.Get("/jobs/1/history")
	assert.Contains(t, page, "Height of a tile: not measured")
	assert.Contains(t, page, "Width of a tile: 5 7/8 → 6")
	assert.NotContains(t, page, "Guess:")
	assert.NotContains(t, page, "tile.height")
	edited(t, s, "walls[0].base[1].readings[1].drop", "38 5/8") // one box, which fills a field of both walls
	_, page = s.Get("/jobs/1/history")
	assert.Equal(t, 1, strings.Count(page, "Corner of left and back, below the line: "), "a corner that two walls share")
}

// A front is asked for from the corner: a wall of another width moves it on the tape from the left end, and not from there. It was
// told as if it had gone from a figure to the same.
func TestTheHistoryTellsNoFigureThatIsAsItWas(t *testing.T) {
	s := trial.Swift(t)
	const front = "4 1/8" // 30 7/8 from the corner, as before
	answer, _ := s.Post("/jobs/1", s.With("walls[0].width", "35", "walls[0].base[0].readings[1].at", front, "walls[0].base[1].readings[0].at", front))
	require.Equal(t, 303, answer.StatusCode)
	_, page := s.Get("/jobs/1/history")
	assert.Contains(t, page, "Wall left, from the corner: 35 1/4 → 35")
	for _, same := range regexp.MustCompile(`: ([^<>]+) → ([^<>]+)<`).FindAllStringSubmatch(page, -1) {
		assert.NotEqual(t, same[1], same[2], same[0])
	}
}

func TestAStateIsBroughtBackAsANewOneAndUndoTakesItBack(t *testing.T) {
	s := trial.Swift(t)
	edited(t, s, "joint", "3/16")
	edited(t, s, "joint", "1/4")
	form := s.With("at", "2", "do", "restore")
	answer, page := s.Post("/jobs/1/history", form)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	assert.Equal(t, "/jobs/1/history", answer.Header.Get("Location"))
	assert.Equal(t, "3/16", joint(s))
	kept, _ := s.Stored()
	assert.Equal(t, int64(4), kept.Revision)
	_, page = s.Get("/jobs/1/history")
	assert.Contains(t, page, "Joint: 1/4 → 3/16")
	s.Post("/jobs/1/undo", s.With())
	assert.Equal(t, "1/4", joint(s))
}

func TestBranchesAreShownAndCanBeBroughtBack(t *testing.T) {
	s := trial.Swift(t)
	edited(t, s, "joint", "3/16")
	edited(t, s, "tile.name", "left behind")
	for range 2 {
		s.Post("/jobs/1/undo", s.With())
	}
	edited(t, s, "joint", "1/4")
	_, page := s.Get("/jobs/1/history")
	assert.Equal(t, 2, strings.Count(page, "on another branch"))
	assert.Equal(t, 1, strings.Count(page, `href="#state-1"`), "the newest was made from the first")
	answer, page := s.Post("/jobs/1/history", s.With("at", "3", "do", "restore"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, job := s.Stored()
	assert.Equal(t, []string{"3/16", "left behind"}, []string{job.Joint.Plain, job.Tile.Name})
}

func TestAStateBearsANameAsPeopleTypeIt(t *testing.T) {
	s := trial.Swift(t)
	edited(t, s, "joint", "3/16")
	for _, name := range []string{" before  the niche ", `<b>"x"`, strings.Repeat("long ", 40), ""} {
		answer, page := s.Post("/jobs/1/history", url.Values{"at": {"1"}, "do": {"name"}, "name": {name}})
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		_, page = s.Get("/jobs/1/history")
		assert.NotContains(t, page, "<b>")
		if name == " before  the niche " {
			assert.Contains(t, page, "<strong>before the niche</strong>")
		}
	}
	_, page := s.Get("/jobs/1/history")
	assert.NotContains(t, page, "<strong>", "no name takes it back")
}

func TestTheHistoryIsReadByThePage(t *testing.T) {
	s := trial.Swift(t)
	for i := range 70 {
		edited(t, s, "tile.name", fmt.Sprint("tile ", i))
	}
	path, pages, states := "/jobs/1/history", 0, 0
	for path != "" {
		answer, page := s.Get(path)
		require.Equal(t, http.StatusOK, answer.StatusCode)
		states += strings.Count(page, `id="state-`)
		pages++
		assert.NotContains(t, page, "Nothing changed")
		path = ""
		if _, rest, found := strings.Cut(page, `rel="next" href="`); found {
			path, _, _ = strings.Cut(rest, `"`)
		}
	}
	assert.Equal(t, []int{3, 71}, []int{pages, states})
}

func TestAHistoryThatCannotBe(t *testing.T) {
	s := trial.Swift(t)
	edited(t, s, "joint", "3/16")
	for name, c := range map[string]struct {
		form url.Values
		want int
	}{
		"no state":       {s.With("do", "restore"), http.StatusBadRequest},
		"no such state":  {s.With("do", "restore", "at", "99"), http.StatusNotFound},
		"no such button": {s.With("do", "paint", "at", "1"), http.StatusBadRequest},
		"no revision":    {url.Values{"do": {"restore"}, "at": {"1"}}, http.StatusBadRequest},
		"name of none":   {s.With("do", "name", "at", "99", "name", "x"), http.StatusNotFound},
	} {
		answer, page := s.Post("/jobs/1/history", c.form)
		assert.Equal(t, c.want, answer.StatusCode, "%s: %.200s", name, page)
	}
	answer, _ := s.Get("/jobs/9/history")
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)
	for _, before := range []string{"-1", "x", "1", "999999999999999999999"} {
		answer, _ := s.Get("/jobs/1/history?before=" + before)
		assert.Equal(t, http.StatusOK, answer.StatusCode, before)
	}
	assert.Equal(t, "3/16", joint(s))
}

// A state of an older version that this one would refuse is said to be one, and stays where it is.
func TestAStateThatCanNoLongerBeWorkedWithIsNotBroughtBack(t *testing.T) {
	s := trial.Swift(t)
	kept, job := s.Stored()
	job.Joint.Plain = "wide"
	bad, err := survey.Write(job)
	require.NoError(t, err)
	now, err := s.Store.Save(t.Context(), 1, kept.Revision, job.Title, bad)
	require.NoError(t, err)
	now, err = s.Store.Save(t.Context(), 1, now.Revision, job.Title, []byte(`{"format": "coursewright-job/0"}`))
	require.NoError(t, err)
	_, err = s.Store.Save(t.Context(), 1, now.Revision, job.Title, kept.Document)
	require.NoError(t, err)
	_, page := s.Get("/jobs/1/history")
	assert.Contains(t, page, "this version cannot read it")
	for _, at := range []string{"2", "3"} {
		answer, page := s.Post("/jobs/1/history", s.With("do", "restore", "at", at))
		assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
		assert.Contains(t, page, "That state was not brought back")
	}
	assert.Equal(t, "1/8", joint(s))
}

// An edit made meanwhile in another window is met, not overwritten.
func TestBringingBackMeetsWhatWasSavedMeanwhile(t *testing.T) {
	s := trial.Swift(t)
	edited(t, s, "joint", "3/16")
	old := s.With("do", "restore", "at", "1")
	edited(t, s, "joint", "1/4")
	answer, _ := s.Post("/jobs/1/history", old)
	assert.Equal(t, http.StatusConflict, answer.StatusCode)
	assert.Equal(t, "1/4", joint(s))
}

// Another choice has other tile and bond: that it was chosen is one line, not one for each of its fields.
func TestTheHistorySaysWhichChoiceWasChosen(t *testing.T) {
	s := trial.New(t)
	s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "long tile"))
	s.Post("/jobs/1/choices", s.With("do", "choose", "of", "long tile"))
	edited(t, s, "tile.width", "11 7/8")
	s.Post("/jobs/1/choices", s.With("do", "choose", "of", "first"))
	_, page := s.Get("/jobs/1/history")
	assert.Contains(t, page, "choosing first")
	assert.Contains(t, page, "Width of a tile: 5 7/8 → 11 7/8")
	assert.NotContains(t, page, "Choices 1")
}

// A corner that leans and a box of tile are several fields of the job file; the history says each as one thing.
func TestTheHistorySaysLeansAndBoxesInWords(t *testing.T) {
	s := trial.Swift(t)
	for _, c := range []struct{ field, is, says string }{
		{ask.LeanGap + "walls[0].right", "1/4", "Left wall, right end, lean: (nothing) → 1/4 to the left in 48"},
		{ask.LeanGap + "walls[0].right", "1/2", "Left wall, right end, lean: 1/4 to the left in 48 → 1/2 to the left in 48"},
		{ask.LeanGap + "walls[0].right", "0", "1/2 to the left in 48 → plumb"},
		{"tile.box.price", "$42.50", "Price of a box: "},
		{"tile.name", "Slate", "Name of the tile: "},
	} {
		edited(t, s, c.field, c.is)
		_, page := s.Get("/jobs/1/history")
		assert.Contains(t, page, c.says)
	}
}

// A bond is told as people call it, not by the fields of the job file.
func TestTheHistoryCallsABondByItsName(t *testing.T) {
	s := trial.Swift(t)
	edited(t, s, "bond.kind", "stack")
	_, page := s.Get("/jobs/1/history")
	assert.Contains(t, page, "Bond: running bond 1/2 → stack bond")
}

// What was brought back, and of when, is the name of the state that comes of it. Brought back once more it stays that.
func TestTheHistorySaysWhatWasBroughtBack(t *testing.T) {
	s := trial.Swift(t)
	first, _ := s.Stored()
	edited(t, s, "joint", "3/16")
	s.Post("/jobs/1/history", s.With("do", "name", "at", strconv.FormatInt(first.Revision, 10), "name", "as quoted"))
	s.Post("/jobs/1/history", s.With("do", "restore", "at", strconv.FormatInt(first.Revision, 10)))
	assert.Equal(t, "1/8", joint(s))
	list, err := s.Store.Revisions(t.Context(), 1, 0, 9)
	require.NoError(t, err)
	said := "Brought back: “as quoted”, the state of " + list[2].Saved.Format("2 Jan 2006, 15:04:05")
	assert.Equal(t, []string{said, "", "as quoted"}, []string{list[0].Name, list[1].Name, list[2].Name})

	s.Post("/jobs/1/history", s.With("do", "restore", "at", strconv.FormatInt(list[0].ID, 10)))
	again, err := s.Store.Revisions(t.Context(), 1, 0, 9)
	require.NoError(t, err)
	assert.Equal(t, list, again, "it is shown already")
	edited(t, s, "joint", "1/4")
	s.Post("/jobs/1/history", s.With("do", "restore", "at", strconv.FormatInt(list[0].ID, 10)))
	again, err = s.Store.Revisions(t.Context(), 1, 0, 1)
	require.NoError(t, err)
	assert.Equal(t, said, again[0].Name)
	_, page := s.Get("/jobs/1/history")
	assert.Contains(t, page, "<strong>"+said+"</strong>")
}

// What stands on a wall is five fields of the job file; the history says it as one thing, with the wall and the course.
func TestTheHistorySaysWhatStands(t *testing.T) {
	s := trial.Swift(t)
	for _, c := range []struct{ do, says string }{
		{"stand walls[1]=7;-34 3/16;-34 1/4;left edge;27 1/16;left", "Tile stands on back up to course 7: top edge -34 3/16 at the left end, -34 1/4 at the right, the left edge of a tile at 27 1/16"},
		{"stand walls[1]=8;-31 3/16;-31 3/16;joint;30;left", "Tile stands on back up to course 8, not 7 as before: top edge -31 3/16 at the left end, -31 3/16 at the right, the middle of a joint at 30"},
		{"set walls[1].set.left=-31 1/8", "Tile that stands on back up to course 8, measured anew: top edge -31 1/8 at the left end"},
		{"forget walls[1].set", "No tile stands on back any more, where it stood up to course 8"},
	} {
		answer, page := s.Post("/jobs/1", s.With("do", c.do))
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		_, page = s.Get("/jobs/1/history")
		assert.Contains(t, page, "<li>"+c.says)
		assert.NotContains(t, page, "Back wall, set")
	}
}
