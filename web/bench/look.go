package bench

import (
	"errors"
	"net/http"
	"strconv"

	"coursewright/layout/survey"
	"coursewright/web/page"
)

// numbered is the header in which the page's script numbers its looks; the
// answer carries the number of its question, so that a late one is known.
const numbered = "X-Look"

// look shows what would come of the form as it stands, while something on the
// drawing is held. Nothing is saved. What cannot be solved is answered with
// what clashes.
func (s pages) look(w http.ResponseWriter, r *http.Request) error {
	stored, err := s.Load(r)
	if err != nil {
		return err
	}
	tried, err := posted(r, stored)
	if err != nil {
		return page.BadRequest(err)
	}
	if n, err := strconv.ParseUint(r.Header.Get(numbered), 10, 64); err == nil {
		w.Header().Set(numbered, strconv.FormatUint(n, 10))
	}
	plan, err := s.Solve(r.Context(), tried.job)
	var faults survey.Faults
	if errors.As(err, &faults) || len(tried.faults) > 0 {
		return page.Render(w, r, http.StatusUnprocessableEntity, Clash(tried.job, append(tried.faults, faults...)))
	}
	if err != nil {
		return err
	}
	return page.Render(w, r, http.StatusOK, Look(s.viewOf(r, stored, tried.job, plan, "")))
}
