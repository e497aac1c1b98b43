// Package bench is the page on which a job is measured and set out.
package bench

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"maps"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/ask"
	"coursewright/web/form"
	"coursewright/web/history"
	"coursewright/web/page"
)

// pages are the pages of the bench.
type pages struct{ page.Site }

// Routes are the addresses of the bench.
func Routes(site page.Site) []page.Route {
	s := pages{site}
	return []page.Route{
		page.Get("/jobs/{id}", s.showBench),
		page.Post("/jobs/{id}", s.editJob),
		page.Look("/jobs/{id}/look", s.look),
		page.Get("/jobs/{id}/piece", s.findPiece),
		page.Get("/jobs/{id}/piece/{piece}", s.showPiece),
		page.Get("/jobs/{id}/widths", s.showWidths),
		page.Get("/jobs/{id}/help", s.showHelp),
		page.Post("/jobs/{id}/help", s.takeHelp),
		page.Get("/jobs/{id}/told", s.showTold),
		page.Get("/jobs/{id}/pieces", s.showPieces),
		page.Post("/jobs/{id}/undo", s.move(s.Store.Undo)),
		page.Post("/jobs/{id}/redo", s.move(s.Store.Redo)),
		page.Post("/jobs/{id}/keep", s.keepChosen),
	}
}

func (s pages) showBench(w http.ResponseWriter, r *http.Request) error {
	stored, err := s.Load(r)
	if err != nil {
		return err
	}
	return s.bench(w, r, stored, nil, "")
}

// editJob takes the whole form, solves it, and saves it if it can be solved.
// What cannot be is shown again with its faults, over the last good drawing.
func (s pages) editJob(w http.ResponseWriter, r *http.Request) error {
	s = s.asked(r)
	stored, err := s.filledFrom(r)
	if err != nil {
		return err
	}
	if err := s.measureAsDrawn(r, stored); err != nil {
		return err
	}
	boxes := maps.Clone(r.PostForm)
	tried, err := posted(r, stored)
	if err != nil {
		return page.BadRequest(err)
	}
	plan, err := s.solveHeld(r, &tried)
	var faults survey.Faults
	if errors.As(err, &faults) || len(tried.faults) > 0 {
		refused := slices.Concat(tried.faults, faults)
		tried.faults, tried.code = tried.refused(faults), http.StatusUnprocessableEntity
		stored, status, err := s.saveTheRest(r, stored, &tried, boxes, refused)
		if err != nil {
			return err
		}
		return s.bench(w, r, stored, &tried, status)
	}
	if err != nil {
		return err
	}
	base, err := page.Revision(r)
	if err != nil {
		return err
	}
	err = s.keeper().Keep(w, r, history.Edit{ID: stored.ID, Base: base, Job: tried.job, Plan: plan, Anew: letsGo(r)})
	if errors.Is(err, store.ErrFull) || errors.Is(err, store.ErrUnavailable) { // keep what was typed on the page
		code, title, text := page.Explain(err)
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
	job, saved, err := filled(r, stored)
	if err != nil {
		return attempt{}, err
	}
	answered(r.PostForm)
	cleared(r.PostForm, saved)
	before := job.Clone() // because Decode writes into the job
	tried := attempt{typed: map[string]string{}, boxes: ask.TypedIn(r.PostForm)}
	guesses := ask.Emptied(before, saved, r.PostForm)
	measured := ask.Read(before, r.PostForm)
	err = form.Decode(&job, r.PostForm)
	if err != nil && !errors.As(err, &tried.faults) {
		return attempt{}, err
	}
	for _, f := range tried.faults {
		tried.typed[f.Path] = r.PostForm.Get(f.Path)
	}
	ask.Settle(&job, measured)
	ask.MoveStuds(before, &job)
	job.Guess = append(job.Guess, guesses...)
	job = job.NameGrouts(before.Grout)
	err = press(&job, r.PostForm.Get(form.Do))
	tried.job, tried.shown = job, form.Shown(job, before)
	return tried, err
}

// answer writes into a box of the form by its name: what was meant stands there as if it were typed,
// also where the box counts from another end than the job.
const answer = "answer "

// answered does so before the form is read.
func answered(posted url.Values) {
	rest, is := strings.CutPrefix(posted.Get(form.Do), answer)
	if box, text, ok := strings.Cut(rest, "="); is && ok {
		posted.Set(box, text)
		posted.Del(form.Do)
	}
}

// cleared lets the figures that are saved be the guesses where “Clear” is pressed, whatever stands in their boxes:
// one that was emptied by hand, or does not read, is no guess.
func cleared(posted url.Values, saved survey.Job) {
	paths, is := strings.CutPrefix(posted.Get(form.Do), "guess ")
	if !is {
		return
	}
	for _, path := range strings.Fields(paths) {
		if figure := form.Get(saved, path); figure != "" {
			for _, box := range ask.Boxes(saved, path) {
				posted.Del(box)
			}
			posted.Set(path, figure)
		}
	}
}

// press does what a button asks. What it puts into the room is a guess until it is
// measured; a guess that is put elsewhere by hand is one no more, as if it were typed.
func press(job *survey.Job, do string) error {
	verb, rest, _ := strings.Cut(do, " ")
	switch {
	case verb == "place", verb == "set", verb == "use":
		guessed := ask.Guessed(*job)
		defer func() { ask.Settle(job, guessed.Changed(*job)) }()
	case verb == "add" && strings.HasSuffix(rest, ".readings"):
		defer ask.Between(job, rest)
	case verb == "add" && strings.HasPrefix(rest, "walls"), verb == "measure":
		defer ask.Added(job.Clone(), job)
	}
	return form.Apply(job, do)
}

// filled reads the job a posted form was filled from, and the one that is saved.
func filled(r *http.Request, stored store.Job) (shown, saved survey.Job, err error) {
	if saved, err = survey.Read(stored.Document); err != nil {
		return shown, saved, err
	}
	shown, err = form.Base(saved, r.PostForm)
	return shown, saved, err
}

// keeper saves edits and shows the bench.
func (s pages) keeper() history.Keeper {
	return history.Keeper{Site: s.Site, Show: func(w http.ResponseWriter, r *http.Request, saved store.Job, e history.Edit) error {
		b := s.viewOf(r, saved, e.Job, e.Plan, "")
		b.Status = cmp.Or(e.Joined, b.wentTo(r.PostForm.Get(form.Do)), "Saved")
		return show(w, r, http.StatusOK, b)
	}}
}

// keepChosen saves two edits together as the page on which they met was answered.
func (s pages) keepChosen(w http.ResponseWriter, r *http.Request) error {
	return s.keeper().KeepChosen(w, r, func(job survey.Job, faults survey.Faults) error {
		stored, err := s.Load(r)
		if err != nil {
			return err
		}
		return s.bench(w, r, stored, &attempt{code: http.StatusUnprocessableEntity, job: job, shown: job, faults: faults}, "Not saved")
	})
}

// move is undo or redo.
func (s pages) move(step func(context.Context, int64, int64) (store.Job, error)) page.Handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		s := s.asked(r)
		id, err := page.JobID(r)
		if err != nil {
			return err
		}
		base, err := page.Revision(r)
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
		if !page.Live(r) {
			http.Redirect(w, r, string(page.JobPath(id, ""))+cameFrom(r), http.StatusSeeOther)
			return nil
		}
		return s.bench(w, r, stored, nil, "Saved")
	}
}

// cameFrom leads back to the page of the job on which undo was pressed, as it was looked at, and on
// the bench to the wall looked at.
func cameFrom(r *http.Request) string {
	switch q := r.URL.Query(); q.Get("from") {
	case "work", "choices", "sheets", "bathroom", "history":
		to := "/" + q.Get("from")
		if q.Del("from"); len(q) > 0 {
			to += "?" + q.Encode()
		}
		return to
	}
	return page.Query(r)
}

// attempt is a job as typed that could not be solved, or not be saved.
type attempt struct {
	code   int // the status it is answered with
	job    survey.Job
	shown  survey.Job        // the job its form is filled from
	typed  map[string]string // by path, what no field of the job can hold
	boxes  ask.Typed         // what was typed where the job holds another figure
	faults survey.Faults
	saved  int64 // the revision under which all but what is refused was saved, or 0
}

// refused are the faults of an attempt and of the room it makes, each said once and of what was typed.
func (a attempt) refused(faults survey.Faults) survey.Faults {
	return ask.AsTyped(ask.Once(a.job, append(a.faults, faults...)), a.boxes)
}

// bench renders a stored job, with an attempt at a change over it if there is one.
func (s pages) bench(w http.ResponseWriter, r *http.Request, stored store.Job, tried *attempt, status string) error {
	standing, err := s.Standing(r.Context(), stored)
	var faults survey.Faults
	if errors.As(err, &faults) && standing.Job.Format != "" {
		err = nil
	}
	if err != nil {
		return fmt.Errorf("job %d: %w", stored.ID, err)
	}
	shown, code := s.viewOf(r, standing.Stored, standing.Job, standing.Plan, status), http.StatusOK
	shown.Faults, shown.Unfit = faults, standing.Unfit
	if tried == nil {
		if shown.Anew, err = s.judgedAnew(r.Context(), standing.Job, standing.Plan); err != nil {
			return err
		}
	} else {
		filled, err := survey.Write(tried.shown)
		if err != nil {
			return err
		}
		shown.Typed, shown.Raw, shown.Filled = tried.job, tried.typed, string(filled)
		shown.Faults, code = tried.faults, tried.code
		if base, err := page.Revision(r); err == nil {
			shown.Revision = cmp.Or(tried.saved, base)
		}
		shown.RestSaved = tried.saved != 0
	}
	shown.All = shown.All || shown.beyondTheSteps()
	return show(w, r, code, shown)
}

// viewOf gathers what the page shows of a job.
func (s pages) viewOf(r *http.Request, stored store.Job, job survey.Job, plan layout.Plan, status string) Bench {
	b := Bench{
		Job:   s.Shown(r.Context(), stored, job, plan),
		sight: sightOf(r, plan), Phone: s.phone(stored.ID),
	}
	b.Status, b.Here, b.Told = status, b.query(), told(r)
	b.HintAt = b.hintAt
	if len(plan.Walls) > 0 {
		b.Schedule = page.Schedule(plan)
		b.Buy = page.ToBuy(plan, b.Schedule)
		b.Card = card(plan, b.Schedule, r.URL.Query().Get("piece"))
		b.TrimCard = trimmed(plan, r.URL.Query().Get("piece"))
	}
	draw(&b)
	return b
}
