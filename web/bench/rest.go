package bench

import (
	"bytes"
	"errors"
	"maps"
	"net/http"
	"net/url"

	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/ask"
	"coursewright/web/form"
	"coursewright/web/page"
)

// saveTheRest saves what was typed beside a box that is refused: one slip of a finger must not
// keep the readings of an hour from being saved. The form is read once more without the boxes that are
// refused. Where that makes no room or meets an edit of another window, nothing is saved,
// as after a button: what one does hangs on all that it was pressed with.
func (s pages) saveTheRest(r *http.Request, stored store.Job, tried *attempt, boxes url.Values, refused survey.Faults) (store.Job, string, error) {
	const not = "Not saved"
	base, err := page.Revision(r)
	if boxes.Get(form.Do) != "" || err != nil {
		return stored, not, nil
	}
	left := maps.Clone(boxes)
	for _, f := range refused {
		for _, box := range ask.Boxes(tried.job, f.Path) {
			delete(left, box)
		}
	}
	r.PostForm = left
	rest, err := posted(r, stored)
	if err != nil || len(rest.faults) > 0 {
		return stored, not, nil
	}
	plan, err := s.Solve(r.Context(), rest.job)
	var faults survey.Faults
	if errors.As(err, &faults) {
		return stored, not, nil
	}
	if err != nil {
		return stored, not, err
	}
	state, err := page.StateOf(rest.job, plan)
	if err != nil {
		return stored, not, err
	}
	kept := stored
	if base != stored.Revision || !bytes.Equal(state.Document, stored.Document) {
		kept, err = s.Store.SaveState(r.Context(), stored.ID, base, state)
	}
	var conflict *store.Conflict
	if errors.As(err, &conflict) {
		return stored, not, nil
	}
	if err != nil {
		return stored, not, err
	}
	s.Settled.Note(state.Document, state.Setout)
	tried.saved, tried.shown = kept.Revision, rest.job
	return kept, "Saved but for " + page.Count(len(tried.faults), "figure"), nil
}
