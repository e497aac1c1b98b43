package web

import (
	"errors"
	"net/http"

	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/form"
	"coursewright/web/view"
)

// showConflict puts two edits side by side; nothing was written.
func (s *Server) showConflict(w http.ResponseWriter, r *http.Request, theirs store.Job, mine survey.Job) error {
	saved, err := survey.Read(theirs.Document)
	if err != nil {
		return err
	}
	document, err := survey.Write(mine)
	if err != nil {
		return err
	}
	return render(w, r, http.StatusConflict, view.ConflictPage(view.Conflict{
		ID: theirs.ID, Revision: theirs.Revision, Title: theirs.Title,
		Document: string(document), Rows: differences(saved, mine),
	}))
}

// differences lists the fields on which two jobs disagree, in the order of the
// job file, those only the saved job has last.
func differences(saved, mine survey.Job) []view.Difference {
	var out []view.Difference
	for _, f := range form.Fields(mine) {
		if was := form.Get(saved, f.Path); was != f.Value {
			out = append(out, view.Difference{Path: f.Path, Saved: was, Yours: f.Value})
		}
	}
	for _, f := range form.Fields(saved) {
		if form.Get(mine, f.Path) == "" {
			out = append(out, view.Difference{Path: f.Path, Saved: f.Value})
		}
	}
	return out
}

// keepMine saves the later edit over what the conflict page showed as saved.
func (s *Server) keepMine(w http.ResponseWriter, r *http.Request) error {
	stored, err := s.load(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return badRequest(err)
	}
	job, err := survey.Read([]byte(r.PostForm.Get("document")))
	if err != nil {
		return badRequest(err)
	}
	plan, err := s.Solve(job)
	var faults survey.Faults
	if errors.As(err, &faults) {
		return s.bench(w, r, stored, &attempt{code: http.StatusUnprocessableEntity, job: job, shown: job, faults: faults}, "Not saved")
	}
	if err != nil {
		return err
	}
	r.URL.Path = jobPath(stored.ID)
	return s.save(w, r, stored.ID, job, plan)
}
