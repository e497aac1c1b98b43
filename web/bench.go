package web

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"net/http"
	"strconv"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/form"
	"coursewright/web/view"
)

func (s *Server) showBench(w http.ResponseWriter, r *http.Request) error {
	stored, err := s.load(r)
	if err != nil {
		return err
	}
	return s.bench(w, r, stored, nil, "")
}

// editJob takes the whole form, solves it, and saves it if it can be solved.
// What cannot be is shown again with its faults, over the last good drawing.
func (s *Server) editJob(w http.ResponseWriter, r *http.Request) error {
	stored, err := s.load(r)
	if err != nil {
		return err
	}
	tried, err := posted(r, stored)
	if err != nil {
		return badRequest(err)
	}
	plan, err := s.Solve(tried.job)
	var faults survey.Faults
	if errors.As(err, &faults) || len(tried.faults) > 0 {
		tried.faults, tried.code = append(tried.faults, faults...), http.StatusUnprocessableEntity
		return s.bench(w, r, stored, &tried, "Not saved")
	}
	if err != nil {
		return err
	}
	err = s.save(w, r, stored.ID, tried.job, plan)
	if errors.Is(err, store.ErrFull) || errors.Is(err, store.ErrUnavailable) { // keep what was typed on the page
		code, title, text := explain(err)
		tried.code = code
		return s.bench(w, r, stored, &tried, title+". "+text)
	}
	return err
}

// posted lays the form over the job it was filled from and does what the
// button asks.
func posted(r *http.Request, stored store.Job) (attempt, error) {
	if err := r.ParseForm(); err != nil {
		return attempt{}, err
	}
	job, err := filled(r, stored)
	if err != nil {
		return attempt{}, err
	}
	before, _ := filled(r, stored) // again, because Decode writes into the first
	tried := attempt{typed: map[string]string{}}
	err = form.Decode(&job, r.PostForm)
	if err != nil && !errors.As(err, &tried.faults) {
		return attempt{}, err
	}
	for _, f := range tried.faults {
		tried.typed[f.Path] = r.PostForm.Get(f.Path)
	}
	err = form.Apply(&job, r.PostForm.Get(form.Do))
	tried.job, tried.shown = job, form.Shown(job, before)
	return tried, err
}

// filled reads the job a posted form was filled from.
func filled(r *http.Request, stored store.Job) (survey.Job, error) {
	kept, err := survey.Read(stored.Document)
	if err != nil {
		return survey.Job{}, err
	}
	return form.Base(kept, r.PostForm)
}

// save keeps a job that was solved, and shows it.
func (s *Server) save(w http.ResponseWriter, r *http.Request, id int64, job survey.Job, plan layout.Plan) error {
	base, err := revision(r)
	if err != nil {
		return err
	}
	return s.keep(w, r, edit{id: id, base: base, job: job, plan: plan})
}

// edit is a job that was solved and is to be saved.
type edit struct {
	id     int64
	base   int64 // the revision it was made on
	job    survey.Job
	plan   layout.Plan
	joined string // what to say of it where it was laid together with another
}

// keep saves an edit and shows the job, or lets it meet what was saved meanwhile.
func (s *Server) keep(w http.ResponseWriter, r *http.Request, e edit) error {
	document, err := survey.Write(e.job)
	if err != nil {
		return err
	}
	saved, err := s.Store.Save(r.Context(), e.id, e.base, e.job.Title, document)
	var conflict *store.Conflict
	if errors.As(err, &conflict) {
		return s.meet(w, r, conflict, e.job)
	}
	if err != nil {
		return err
	}
	if !live(r) && (e.joined == "" || r.URL.Path != jobPath(e.id)) {
		http.Redirect(w, r, r.URL.RequestURI(), http.StatusSeeOther)
		return nil
	}
	return render(w, r, http.StatusOK, view.BenchPage(s.viewOf(r, saved, e.job, e.plan, cmp.Or(e.joined, "Saved"))))
}

// move is undo or redo.
func (s *Server) move(step func(context.Context, int64, int64) (store.Job, error)) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		id, err := jobID(r)
		if err != nil {
			return err
		}
		base, err := revision(r)
		if err != nil {
			return err
		}
		stored, err := step(r.Context(), id, base)
		var conflict *store.Conflict
		if errors.As(err, &conflict) { // nothing of the person's own is at stake: show what there is
			return s.bench(w, r, conflict.Theirs, nil, "Changed in another window")
		}
		if err != nil {
			return err
		}
		if !live(r) {
			http.Redirect(w, r, jobPath(id)+query(r), http.StatusSeeOther)
			return nil
		}
		return s.bench(w, r, stored, nil, "Saved")
	}
}

// attempt is a job as typed that could not be solved, or not be saved.
type attempt struct {
	code   int // the status it is answered with
	job    survey.Job
	shown  survey.Job        // the job its form is filled from
	typed  map[string]string // by path, what no field of the job can hold
	faults survey.Faults
}

// bench renders a stored job, with an attempt at a change over it if there is one.
func (s *Server) bench(w http.ResponseWriter, r *http.Request, stored store.Job, tried *attempt, status string) error {
	job, err := survey.Read(stored.Document)
	if err != nil {
		return fmt.Errorf("job %d: %w", stored.ID, err)
	}
	plan, err := s.Solve(job)
	var faults survey.Faults
	if err != nil && !errors.As(err, &faults) {
		return err
	}
	page, code := s.viewOf(r, stored, job, plan, status), http.StatusOK
	page.Faults = faults
	if tried != nil {
		shown, err := survey.Write(tried.shown)
		if err != nil {
			return err
		}
		page.Typed, page.Raw, page.Filled = tried.job, tried.typed, string(shown)
		page.Faults, code = tried.faults, tried.code
		if base, err := revision(r); err == nil {
			page.Revision = base
		}
	}
	return render(w, r, code, view.BenchPage(page))
}

// viewOf gathers what the page shows of a job.
func (s *Server) viewOf(r *http.Request, stored store.Job, job survey.Job, plan layout.Plan, status string) view.Bench {
	b := view.Bench{
		ID: stored.ID, Revision: stored.Revision, CanUndo: stored.CanUndo, CanRedo: stored.CanRedo,
		Typed: job, Filled: string(stored.Document), Plan: plan, Wall: front(r, plan), Status: status,
		Phone: s.phone(stored.ID),
	}
	if len(plan.Walls) > 0 {
		b.Schedule = schedule(plan)
		b.Card = card(plan, b.Schedule, r.URL.Query().Get("piece"))
	}
	draw(&b)
	return b
}

// front is the wall brought to the front, or -1.
func front(r *http.Request, plan layout.Plan) int {
	n, err := strconv.Atoi(r.URL.Query().Get("wall"))
	if err != nil || n < 1 || n > len(plan.Walls) {
		return -1
	}
	return n - 1
}

// live tells whether the page's script asks: it takes the page at once, where
// a browser is sent on to it.
func live(r *http.Request) bool { return r.Header.Get("X-Bench") == "live" }

func query(r *http.Request) string {
	if r.URL.RawQuery == "" {
		return ""
	}
	return "?" + r.URL.RawQuery
}

// revision reads which revision the form was filled from.
func revision(r *http.Request) (int64, error) {
	n, err := strconv.ParseInt(r.PostFormValue(form.Revision), 10, 64)
	if err != nil || n < 1 {
		return 0, &refusal{http.StatusBadRequest, "The form does not say which state of the job it was filled from. Load the page again."}
	}
	return n, nil
}
