package web

import (
	"cmp"
	"errors"
	"fmt"
	"net/http"
	"strings"

	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/drawing"
	"coursewright/web/view"
)

// showChoices puts the choices of a job side by side.
func (s *Server) showChoices(w http.ResponseWriter, r *http.Request) error {
	stored, job, err := s.typed(r)
	if err != nil {
		return err
	}
	return s.choices(w, r, stored, job, nil)
}

// editChoices does what a button of the page asks, and saves it.
func (s *Server) editChoices(w http.ResponseWriter, r *http.Request) error {
	stored, job, err := s.typed(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return badRequest(err)
	}
	changed, err := chosen(job, r.PostForm.Get("do"), r.PostForm.Get("of"), strings.TrimSpace(r.PostForm.Get("name")))
	if err != nil {
		return badRequest(err)
	}
	plan, err := s.Solve(changed)
	var faults survey.Faults
	if errors.As(err, &faults) {
		return s.choices(w, r, stored, job, faults)
	}
	if err != nil {
		return err
	}
	return s.save(w, r, stored.ID, changed, plan)
}

// chosen applies one verb of the page to a job.
func chosen(job survey.Job, do, of, name string) (survey.Job, error) {
	switch do {
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

// typed loads the job of a request as it was typed.
func (s *Server) typed(r *http.Request) (store.Job, survey.Job, error) {
	stored, err := s.load(r)
	if err != nil {
		return stored, survey.Job{}, err
	}
	job, err := survey.Read(stored.Document)
	return stored, job, err
}

// choices solves every choice and renders them; one that cannot be solved says why.
func (s *Server) choices(w http.ResponseWriter, r *http.Request, stored store.Job, job survey.Job, faults survey.Faults) error {
	page := view.Choices{Bench: view.Bench{ID: stored.ID, Revision: stored.Revision, Typed: job, Wall: -1, Faults: faults}}
	for i, name := range choiceNames(job) {
		option := view.Option{Name: name, Chosen: name == job.Chosen}
		one, there := job.As(name)
		if !there { // a job without choices is the only one it has
			one, option.Alone, option.Name, option.Chosen = job, true, cmp.Or(job.Tile.Name, "first"), true
		}
		if err := s.option(&option, one, i); err != nil {
			return err
		}
		page.Options = append(page.Options, option)
	}
	code := http.StatusOK
	if faults != nil {
		code = http.StatusUnprocessableEntity
	}
	return render(w, r, code, view.ChoicesPage(page))
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

// option solves one choice and draws it.
func (s *Server) option(o *view.Option, job survey.Job, i int) error {
	plan, err := s.Solve(job)
	var faults survey.Faults
	if errors.As(err, &faults) {
		o.Faults = faults
		return nil
	}
	if err != nil {
		return err
	}
	o.Bench = view.Bench{Typed: job, Plan: plan, Wall: -1}
	o.Buy = toBuy(plan, schedule(plan))
	o.Drawing = picture(drawing.Wrap(plan, drawing.Options{}), fmt.Sprintf("choice-%d", i))
	return nil
}
