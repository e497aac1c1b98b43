package work_test

import (
	"coursewright/web/trial"

	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/finding"
	"coursewright/layout/survey"
)

func TestTheWorkPageHoldsTheWholeSchedule(t *testing.T) {
	s := trial.New(t)
	answer, page := s.Get("/jobs/1/work?cut=C2")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	_, job := s.Stored()
	plan, err := layout.Now(job)
	require.NoError(t, err)
	schedule := cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, cuts.For(plan.Room))
	for _, g := range schedule.Groups {
		assert.Contains(t, page, `<tr id="`+g.ID+`"`)
		for _, id := range g.Pieces {
			assert.Contains(t, page, "<span>"+id+"</span>")
		}
	}
	for _, pair := range schedule.Offcuts.Pairs {
		assert.Contains(t, page, `data-pieces="`+pair[0]+" "+pair[1]+`"`)
	}
	assert.Contains(t, page, `<tr id="C2" class="selected"`)
	assert.Contains(t, page, "The flat 10\u00a0% rule would buy")
	assert.Contains(t, page, "Dry lay")
	assert.Contains(t, page, finding.LocalCode)
	assert.NotContains(t, page, "style=", "nothing inline")
}

func TestACutIsMarkedInTheDrawingOnly(t *testing.T) {
	s := trial.New(t)
	_, plain := s.Get("/jobs/1/work")
	_, marked := s.Get("/jobs/1/work?cut=C1")
	_, none := s.Get("/jobs/1/work?cut=C999")
	heavy := func(page string) int { return strings.Count(page, `class="start"`) }
	row := regexp.MustCompile(`id="C1"[^>]*data-pieces="([^"]*)"`).FindStringSubmatch(plain)
	require.NotNil(t, row)
	assert.Equal(t, len(strings.Fields(row[1])), heavy(marked)-heavy(plain), "as many edges as the cut has pieces")
	assert.Equal(t, heavy(plain), heavy(none))
}

func TestSettingsOfTheWorkAreSavedInTheJob(t *testing.T) {
	s := trial.New(t)
	_, before := s.Get("/jobs/1/takeoff.csv")
	answer, page := s.Post("/jobs/1/work", s.With("work.kerf", "0", "work.breakage", "15", "work.turn", "false", "work.holds", "true",
		"work.niche.depth", "3 1/2", "work.hours.grout", "36", "joint", "1/4"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	assert.Equal(t, "/jobs/1/work", answer.Header.Get("Location"))
	kept, job := s.Stored()
	assert.True(t, kept.CanUndo)
	no := false
	assert.Equal(t, survey.Work{Kerf: "0", Breakage: "15", Turn: &no, Holds: true,
		Niche: survey.NicheWork{Depth: "3 1/2"}, Hours: survey.Hours{Grout: "36"}}, job.Work)
	assert.Equal(t, "1/8", job.Joint.Plain, "the page changes nothing else")
	_, after := s.Get("/jobs/1/takeoff.csv")
	assert.NotEqual(t, before, after)
	assert.Contains(t, after, "niche returns")
	_, page = s.Get("/jobs/1/work")
	assert.Contains(t, page, "wait 36 hours")
	assert.Contains(t, page, "Kerf 0")
	assert.Contains(t, page, `<option value="false" selected>no</option>`)
}

func TestFaultySettingsAreNotSaved(t *testing.T) {
	s := trial.New(t)
	before, _ := s.Stored()
	answer, page := s.Post("/jobs/1/work", s.With("work.kerf", "thin", "work.breakage", "500"))
	assert.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	assert.Contains(t, page, `href="#work.kerf"`)
	assert.Contains(t, page, `href="#work.breakage"`)
	assert.Contains(t, page, `value="thin"`)
	after, _ := s.Stored()
	assert.Equal(t, before, after)
	for _, fields := range []url.Values{s.With("work.colour", "blue"), {"work.kerf": {"0"}}} {
		answer, _ = s.Post("/jobs/1/work", fields)
		assert.Equal(t, http.StatusBadRequest, answer.StatusCode)
	}
}

func TestTwoWindowsDoNotOverwriteTheWork(t *testing.T) {
	s := trial.New(t)
	first, second := s.With("work.kerf", "0"), s.With("work.kerf", "1/16")
	s.Post("/jobs/1/work", first)
	answer, page := s.Post("/jobs/1/work", second)
	assert.Equal(t, http.StatusConflict, answer.StatusCode)
	assert.Contains(t, page, "1/16")
}

// Saving one setting leaves the others as they are: what a list shows because it is usual is no answer.
func TestASettingThatNobodyHasTouchedStaysOut(t *testing.T) {
	s := trial.New(t)
	_, page := s.Get("/jobs/1/work")
	form := trial.Form(t, page, "Save the settings")
	form.Set("work.kerf", "3/32")
	_, job := s.Stored()
	answer, page := s.Post("/jobs/1/work", form)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, saved := s.Stored()
	assert.Equal(t, "3/32", saved.Work.Kerf)
	saved.Work.Kerf = job.Work.Kerf
	assert.Equal(t, job.Work, saved.Work)
	for _, turn := range []string{"false", "true"} {
		_, page = s.Get("/jobs/1/work")
		form = trial.Form(t, page, "Save the settings")
		form.Set("work.turn", turn)
		s.Post("/jobs/1/work", form)
		_, saved = s.Stored()
		require.NotNil(t, saved.Work.Turn)
		assert.Equal(t, turn == "true", *saved.Work.Turn)
	}
}

// Every field of the settings has a "?" with a help that is on the page.
func TestEverySettingHasAHelp(t *testing.T) {
	_, page := trial.Swift(t).Get("/jobs/1/work")
	fields := regexp.MustCompile(`<(?:input|select) id="(work\.[^"]+)"`).FindAllStringSubmatch(page, -1)
	assert.Greater(t, len(fields), 12)
	for _, f := range fields {
		opens := regexp.MustCompile(`id="` + regexp.QuoteMeta(f[1]) + `-hint" popovertarget="([^"]+)"`).FindStringSubmatch(page)
		if assert.NotNil(t, opens, f[1]) {
			assert.Contains(t, page, `<section popover class="hintbox" id="`+opens[1]+`"`)
		}
	}
}
