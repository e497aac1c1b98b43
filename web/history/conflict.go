package history

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
	"coursewright/web/page"
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
func (k Keeper) meet(w http.ResponseWriter, r *http.Request, c *store.Conflict, mine survey.Job) error {
	saved, err := k.standing(r.Context(), c.Theirs)
	if err != nil {
		return err
	}
	base, err := k.jobAt(r.Context(), c.Theirs.ID, c.Mine)
	if err != nil {
		return err
	}
	both, err := form.Merge(base, saved, mine, nil)
	if err != nil {
		return err
	}
	if len(both.Clashes) == 0 && form.SameFields(both.Job, mine) {
		if plan, err := k.Solve(r.Context(), both.Job); err == nil {
			return k.Keep(w, r, Edit{ID: c.Theirs.ID, Base: c.Theirs.Revision, Job: both.Job, Plan: plan, Joined: joinedWords(both, base, saved)})
		}
	}
	asked := Conflict{ID: c.Theirs.ID, Revision: c.Theirs.Revision, Base: c.Mine, Saved: saved, Merged: both}
	return k.showConflict(w, r, http.StatusConflict, asked, mine)
}

// jobAt is a job as it stood at a revision, with the set-out that it kept, as a form that was filled
// from it had it. A form that names a revision the job never had was filled from nothing we know:
// then everything in it counts as changed.
func (k Keeper) jobAt(ctx context.Context, id, revision int64) (survey.Job, error) {
	was, err := k.Store.At(ctx, id, revision)
	if errors.Is(err, fs.ErrNotExist) {
		return survey.Job{}, nil
	}
	if err != nil {
		return survey.Job{}, err
	}
	return k.standing(ctx, was.Of(id, revision))
}

// standing is a stored job as it stands; one that cannot be solved is as it was typed.
func (k Keeper) standing(ctx context.Context, stored store.Job) (survey.Job, error) {
	stands, err := k.Stands(ctx, stored)
	var faults survey.Faults
	if err != nil && !errors.As(err, &faults) {
		return survey.Job{}, err
	}
	return survey.Read(stands.Document)
}

// joinedWords say what an edit was saved together with.
func joinedWords(both form.Merged, base, saved survey.Job) string {
	var theirs []string
	for _, c := range both.Changes {
		if !c.Yours && c.Path != "guess" {
			theirs = append(theirs, ChangeWords(both.Job, c))
		}
	}
	if len(theirs) == 0 {
		theirs = measured(both.Job, base.Guess, saved.Guess)
	}
	const most = 3
	if more := len(theirs) - most; more > 0 {
		theirs = append(theirs[:most], fmt.Sprintf("and %d more", more))
	}
	return "Saved, together with what was changed in another window: " + strings.Join(theirs, "; ")
}

// showConflict renders the page on which two edits meet.
func (k Keeper) showConflict(w http.ResponseWriter, r *http.Request, code int, c Conflict, mine survey.Job) error {
	document, err := survey.Write(mine)
	if err != nil {
		return err
	}
	c.Document = string(document)
	return page.Render(w, r, code, ConflictPage(c))
}

// KeepChosen saves two edits together as the page on which they met was answered, over what that
// page showed as saved. What cannot be solved is given to refused.
func (k Keeper) KeepChosen(w http.ResponseWriter, r *http.Request, refused func(survey.Job, survey.Faults) error) error {
	id, err := page.JobID(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return page.BadRequest(err)
	}
	shown, err := page.Revision(r)
	if err != nil {
		return err
	}
	mine, err := survey.Read([]byte(r.PostForm.Get(documentField)))
	if err != nil {
		return page.BadRequest(err)
	}
	saved, err := k.jobAt(r.Context(), id, shown)
	if err != nil {
		return err
	}
	made, _ := strconv.ParseInt(r.PostForm.Get(baseField), 10, 64)
	base, err := k.jobAt(r.Context(), id, made)
	if err != nil {
		return err
	}
	both, err := form.Merge(base, saved, mine, func(path string) bool { return picked(r, path) == "yours" })
	if err != nil {
		return page.BadRequest(err)
	}
	for _, c := range both.Clashes {
		if picked(r, c.Path) == "" {
			asked := Conflict{ID: id, Revision: shown, Base: made, Saved: saved, Merged: both, Picked: pickedAll(r, both), Missing: true}
			return k.showConflict(w, r, http.StatusUnprocessableEntity, asked, mine)
		}
	}
	r.URL.Path = string(page.JobPath(id, ""))
	plan, err := k.Solve(r.Context(), both.Job)
	var faults survey.Faults
	if errors.As(err, &faults) {
		return refused(both.Job, faults)
	}
	if err != nil {
		return err
	}
	return k.Keep(w, r, Edit{ID: id, Base: shown, Job: both.Job, Plan: plan})
}

// picked tells which of the two was chosen for a field: "saved", "yours" or nothing yet.
func picked(r *http.Request, path string) string {
	if r.PostForm.Get(allField) == "yours" {
		return "yours"
	}
	if pick := r.PostForm.Get(PickField(path)); pick == "saved" || pick == "yours" {
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
