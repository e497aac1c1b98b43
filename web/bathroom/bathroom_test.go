package bathroom_test

import (
	"strconv"

	"coursewright/web/trial"

	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"coursewright/layout/survey"
	"coursewright/static"
)

// ticked are the pieces of job 1 that are ticked.
func ticked(s trial.Site) []string {
	s.T.Helper()
	ticks, err := s.Store.Ticks(s.T.Context(), 1)
	require.NoError(s.T, err)
	out := []string{}
	for _, one := range ticks {
		out = append(out, one.Piece)
	}
	return out
}

// follow posts a form of the bathroom view and goes where the answer sends.
func follow(s trial.Site, form url.Values) string {
	s.T.Helper()
	answer, page := s.Post("/jobs/1/bathroom", form)
	require.Equal(s.T, http.StatusSeeOther, answer.StatusCode, page)
	_, page = s.Get(answer.Header.Get("Location"))
	return page
}

func TestTheBathroomTakesOneStepAfterTheOther(t *testing.T) {
	s := trial.OfFile(t, "toy")
	_, page := s.Get("/jobs/1/bathroom")
	assert.Contains(t, page, "3 whole tiles")
	assert.Contains(t, page, "0 of 6 set")
	assert.NotContains(t, page, `rel="prev"`)
	page = follow(s, trial.Form(t, page, "All 3 set"))
	assert.Contains(t, page, "3 of 6 set")
	assert.Contains(t, page, `<p class="tick" role="status">✓ set</p>`, "a second tap finds no button")
	assert.NotContains(t, page, `class="set"`)
	assert.Len(t, ticked(s), 3)
	before, _ := s.Stored()
	_, page = s.Get("/jobs/1/bathroom")
	assert.Contains(t, page, "course 2", "it opens where one goes on")
	page = follow(s, trial.Form(t, page, "All 3 set"))
	assert.Contains(t, page, "6 of 6 set")
	assert.NotContains(t, page, `rel="next"`)
	after, _ := s.Stored()
	assert.Equal(t, before, after, "ticks are no edit")
	_, page = s.Get("/jobs/1/bathroom")
	assert.Contains(t, page, "course 1", "all is set: from the beginning")
}

// A course is set with one tick, cuts and all, and the page goes on behind it.
func TestACourseIsSetWithOneTick(t *testing.T) {
	s := trial.New(t)
	_, page := s.Get("/jobs/1/bathroom")
	assert.Contains(t, page, "9 whole tiles")
	page = follow(s, trial.Form(t, page, "All 11 of course 7 are set"))
	set := ticked(s)
	assert.Len(t, set, 11)
	for _, id := range set {
		assert.True(t, strings.HasPrefix(id, "B-07-"), id)
	}
	assert.Contains(t, page, `role="status">✓ set</p>`)
	assert.NotContains(t, page, "The whole course", "nothing of it is left")
	next := regexp.MustCompile(`rel="next" href="([^"]*)"`).FindStringSubmatch(page)
	require.NotNil(t, next)
	_, page = s.Get(html.UnescapeString(next[1]))
	assert.Contains(t, page, "· course 7,", "the first full course goes round")
	whole := regexp.MustCompile(`class="set">([^<]*)<`).FindStringSubmatch(page)
	require.NotNil(t, whole)
	page = follow(s, trial.Form(t, page, whole[1]))
	assert.Regexp(t, `The other \d of course 7 are set`, page)
	_, page = trial.OfFile(t, "toy").Get("/jobs/1/bathroom")
	assert.NotContains(t, page, "The whole course", "which the step is")
}

func TestATickIsTakenOffOnlyOnAsking(t *testing.T) {
	s := trial.OfFile(t, "toy")
	_, page := s.Get("/jobs/1/bathroom")
	assert.NotContains(t, page, "Not set after all?")
	page = follow(s, trial.Form(t, page, "All 3 set"))
	assert.Regexp(t, `<details class="fold" id="unset"><summary>Not set after all\?`, page)
	page = follow(s, trial.Form(t, page, "Take the tick off"))
	assert.Contains(t, page, "0 of 6 set")
	assert.Empty(t, ticked(s))
}

func TestTilesOfARowAreTickedOneByOneToo(t *testing.T) {
	s := trial.OfFile(t, "toy")
	_, page := s.Get("/jobs/1/bathroom")
	marks := regexp.MustCompile(`name="mark" value="([0-9a-f]+)" aria-label="(\S+) is set"`).FindAllStringSubmatch(page, -1)
	require.Len(t, marks, 3)
	page = follow(s, url.Values{"wall": {"1"}, "piece": {marks[1][2]}, "mark": {marks[1][1]}})
	assert.Equal(t, []string{marks[1][2]}, ticked(s))
	assert.Contains(t, page, "Set the other 2")
	follow(s, trial.Form(t, page, "Set the other 2"))
	assert.Len(t, ticked(s), 3)
}

func TestTicksOfAChangedPlanAreKeptAndCounted(t *testing.T) {
	s := trial.OfFile(t, "toy")
	_, page := s.Get("/jobs/1/bathroom")
	stale := trial.Form(t, page, "All 3 set")
	follow(s, stale)
	posted := s.Bench()
	posted.Set("joint", "3")
	answer, text := s.Post("/jobs/1", posted)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, text)
	_, page = s.Get("/jobs/1/bathroom")
	lost := regexp.MustCompile(`(\d) ticks? no longer appl`).FindStringSubmatch(page)
	require.NotNil(t, lost, "said, with their number")
	assert.Len(t, ticked(s), 3, "and kept")

	answer, text = s.Post("/jobs/1/bathroom", stale)
	assert.Equal(t, http.StatusConflict, answer.StatusCode, "a page of the plan before ticks nothing")
	assert.Contains(t, text, "nothing was ticked")
	assert.Len(t, ticked(s), 3)

	s.Post("/jobs/1/undo", url.Values{"revision": {s.Bench().Get("revision")}})
	_, page = s.Get("/jobs/1/bathroom")
	assert.Contains(t, page, "3 of 6 set", "they are there again")
	assert.NotContains(t, page, "no longer appl")

	s.Post("/jobs/1/redo", url.Values{"revision": {s.Bench().Get("revision")}})
	_, page = s.Get("/jobs/1/bathroom")
	page = follow(s, trial.Form(t, page, "for good"))
	assert.NotContains(t, page, "no longer appl")
	assert.Len(t, ticked(s), 3-int(lost[1][0]-'0'), "dropped by the person")
}

func TestTicksOutliveAnEditThatMovesNoTile(t *testing.T) {
	s := trial.OfFile(t, "toy")
	_, page := s.Get("/jobs/1/bathroom")
	follow(s, trial.Form(t, page, "All 3 set"))
	posted := s.Bench()
	posted.Set("title", "Another name")
	s.Post("/jobs/1", posted)
	_, page = s.Get("/jobs/1/bathroom")
	assert.Contains(t, page, "3 of 6 set")
	assert.NotContains(t, page, "no longer appl")
}

func TestAnAddressThatFitsNothingStillShowsThePage(t *testing.T) {
	s := trial.New(t)
	for _, query := range []string{"?wall=99", "?wall=-1", "?wall=x", "?piece=Z-99-99", "?wall=2&piece=%3Cscript%3E", "?piece=" + strings.Repeat("A", 5000)} {
		answer, page := s.Get("/jobs/1/bathroom" + query)
		assert.Equal(t, http.StatusOK, answer.StatusCode, query)
		assert.NotContains(t, page, "<script>")
		assert.Less(t, len(page), 400_000)
	}
	_, page := s.Get("/jobs/1/bathroom?piece=Z-99-99")
	assert.Contains(t, page, "There is no piece Z-99-99")
	answer, _ := s.Get("/jobs/9/bathroom")
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)
	for _, form := range []url.Values{{"mark": {"made up"}}, {"mark": {""}}} {
		answer, _ = s.Post("/jobs/1/bathroom", form)
		assert.Equal(t, http.StatusConflict, answer.StatusCode)
	}
	assert.Empty(t, ticked(s))
}

// Walking from the first step to the last by Next, with no script, shows every
// piece once and every caution of the plan where its work is.
func TestNextLeadsOverEveryPieceAndEveryCaution(t *testing.T) {
	s := trial.New(t)
	_, bench := s.Get("/jobs/1")
	next := regexp.MustCompile(`rel="next" href="([^"]+)"`)
	marks := regexp.MustCompile(`type="hidden" name="mark" value="([0-9a-f]+)"`)
	seen, said := map[string]bool{}, map[string]bool{}
	path, steps := "/jobs/1/bathroom", 0
	total := ""
	for path != "" {
		_, page := s.Get(path)
		steps++
		total = regexp.MustCompile(`0 of (\d+) set`).FindStringSubmatch(page)[1]
		for _, m := range marks.FindAllStringSubmatch(page[strings.Index(page, `class="thumb"`):], -1) {
			require.False(t, seen[m[1]], "once")
			seen[m[1]] = true
		}
		for _, caution := range []string{"silica", "mains power", "asbestos", "C1288", "The tub moves", "carries all the others", "grab bar"} {
			if strings.Contains(page, caution) {
				said[caution] = true
			}
		}
		if strings.Contains(page, "silica") {
			require.Contains(t, page, "Sketch of the cut")
		}
		path = ""
		if m := next.FindStringSubmatch(page); m != nil {
			path = html.UnescapeString(m[1])
		}
	}
	pieces := 0
	for _, m := range regexp.MustCompile(`(\d+), \d+ cut`).FindAllStringSubmatch(bench, -1) {
		n, err := strconv.Atoi(m[1])
		require.NoError(t, err)
		pieces += n
	}
	assert.Equal(t, total, strconv.Itoa(pieces), "as many as the bench lists")
	assert.Equal(t, total, strconv.Itoa(len(seen)))
	assert.Less(t, steps, len(seen), "whole tiles beside each other are one step")
	assert.Len(t, said, 7, "%v", said)
}

func TestHostileNamesStayTextInTheBathroom(t *testing.T) {
	const hostile = `\"><script>alert(1)</script><b onclick='x' & `
	file := strings.NewReplacer(`"back"`, `"`+hostile+`"`, `"shelf"`, `"`+hostile+`"`, `"spout"`, `"`+hostile+`"`, "Heron Street", hostile).Replace(string(static.Demo))
	s := trial.Of(t, []byte(file))
	for _, query := range []string{"", "?wall=1", "?wall=2", "?piece=L-08-03", "?piece=A-08-03", "?wall=%22%3E%3Cscript%3E&piece=%22%3E%3Cscript%3E"} {
		_, page := s.Get("/jobs/1/bathroom" + query)
		assert.Contains(t, page, "&lt;script&gt;", query)
		assert.NotContains(t, page, "<script>", query)
		assert.NotContains(t, page, "<b onclick", query)
		assert.NotContains(t, page, " style=", query)
	}
	page := follow(s, trial.Form(t, trial.Second(s.Get("/jobs/1/bathroom")), "set"))
	assert.Contains(t, page, "✓ set", "a mark takes any name")
}

// Courses that the job itself says stand are no steps, count as set, and make
// no stray of a tick that was made on them.

func TestCoursesThatStandAreSet(t *testing.T) {
	s := trial.OfFile(t, "toy")
	_, page := s.Get("/jobs/1/bathroom")
	follow(s, trial.Form(t, page, "All 3 set"))
	kept, job := s.Stored()
	job.Walls[0].Set = &survey.AsSet{Course: "1", Left: "101", Right: "101", Start: survey.SetStart{Is: "joint", At: "101"}}
	document, err := survey.Write(job)
	require.NoError(t, err)
	_, err = s.Store.Save(t.Context(), 1, kept.Revision, job.Title, document)
	require.NoError(t, err)
	_, page = s.Get("/jobs/1/bathroom")
	assert.Contains(t, page, "3 of 6 set")
	assert.Contains(t, page, "course 2")
	assert.NotContains(t, page, `rel="prev"`)
	assert.NotContains(t, page, "no longer appl")
	_, page = s.Get("/jobs/1/bathroom?piece=" + ticked(s)[0])
	assert.Contains(t, page, "stands already")
}

func TestTheSetOutComesBeforeTheFirstTile(t *testing.T) {
	s := trial.OfFile(t, "toy")
	_, page := s.Get("/jobs/1/bathroom")
	assert.Contains(t, page, "?set-out")
	answer, page := s.Get("/jobs/1/bathroom?set-out")
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, "Strike the course line")
	assert.Contains(t, page, "on the level line")
	assert.Contains(t, page, "From this line down to the floor", "there is no rim")
	assert.Contains(t, page, `rel="next" href="/jobs/1/bathroom?wall=1&amp;piece=W-01-0`)
}

// The first tiles of a wall are set at the edge that is struck, and the step says so: a start is the
// tile edge there as on the bench, not the middle of the joint beside it.
func TestTheFirstTilesStandOnTheStart(t *testing.T) {
	for _, name := range []string{"alcove", "corner-shower", "one-wall"} {
		s := trial.OfFile(t, name)
		_, first := s.Get("/jobs/1/bathroom")
		assert.Contains(t, first, "from the left end, on the start", name)
	}
}

// From the bathroom too one comes to every page of the job.
func TestEveryPageOfTheJobIsReached(t *testing.T) {
	s := trial.OfFile(t, "toy")
	for _, path := range []string{"", "?set-out"} {
		_, page := s.Get("/jobs/1/bathroom" + path)
		for _, to := range []string{"", "/work", "/choices", "/sheets", "/history"} {
			assert.Contains(t, page, `<a href="/jobs/1`+to+`">`, path)
		}
		assert.Contains(t, page, `<a href="/jobs/1/bathroom" aria-current="page">`, path)
	}
}

// The drawing of a wall is a table too: its steps in order with the ids of their pieces, each a link to its step, and
// whether it is set.
func TestTheWallIsATableToo(t *testing.T) {
	s := trial.OfFile(t, "toy")
	_, page := s.Get("/jobs/1/bathroom")
	follow(s, trial.Form(t, page, "All 3 set"))
	_, page = s.Get("/jobs/1/bathroom")
	root, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	var lines []string
	for n := range root.Descendants() {
		if n.Data == "tr" && n.Parent.Data == "tbody" {
			lines = append(lines, trial.Text(n))
		}
	}
	require.Len(t, lines, 2)
	assert.Contains(t, lines[0], "3 whole tiles")
	assert.Contains(t, lines[0], "✓ set")
	assert.Contains(t, lines[1], "not yet")
	assert.Regexp(t, `W-01-01 to 03`, lines[0])
	assert.Contains(t, page, `<tr class="selected">`, "the step that is shown")
}
