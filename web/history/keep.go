// Package history keeps what was edited: one revision for each edit, and the
// page on which two edits meet that do not know of each other.
package history

import (
	"errors"
	"net/http"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/page"
)

// Keeper saves the edits of a page.
type Keeper struct {
	page.Site
	// Show answers with the page itself; without it the browser is sent on to it.
	Show func(w http.ResponseWriter, r *http.Request, saved store.Job, e Edit) error
}

// Edit is a job that was solved and is to be saved.
type Edit struct {
	ID     int64
	Base   int64 // the revision it was made on
	Job    survey.Job
	Plan   layout.Plan
	Anew   bool   // the set-out judged anew was taken, which is an edit also where nothing else changes
	Joined string // what to say of it where it was laid together with another
	Name   string // what to call the state that comes of it, or ""
}

// Save keeps a job that was solved, on the revision its form was filled from.
func (k Keeper) Save(w http.ResponseWriter, r *http.Request, id int64, job survey.Job, plan layout.Plan) error {
	base, err := page.Revision(r)
	if err != nil {
		return err
	}
	return k.Keep(w, r, Edit{ID: id, Base: base, Job: job, Plan: plan})
}

// Keep saves an edit and shows the job, or lets it meet what was saved meanwhile.
func (k Keeper) Keep(w http.ResponseWriter, r *http.Request, e Edit) error {
	state, err := page.StateOf(e.Job, e.Plan)
	if err != nil {
		return err
	}
	state.Anew = e.Anew
	saved, err := k.Store.SaveState(r.Context(), e.ID, e.Base, state)
	var conflict *store.Conflict
	if errors.As(err, &conflict) {
		return k.meet(w, r, conflict, e.Job)
	}
	if err != nil {
		return err
	}
	if e.Name != "" && saved.Revision != e.Base {
		if err := k.Store.Name(r.Context(), e.ID, saved.Revision, e.Name); err != nil {
			return err
		}
	}
	k.Settled.Note(state.Document, state.Setout)
	atBench := r.URL.Path == string(page.JobPath(e.ID, ""))
	if k.Show == nil || !page.Live(r) && (e.Joined == "" || !atBench) {
		http.Redirect(w, r, r.URL.RequestURI(), http.StatusSeeOther)
		return nil
	}
	return k.Show(w, r, saved, e)
}
