package bench_test

import (
	"context"

	"coursewright/web/trial"

	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
)

func TestALookSavesNothing(t *testing.T) {
	s := trial.New(t)
	before, _ := s.Stored()
	form := s.Bench()
	form.Set("do", "place 2 course=-37")
	_, page := s.Post("/jobs/1/look?wall=2", form)
	assert.NotContains(t, page, `id="curve-1"`, "of what nobody sees")
	answer, page := s.Post("/jobs/1/look?wall=2", form, "X-Look", "17", "X-Told", "open")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Equal(t, "17", answer.Header.Get("X-Look"), "the answer says which question it is for")
	assert.Contains(t, page, `id="answers"`, "the answers follow too")
	assert.Contains(t, page, `id="curve-1"`)
	assert.NotContains(t, page, `id="curve-0"`, "the wall in front alone")
	assert.NotContains(t, page, "<html", "only what follows the hand")
	after, _ := s.Stored()
	assert.Equal(t, before, after)

	form.Set("do", "place 2 niche shelf left=12")
	answer, page = s.Post("/jobs/1/look", form)
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, "Left edge of niche shelf on back:")
	assert.Contains(t, page, "which is 20&#34; past where the survey lets it stand")

	form.Set("do", "paint it")
	answer, _ = s.Post("/jobs/1/look", form)
	assert.Equal(t, http.StatusBadRequest, answer.StatusCode)
	answer, _ = s.Post("/jobs/9/look", form)
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)
	answer, _ = s.Post("/jobs/1/look", form, "Origin", "https://elsewhere.example", "Sec-Fetch-Site", "cross-site")
	assert.Equal(t, http.StatusForbidden, answer.StatusCode)
}

// Two pins that cannot stand together are both named, with how far they are apart.
func TestALookNamesBothOfAClash(t *testing.T) {
	s := trial.New(t)
	form := s.Bench()
	form.Set("do", "place 2 niche shelf left=34")
	s.Post("/jobs/1", form)
	form = s.Bench()
	form.Set("do", "place 2 niche shelf right=50")
	answer, page := s.Post("/jobs/1/look", form)
	require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, "clashes with “niche shelf left” at 34&#34; by 1 1/2&#34;")
}

func TestAPieceHasAnAddressWithoutAScript(t *testing.T) {
	s := trial.New(t)
	_, page := s.Get("/jobs/1?wall=2&piece=B-10-10")
	for _, said := range []string{`data-piece="B-10-10" data-wall="1"`, "back, course 10", "cut: right", "/jobs/1/work?cut=C"} {
		assert.Contains(t, page, said)
	}
	_, page = s.Get("/jobs/1?piece=B-99-99")
	assert.NotContains(t, page, "piececard")
	answer, card := s.Get("/jobs/1/piece/B-10-10")
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, card, "piececard")
	answer, _ = s.Get("/jobs/1/piece/B-99-99")
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)
	_, card = s.Get("/jobs/1/piece?wall=2&x=400&y=0")
	assert.Contains(t, card, `data-piece="B-18-03" data-wall="1"`)
	answer, _ = s.Get("/jobs/1/piece?wall=4&x=wide&y=0")
	assert.Equal(t, http.StatusBadRequest, answer.StatusCode)
	answer, _ = s.Get("/jobs/1/piece?wall=2&x=9000&y=0")
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)
}

func TestWhatWasMeasuredCanBeDraggedOnItsWall(t *testing.T) {
	file := strings.Replace(string(static.Demo), `"openings": [
       {"kind": "niche", "name": "shelf", "left": {"from": "32", "to": "41"}, "width": {"from": "11", "to": "14 1/2"},
        "bottom": {"from": "2", "to": "10"}, "height": {"from": "11", "to": "16"}}]`,
		`"openings": [{"kind": "window", "name": "north", "left": {"at": "20"}, "width": {"at": "24"}, "bottom": {"from": "4", "to": "8"}, "height": {"at": "20"}}]`, 1)
	require.Contains(t, file, "north")
	s := trial.Of(t, []byte(file))
	_, page := s.Get("/jobs/1?wall=2")
	for _, handle := range []string{`data-handle="move window north" data-axis="x"`, `data-handle="size window north" data-axis="xy"`,
		`data-handle="window north bottom" data-axis="y"`, `data-handle="base 1 reading 2" data-axis="xy"`, `data-handle="base 1 reading 3" data-axis="y"`} {
		assert.Contains(t, page, handle)
	}
	_, page = s.Get("/jobs/1")
	assert.NotContains(t, page, "reading 2&#34; data-axis", "all walls at once show what is decided")
}

func TestAWrongWidthIsWorkedOutBothWays(t *testing.T) {
	s := trial.New(t)
	before, _ := s.Stored()
	answer, page := s.Get("/jobs/1/widths")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Equal(t, 6, strings.Count(page, `<th scope="row">`), "three walls, narrower and wider")
	assert.Contains(t, page, "back 1/4&#34; narrower")
	after, _ := s.Stored()
	assert.Equal(t, before, after)
	_, bench := s.Get("/jobs/1")
	assert.Contains(t, bench, `href="/jobs/1/widths"`)
	_, told := s.Get("/jobs/1/told")
	assert.Contains(t, told, "Pin the course line: best", "the table of course lines has the one of the plan")
}

// A remembered plan is shared by all pages, so none may change it.
func TestNoPageChangesAPlan(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	var shared layout.Plan
	s := trial.Solving(t, static.Demo, func(_ context.Context, job survey.Job) (layout.Plan, error) {
		if len(shared.Walls) == 0 {
			shared, err = layout.Now(job)
		}
		return shared, err
	})
	for _, path := range []string{"", "?wall=2", "?piece=B-10-10", "/work?cut=C1", "/choices", "/bathroom", "/widths", "/plan.json", "/cuts.csv", "/takeoff.csv", "/sheets.pdf"} {
		answer, _ := s.Get("/jobs/1" + path)
		require.Equal(t, http.StatusOK, answer.StatusCode, path)
	}
	fresh, err := layout.Now(job)
	require.NoError(t, err)
	assert.Equal(t, fresh, shared)
}
