package bench

import (
	"net/http"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

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
	shown := page.Help{Job: s.Shown(r.Context(), stored, job, plan), Tab: "help", Back: "Back to the bench"}
	shown.From = page.JobPath(shown.ID, "")
	if shown.Help, err = layout.Remedies(r.Context(), job, plan); err != nil {
		return err
	}
	return page.Render(w, r, http.StatusOK, page.HelpPage(shown))
}
