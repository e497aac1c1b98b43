package web_test

import (
	"encoding/json"
	"net/http"
	"net/url"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/store"
	"coursewright/web/form"
	"coursewright/web/trial"
)

// line is the course line of job 1 as its plan file has it, in millimetres.
func line(s trial.Site) float64 {
	s.T.Helper()
	answer, body := s.Get("/jobs/1/plan.json")
	require.Equal(s.T, http.StatusOK, answer.StatusCode, body)
	var plan struct{ Course struct{ Line float64 } }
	require.NoError(s.T, json.Unmarshal([]byte(body), &plan))
	return plan.Course.Line
}

// press posts the bench's form with a button.
func press(s trial.Site, do string, fields ...string) {
	s.T.Helper()
	form := s.Bench()
	form.Set("do", do)
	for i := 0; i < len(fields); i += 2 {
		form.Set(fields[i], fields[i+1])
	}
	answer, page := s.Post("/jobs/1", form)
	require.Equal(s.T, http.StatusSeeOther, answer.StatusCode, page)
}

// step is undo or redo.
func step(s trial.Site, which string) {
	s.T.Helper()
	answer, _ := s.Post("/jobs/1/"+which, s.With())
	require.Equal(s.T, http.StatusSeeOther, answer.StatusCode)
}

func bench(s trial.Site) string { return trial.Second(s.Get("/jobs/1?all=1")) }

// says and saysNot tell what a page says, and do not print the page.
func says(t *testing.T, page, text string, about ...any) {
	t.Helper()
	assert.True(t, strings.Contains(page, text), append([]any{"it does not say: " + text}, about...)...)
}

func saysNot(t *testing.T, page, text string, about ...any) {
	t.Helper()
	assert.False(t, strings.Contains(page, text), append([]any{"it says: " + text}, about...)...)
}

const judged = "Judged anew, this set-out would be another one"

// Law 1: every page and file is that of a job which holds the set-out itself, to the byte, and no revision was made of it.
func TestAnUpdateMovesNobodysMarks(t *testing.T) {
	s, was, anew, held := trial.Earlier(t)
	before, _ := s.Stored()
	document, err := survey.Write(held)
	require.NoError(t, err)
	holding := trial.Solving(t, document, trial.Once())
	for _, path := range []string{"/jobs/1", "/jobs/1?wall=1", "/jobs/1/pieces", "/jobs/1/work", "/jobs/1/choices", "/jobs/1/sheets", "/jobs/1/bathroom",
		"/jobs/1/bathroom?set-out", "/jobs/1/sheet.svg?kinds=set-out&page=1", "/jobs/1/sheet.svg?kinds=elevations&page=2", "/jobs/1/sheet.svg?kinds=first-course&page=1",
		"/jobs/1/wrap.svg", "/jobs/1/cuts.csv", "/jobs/1/takeoff.csv", "/jobs/1/plan.json", "/jobs/1/job.json"} {
		answer, page := s.Get(path)
		require.Equal(t, http.StatusOK, answer.StatusCode, path)
		other := strings.ReplaceAll(trial.Second(holding.Get(path)), holding.Store.Path(), s.Store.Path())
		assert.True(t, page == other, "%s is another page", path)
	}
	pdf := "/jobs/1/sheets.pdf?kinds=set-out"
	assert.Len(t, trial.Second(s.Get(pdf)), len(trial.Second(holding.Get(pdf))))
	assert.Equal(t, was.Setout.Line.Millimetres(), line(s))
	assert.NotEqual(t, anew.Setout.Line.Millimetres(), line(s))

	after, _ := s.Stored()
	assert.Equal(t, before, after, "to look is no edit")
	assert.Equal(t, 1, strings.Count(trial.Second(s.Get("/jobs/1/history")), `class="state `))
}

func TestWhatWouldBeJudgedAnewIsSaidOnceWithBothFigures(t *testing.T) {
	s, was, anew, _ := trial.Earlier(t)
	d := keep.Differ(keep.Judged{Room: was.Room, Setout: was.Setout, Walls: was.Walls}, keep.Judged{Room: anew.Room, Setout: anew.Setout, Walls: anew.Walls})
	page := bench(s)
	assert.Equal(t, 1, strings.Count(page, judged))
	says(t, page, d.Anew+", not "+d.Kept)
	for _, m := range d.Moves {
		says(t, strings.ReplaceAll(page, "&#34;", `"`), m.What+" "+m.Anew+", not "+m.Kept)
	}
	says(t, page, "Take the new one")
	says(t, page, "Keep this one")
	for _, path := range []string{"/jobs/1/work", "/jobs/1/choices", "/jobs/1/sheets", "/jobs/1/bathroom", "/jobs/1/history"} {
		saysNot(t, trial.Second(s.Get(path)), judged, path)
	}
}

func TestTheNewSetOutIsTakenAndUndoBringsTheOldOneBack(t *testing.T) {
	s, was, anew, _ := trial.Earlier(t)
	press(s, "letgo")
	assert.Equal(t, anew.Setout.Line.Millimetres(), line(s))
	page := bench(s)
	saysNot(t, page, "Judged anew")
	says(t, page, "Undo: taking the new set-out")
	says(t, trial.Second(s.Get("/jobs/1/history")), "The set-out judged anew was taken.")

	step(s, "undo")
	assert.Equal(t, was.Setout.Line.Millimetres(), line(s))
	says(t, bench(s), judged)
	step(s, "redo")
	assert.Equal(t, anew.Setout.Line.Millimetres(), line(s))

	first, _ := s.Stored()
	answer, _ := s.Post("/jobs/1/history", s.With("do", "restore", "at", "1"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	assert.Equal(t, was.Setout.Line.Millimetres(), line(s), "a state is brought back with its set-out")
	restored, _ := s.Stored()
	assert.NotEqual(t, first.Revision, restored.Revision)
}

func TestTheOldSetOutIsKeptForGood(t *testing.T) {
	s, was, _, _ := trial.Earlier(t)
	press(s, "hold")
	_, job := s.Stored()
	require.NotNil(t, job.Held)
	assert.Empty(t, job.Held.Engine)
	assert.Equal(t, was.Setout.Line.Millimetres(), line(s))
	page := bench(s)
	saysNot(t, page, "Judged anew")
	says(t, page, "The set-out is held.")
	says(t, page, "Undo: hold the set-out")
}

// What was kept stays pinned over edits until it is taken.
func TestAnEditMovesNoMarkThatIsKept(t *testing.T) {
	s, was, anew, _ := trial.Earlier(t)
	press(s, "", "title", "Another name")
	press(s, "", "limits.sliver", "1 1/2")
	_, job := s.Stored()
	require.NotNil(t, job.Held)
	assert.Equal(t, "1", job.Held.Engine)
	assert.Equal(t, was.Setout.Line.Millimetres(), line(s))
	page := bench(s)
	says(t, page, judged, "until it is answered")
	saysNot(t, page, "and 1 more", "that it is held is not said with every edit")

	answer, page := s.Post("/jobs/1/work", s.With("work.kerf", "1/8"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	assert.Equal(t, was.Setout.Line.Millimetres(), line(s))
	press(s, "letgo")
	assert.Equal(t, anew.Setout.Line.Millimetres(), line(s))
}

func TestAFormThatDoesNotSayWhatItWasFilledFromMovesNoMarkEither(t *testing.T) {
	s, was, _, _ := trial.Earlier(t)
	answer, page := s.Post("/jobs/1", s.With("title", "By hand"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	assert.Equal(t, was.Setout.Line.Millimetres(), line(s))
}

func TestAChoiceKeepsItsSetOut(t *testing.T) {
	s, was, _, _ := trial.Earlier(t)
	answer, page := s.Post("/jobs/1/choices", s.With("do", "duplicate", "of", "first", "name", "second"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	assert.Equal(t, was.Setout.Line.Millimetres(), line(s))
	answer, page = s.Post("/jobs/1/choices", s.With("do", "choose", "of", "second"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	assert.Equal(t, was.Setout.Line.Millimetres(), line(s), "the copy holds what it is a copy of")
}

// Law 2.
func TestARevisionOfTheFirstVersionIsJudgedOnceAndThenKept(t *testing.T) {
	s := trial.Solving(t, static.Demo, trial.Once())
	before, job := s.Stored()
	require.Nil(t, s.Setout())
	bench(s)
	after, _ := s.Stored()
	assert.Equal(t, before.Revision, after.Revision)
	assert.Equal(t, before.Saved, after.Saved)
	kept, err := keep.Read(s.Setout())
	require.NoError(t, err)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	assert.Equal(t, keep.Of(layout.Engine, job, plan.Setout, plan.Walls), kept)
	saysNot(t, bench(s), "Judged anew")
}

func TestEveryEditKeepsTheSetOutItGave(t *testing.T) {
	s := trial.Solving(t, static.Demo, trial.Once())
	press(s, "", "walls[1].width", "59 1/2")
	_, job := s.Stored()
	plan, err := layout.Now(job)
	require.NoError(t, err)
	want, err := keep.Write(keep.Of(layout.Engine, job, plan.Setout, plan.Walls))
	require.NoError(t, err)
	assert.JSONEq(t, string(want), string(s.Setout()))
}

// Law 3.
func TestTheSameTilesToldOtherwiseAreNoOtherSetOut(t *testing.T) {
	s := trial.Solving(t, static.Demo, trial.Once())
	_, job := s.Stored()
	plan, err := layout.Now(job)
	require.NoError(t, err)
	old := keep.Of("1", job, plan.Setout, plan.Walls)
	old.Course.Line = trial.Printed(plan.Setout.Line + 2*(plan.Room.Tile.Height+plan.Room.Joint))
	s.Keep(old)
	page := bench(s)
	saysNot(t, page, "Judged anew")
	saysNot(t, page, "The set-out is held.")
}

// Law 4.
func TestASetOutThatCannotBeHeldAnyMoreIsSaidAndStays(t *testing.T) {
	s := trial.Solving(t, static.Demo, trial.Once())
	s.Keep(survey.Held{Engine: "1", Walls: map[string]survey.WallPin{"back": {Marks: map[string]string{"niche of old left": "100 mm"}}}})
	before := s.Setout()
	page := bench(s)
	says(t, page, "cannot be held any more")
	says(t, page, "a mark that the wall does not have")
	assert.Equal(t, before, s.Setout())
}

func TestOneWindowTakesTheNewSetOutWhileAnotherEdits(t *testing.T) {
	s, _, anew, _ := trial.Earlier(t)
	other := s.Bench()
	press(s, "letgo")
	other.Set("title", "From the other window")
	answer, page := s.Post("/jobs/1", other)
	require.Contains(t, []int{http.StatusSeeOther, http.StatusOK}, answer.StatusCode, page)
	_, job := s.Stored()
	assert.Equal(t, "From the other window", job.Title)
	assert.Nil(t, job.Held, "what was taken is not held again")
	assert.Equal(t, anew.Setout.Line.Millimetres(), line(s))
}

// tickForm is what the first step of the bathroom view posts.
func tickForm(s trial.Site) url.Values {
	s.T.Helper()
	_, page := s.Get("/jobs/1/bathroom")
	mark := regexp.MustCompile(`name="mark" value="([^"]+)"`).FindStringSubmatch(page)
	require.Len(s.T, mark, 2)
	return url.Values{"mark": {mark[1]}, "wall": {"0"}}
}

func TestTheFirstTickHoldsTheSetOut(t *testing.T) {
	s := trial.Solving(t, static.Demo, trial.Once())
	before, _ := s.Stored()
	at := line(s)
	answer, page := s.Post("/jobs/1/bathroom", tickForm(s))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	held, job := s.Stored()
	require.NotNil(t, job.Held)
	assert.NotEqual(t, before.Revision, held.Revision)
	says(t, bench(s), "Undo: hold the set-out")
	assert.Equal(t, held.Revision, ticks(s)[0].Revision)

	answer, page = s.Post("/jobs/1/bathroom", tickForm(s))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	second, _ := s.Stored()
	assert.Equal(t, held.Revision, second.Revision, "held already")

	press(s, "", "limits.sliver", "3")
	press(s, "", "measured.doubt", "1/4")
	assert.Equal(t, at, line(s), "no edit moves a mark on the wall")
	step(s, "undo")
	assert.NotEmpty(t, ticks(s), "undo leaves ticks alone")
}

func ticks(s trial.Site) []store.Tick {
	s.T.Helper()
	list, err := s.Store.Ticks(s.T.Context(), 1)
	require.NoError(s.T, err)
	return list
}

// A tick on the phone while the bench stands open in another window is no conflict.
func TestATickMeetsAnEditWithoutAQuestion(t *testing.T) {
	s := trial.Solving(t, static.Demo, trial.Once())
	desk := s.Bench()
	answer, _ := s.Post("/jobs/1/bathroom", tickForm(s))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	desk.Set("title", "While the first tile is set")
	answer, page := s.Post("/jobs/1", desk)
	require.Contains(t, []int{http.StatusSeeOther, http.StatusOK}, answer.StatusCode, page)
	_, job := s.Stored()
	assert.Equal(t, "While the first tile is set", job.Title)
	assert.NotNil(t, job.Held)
}

func TestOneValueOfAHeldMarkIsWhereItStands(t *testing.T) {
	s := trial.Solving(t, static.Demo, trial.Once())
	press(s, "hold")
	_, cuts := s.Get("/jobs/1/cuts.csv")
	for _, mark := range []string{"walls[1].openings[0].left", "walls[1].openings[0].width", "walls[1].openings[0].bottom", "walls[1].openings[0].height",
		"walls[0].head.stops walls[1].head.stops walls[2].head.stops", "walls[0].left.stops"} {
		press(s, "measure "+mark)
	}
	_, job := s.Stored()
	shelf := job.Walls[1].Openings[0]
	assert.Equal(t, []string{"32 7/8", "12 1/8", "3"}, []string{shelf.Left.At, shelf.Width.At, shelf.Bottom.At})
	assert.Equal(t, "36", job.Walls[2].Head.Stops.At)
	_, now := s.Get("/jobs/1/cuts.csv")
	assert.Equal(t, cuts, now, "nothing is cut otherwise")
}

func TestAHeldSetOutThatClashesSaysWhereAndKeepsTheDrawing(t *testing.T) {
	s := trial.Solving(t, static.Demo, trial.Once())
	press(s, "hold")
	_, job := s.Stored()
	form := s.Bench()
	path := ""
	for i, w := range job.Walls {
		for k, o := range w.Openings {
			if o.Left != nil && o.Left.At == "" {
				path = "walls[" + string(rune('0'+i)) + "].openings[" + string(rune('0'+k)) + "].left"
			}
		}
	}
	require.NotEmpty(t, path)
	form.Set(path+".from", "1")
	form.Set(path+".to", "2")
	answer, page := s.Post("/jobs/1", form)
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	says(t, page, "held: stands at 32 7/8&#34;, which is ")
	says(t, page, "press “Let it go”: then the room is set out anew")
	assert.NotContains(t, page, "836.613", "the job is in inches")
	says(t, page, `id="drawing"`)

	form.Set("do", "letgo")
	answer, page = s.Post("/jobs/1", form)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, job = s.Stored()
	assert.Nil(t, job.Held)
}

// A niche of a wall in hexagons, whose sides an earlier version laid in plain rows: they stay, and the bench asks. An inside that is
// added to a set-out which holds none goes on round the edge.
func TestTheSidesOfANicheAreHeldOrAskedAbout(t *testing.T) {
	file, err := os.ReadFile("../testdata/jobs/hexagon.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	bare := job
	job.Walls = slices.Clone(job.Walls)
	job.Walls[0].Openings = slices.Clone(job.Walls[0].Openings)
	job.Walls[0].Openings[0].Inside = &survey.Inside{Depth: "90"}
	document, err := survey.Write(job)
	require.NoError(t, err)
	s := trial.Solving(t, document, trial.Once())
	plan, err := layout.Now(job)
	require.NoError(t, err)
	old := keep.Of("1", job, plan.Setout, plan.Walls)
	old.Round = false
	s.Keep(old)
	page := bench(s)
	says(t, page, "the tile round the inside of the openings of long as the wall goes on round the edge, not in plain rows")
	says(t, page, "in plain rows of the wall’s tile, as held")
	press(s, "letgo")
	page = bench(s)
	saysNot(t, page, "in plain rows")
	_, taken := s.Stored()
	assert.Nil(t, taken.Held)

	require.NoError(t, form.Apply(&bare, "add walls[0].openings[0].inside"))
	assert.Nil(t, bare.Held)
	bare.Walls[0].Openings[0].Inside, bare.Held = nil, &survey.Held{}
	require.NoError(t, form.Apply(&bare, "add walls[0].openings[0].inside"))
	assert.True(t, bare.Held.Round)
}
