package bench

import (
	"errors"
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

// takeHelp writes a change that would help into the job, saves it, and leads to the bench, where it can be undone.
func (s pages) takeHelp(w http.ResponseWriter, r *http.Request) error {
	stored, err := s.Load(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return page.BadRequest(err)
	}
	paths, texts := r.PostForm["path"], r.PostForm["text"]
	if len(paths) == 0 || len(paths) != len(texts) || len(paths) > mostUsed {
		return page.BadRequest(errors.New("the form does not say what to change: load the page again"))
	}
	var use []layout.Use
	for i, p := range paths {
		use = append(use, layout.Use{Path: p, Text: texts[i]})
	}
	if job, err = layout.Take(job, use); err != nil {
		return page.BadRequest(err)
	}
	plan, err := s.Solve(r.Context(), job)
	var faults survey.Faults
	if errors.As(err, &faults) {
		return page.BadRequest(faults)
	}
	if err != nil {
		return err
	}
	r = r.Clone(r.Context())
	r.URL.Path, r.URL.RawQuery = string(page.JobPath(stored.ID, "")), ""
	return s.keeper().Save(w, r, stored.ID, job, plan)
}

// mostUsed bounds the fields of one change: a seat with what was read of it has the most.
const mostUsed = 200
