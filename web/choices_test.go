package web_test

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

func TestChoicesFromOneToTwoAndBack(t *testing.T) {
	s := newSite(t)
	_, page := s.get("/jobs/1/choices")
	assert.Equal(t, 1, strings.Count(page, "<svg xmlns"))
	steps := []struct{ do, of, name string }{
		{"duplicate", "kiln white", "large"}, {"choose", "large", ""}, {"rename", "large", "tall"},
	}
	for _, step := range steps {
		answer, page := s.post("/jobs/1/choices", s.at("do", step.do, "of", step.of, "name", step.name))
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		assert.Equal(t, "/jobs/1/choices", answer.Header.Get("Location"))
	}
	bench := s.bench()
	bench.Set("tile.width", "11 7/8")
	answer, _ := s.post("/jobs/1", bench)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)

	_, job := s.stored()
	assert.Equal(t, "tall", job.Chosen)
	assert.Equal(t, "11 7/8", job.Tile.Width, "the bench changes the chosen one")
	assert.Equal(t, []survey.Choice{{Name: "kiln white", Tile: job.Choices[0].Tile, Joint: survey.Measure{Plain: "1/8"}, Bond: job.Bond}, {Name: "tall"}}, job.Choices)
	assert.Equal(t, "5 7/8", job.Choices[0].Tile.Width)
	_, page = s.get("/jobs/1/choices")
	assert.Equal(t, 2, strings.Count(page, "<svg xmlns"))
	for _, said := range []string{"Smallest cut", "Slivers", "Cut pieces", "Tiles to buy", "Cost, where known", "Warnings"} {
		assert.Equal(t, 2, strings.Count(page, "<dt>"+said+"</dt>"), said)
	}

	s.post("/jobs/1/choices", s.at("do", "choose", "of", "kiln white"))
	_, job = s.stored()
	assert.Equal(t, "5 7/8", job.Tile.Width)
	s.post("/jobs/1/choices", s.at("do", "delete", "of", "tall"))
	kept, job := s.stored()
	assert.Empty(t, job.Choices)
	_, err := s.store.Undo(t.Context(), 1, kept.Revision)
	require.NoError(t, err)
	_, job = s.stored()
	assert.Len(t, job.Choices, 2, "undo brings a deleted choice back")
}

func TestWhatChoicesRefuse(t *testing.T) {
	s := newSite(t)
	s.post("/jobs/1/choices", s.at("do", "duplicate", "of", "first", "name", "second"))
	before, _ := s.stored()
	for want, fields := range map[int][][]string{
		http.StatusUnprocessableEntity: {{"do", "duplicate", "of", "first", "name", "second"}, {"do", "rename", "of", "first", "name", " "}},
		http.StatusBadRequest:          {{"do", "delete", "of", "first"}, {"do", "choose", "of", "third"}, {"do", "paint", "of", "first"}},
	} {
		for _, f := range fields {
			answer, page := s.post("/jobs/1/choices", s.at(f...))
			assert.Equal(t, want, answer.StatusCode, "%v: %s", f, page)
		}
	}
	after, _ := s.stored()
	assert.Equal(t, before, after)
}

func TestAChoiceThatNoLongerFitsSaysWhy(t *testing.T) {
	s := newSite(t)
	s.post("/jobs/1/choices", s.at("do", "duplicate", "of", "first", "name", "second"))
	kept, job := s.stored()
	job.Choices[1].Pins.Walls = map[string]survey.WallPin{"back": {Marks: map[string]string{"niche shelf left": "900"}}}
	document, err := survey.Write(job)
	require.NoError(t, err)
	_, err = s.store.Save(t.Context(), 1, kept.Revision, job.Title, document)
	require.NoError(t, err)
	answer, page := s.get("/jobs/1")
	assert.Equal(t, http.StatusOK, answer.StatusCode, "the bench works on the chosen one")
	assert.NotContains(t, page, `class="faults"`)
	answer, page = s.get("/jobs/1/choices")
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, "cannot be set on the walls as they are")
	answer, _ = s.post("/jobs/1/choices", s.at("do", "choose", "of", "second"))
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
}

func TestChoicesFollowAWallThatIsRenamed(t *testing.T) {
	s := newSite(t)
	s.post("/jobs/1/choices", s.at("do", "duplicate", "of", "first", "name", "second"))
	kept, job := s.stored()
	job.Choices[1].Pins.Walls = map[string]survey.WallPin{"back": {Joint: "30"}}
	document, err := survey.Write(job)
	require.NoError(t, err)
	_, err = s.store.Save(t.Context(), 1, kept.Revision, job.Title, document)
	require.NoError(t, err)
	bench := s.bench()
	bench.Set("walls[1].name", "long")
	answer, page := s.post("/jobs/1", bench)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, job = s.stored()
	assert.Equal(t, map[string]survey.WallPin{"long": {Joint: "30"}}, job.Choices[1].Pins.Walls)
}
