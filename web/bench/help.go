package bench

import (
	"net/http"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// Help is what would help a job's set-out.
type Help struct {
	Bench
	Remedies []layout.Remedy
}

// showHelp works out what would help, in the turn in which the job is solved.
func (s pages) showHelp(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	shown := Help{Bench: Bench{Job: s.Shown(r.Context(), stored, job, plan), sight: sight{Wall: -1}}}
	if shown.Remedies, err = layout.Remedies(r.Context(), job, plan); err != nil {
		return err
	}
	return page.Render(w, r, http.StatusOK, HelpPage(shown))
}
