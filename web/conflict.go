package web

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"strconv"
	"strings"

	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/form"
	"coursewright/web/view"
)

// Fields of the page on which two edits meet, beside those of every form.
const (
	baseField     = "base"     // the revision the later edit was made on
	documentField = "document" // the later edit, as a job file
	allField      = "all"      // "yours": the later edit counts wherever the two clash
)

// meet answers an edit that was made on a revision the job no longer shows. Where it clashes with
// nothing that was saved meanwhile, both are saved together; otherwise nothing is written and the
// page asks.
func (s *Server) meet(w http.ResponseWriter, r *http.Request, c *store.Conflict, mine survey.Job) error {
	saved, err := survey.Read(c.Theirs.Document)
	if err != nil {
		return err
	}
	base, err := s.jobAt(r.Context(), c.Theirs.ID, c.Mine)
	if err != nil {
		return err
	}
	both, err := form.Merge(base, saved, mine, nil)
	if err != nil {
		return err
	}
	if len(both.Clashes) == 0 && form.SameFields(both.Job, mine) {
		if plan, err := s.Solve(both.Job); err == nil {
			return s.keep(w, r, edit{id: c.Theirs.ID, base: c.Theirs.Revision, job: both.Job, plan: plan, joined: joinedWords(both)})
		}
	}
	page := view.Conflict{ID: c.Theirs.ID, Revision: c.Theirs.Revision, Base: c.Mine, Saved: saved, Merged: both}
	return s.showConflict(w, r, http.StatusConflict, page, mine)
}

// jobAt reads a job as it was at a revision. A form that names a revision the job never had was
// filled from nothing we know: then everything in it counts as changed.
func (s *Server) jobAt(ctx context.Context, id, revision int64) (survey.Job, error) {
	_, document, err := s.Store.At(ctx, id, revision)
	if errors.Is(err, fs.ErrNotExist) {
		return survey.Job{}, nil
	}
	if err != nil {
		return survey.Job{}, err
	}
	return survey.Read(document)
}

// joinedWords say what an edit was saved together with.
func joinedWords(both form.Merged) string {
	var theirs []string
	for _, c := range both.Changes {
		if !c.Yours {
			theirs = append(theirs, view.ChangeWords(both.Job, c))
		}
	}
	const most = 3
	if more := len(theirs) - most; more > 0 {
		theirs = append(theirs[:most], fmt.Sprintf("and %d more", more))
	}
	return "Saved, together with what was changed in another window: " + strings.Join(theirs, "; ")
}

// showConflict renders the page on which two edits meet.
func (s *Server) showConflict(w http.ResponseWriter, r *http.Request, code int, page view.Conflict, mine survey.Job) error {
	document, err := survey.Write(mine)
	if err != nil {
		return err
	}
	page.Document = string(document)
	return render(w, r, code, view.ConflictPage(page))
}

// keepChosen saves two edits together as the page on which they met was answered, over what that
// page showed as saved.
func (s *Server) keepChosen(w http.ResponseWriter, r *http.Request) error {
	id, err := jobID(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return badRequest(err)
	}
	shown, err := revision(r)
	if err != nil {
		return err
	}
	mine, err := survey.Read([]byte(r.PostForm.Get(documentField)))
	if err != nil {
		return badRequest(err)
	}
	saved, err := s.jobAt(r.Context(), id, shown)
	if err != nil {
		return err
	}
	made, _ := strconv.ParseInt(r.PostForm.Get(baseField), 10, 64)
	base, err := s.jobAt(r.Context(), id, made)
	if err != nil {
		return err
	}
	both, err := form.Merge(base, saved, mine, func(path string) bool { return picked(r, path) == "yours" })
	if err != nil {
		return badRequest(err)
	}
	for _, c := range both.Clashes {
		if picked(r, c.Path) == "" {
			page := view.Conflict{ID: id, Revision: shown, Base: made, Saved: saved, Merged: both, Picked: pickedAll(r, both), Missing: true}
			return s.showConflict(w, r, http.StatusUnprocessableEntity, page, mine)
		}
	}
	return s.keepJoined(w, r, id, shown, both.Job)
}

// keepJoined solves and saves what came of two edits.
func (s *Server) keepJoined(w http.ResponseWriter, r *http.Request, id, shown int64, job survey.Job) error {
	r.URL.Path = jobPath(id)
	plan, err := s.Solve(job)
	var faults survey.Faults
	if errors.As(err, &faults) {
		stored, err := s.load(r)
		if err != nil {
			return err
		}
		return s.bench(w, r, stored, &attempt{code: http.StatusUnprocessableEntity, job: job, shown: job, faults: faults}, "Not saved")
	}
	if err != nil {
		return err
	}
	return s.keep(w, r, edit{id: id, base: shown, job: job, plan: plan})
}

// picked tells which of the two was chosen for a field: "saved", "yours" or nothing yet.
func picked(r *http.Request, path string) string {
	if r.PostForm.Get(allField) == "yours" {
		return "yours"
	}
	if pick := r.PostForm.Get(view.PickField(path)); pick == "saved" || pick == "yours" {
		return pick
	}
	return ""
}

func pickedAll(r *http.Request, both form.Merged) map[string]string {
	out := map[string]string{}
	for _, c := range both.Clashes {
		out[c.Path] = picked(r, c.Path)
	}
	return out
}
