// Package choices puts the choices of a job side by side.
package choices

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"net/url"
	"strings"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/history"
	"coursewright/web/page"
)

// pages are the pages of the choices.
type pages struct{ page.Site }

// Routes are the addresses of the choices.
func Routes(site page.Site) []page.Route {
	s := pages{site}
	return []page.Route{
		page.Get("/jobs/{id}/choices", s.showChoices),
		page.Post("/jobs/{id}/choices", s.editChoices),
		page.Get("/jobs/{id}/choices/help", s.showHelp),
	}
}

// showChoices puts the choices of a job side by side.
func (s pages) showChoices(w http.ResponseWriter, r *http.Request) error {
	standing, err := s.StandingOf(r)
	if err != nil {
		return err
	}
	return s.choices(w, r, standing.Stored, standing.Job, nil)
}

// editChoices does what a button of the page asks, and saves it.
func (s pages) editChoices(w http.ResponseWriter, r *http.Request) error {
	standing, err := s.StandingOf(r)
	if err != nil {
		return err
	}
	stored, job := standing.Stored, standing.Job
	if err := r.ParseForm(); err != nil {
		return page.BadRequest(err)
	}
	changed, err := chosen(job, r.PostForm)
	if err != nil {
		return page.BadRequest(err)
	}
	plan, err := s.Solve(r.Context(), changed)
	var faults survey.Faults
	if errors.As(err, &faults) {
		return s.choices(w, r, stored, job, faults)
	}
	if err != nil {
		return err
	}
	return history.Keeper{Site: s.Site}.Save(w, r, stored.ID, changed, plan)
}

// chosen applies one verb of the page to a job.
func chosen(job survey.Job, form url.Values) (survey.Job, error) {
	do, of, name := form.Get("do"), form.Get("of"), strings.TrimSpace(form.Get("name"))
	switch do {
	case "colour":
		return job.Colour(of, form.Get("tile"), form.Get("grout"))
	case "choose":
		return job.Choose(of)
	case "duplicate":
		return job.Duplicate(of, name)
	case "rename":
		return job.Rename(of, name)
	case "delete":
		return job.Drop(of)
	}
	return job, fmt.Errorf("the button %q is not known", do)
}

// choices solves every choice and renders them; one that cannot be solved says why.
func (s pages) choices(w http.ResponseWriter, r *http.Request, stored store.Job, job survey.Job, faults survey.Faults) error {
	shown := Choices{Job: s.Shown(r.Context(), stored, job, layout.Plan{})}
	shown.Faults, shown.sight = faults, sightOf(r, job)
	shown.Here = shown.query()
	for i, name := range choiceNames(job) {
		option := Option{Name: name, Chosen: name == job.Chosen}
		one, there := job.As(name)
		if !there { // a job without choices is the only one it has
			one, option.Alone, option.Name, option.Chosen = job, true, cmp.Or(job.Tile.Name, "first"), true
		}
		if err := s.option(r, &option, one, i, shown.sight); err != nil {
			return err
		}
		shown.Options = append(shown.Options, option)
	}
	code := http.StatusOK
	if faults != nil {
		code = http.StatusUnprocessableEntity
	}
	return page.Render(w, r, code, ChoicesPage(shown))
}

func choiceNames(job survey.Job) []string {
	if len(job.Choices) == 0 {
		return []string{""}
	}
	var names []string
	for _, c := range job.Choices {
		names = append(names, c.Name)
	}
	return names
}

// showHelp works out what would help one choice: ?of=NAME, or without it the job.
func (s pages) showHelp(w http.ResponseWriter, r *http.Request) error {
	standing, err := s.StandingOf(r)
	if err != nil {
		return err
	}
	name := r.URL.Query().Get("of")
	one, there := standing.Job.As(name)
	if !there && name != "" {
		return fs.ErrNotExist
	}
	if !there {
		one = standing.Job
	}
	plan, err := s.Solve(r.Context(), one)
	if err != nil {
		return page.BadRequest(err)
	}
	h := page.Help{Job: s.Shown(r.Context(), standing.Stored, one, plan), Of: cmp.Or(name, "this job"), Tab: "choices", Back: "Back to the choices"}
	h.From = page.JobPath(h.ID, "/choices")
	if h.Help, err = s.WouldHelp(r.Context(), one, plan); err != nil {
		return err
	}
	return page.Render(w, r, http.StatusOK, page.HelpPage(h))
}

// option solves one choice and draws it.
func (s pages) option(r *http.Request, o *Option, job survey.Job, i int, how sight) error {
	o.Typed = job
	plan, err := s.Solve(r.Context(), job)
	var faults survey.Faults
	if errors.As(err, &faults) {
		o.Faults = faults
		return nil
	}
	if err != nil {
		return err
	}
	o.Job = page.Job{Typed: job, Plan: plan}
	schedule := page.Schedule(plan)
	o.Buy = page.ToBuy(plan, schedule)
	o.Front = how.front(r, plan)
	o.Cuts = page.CutsOn(plan, schedule, o.walls())
	scene := how.scene(plan, o.Front)
	o.Drawing, o.Fitted = page.Picture(scene, fmt.Sprintf("choice-%d", i)), how.nearlyFits(scene)
	return nil
}
