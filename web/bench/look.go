package bench

import (
	"errors"
	"net/http"
	"net/url"
	"strconv"

	"github.com/a-h/templ"

	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/page"
)

// numbered is the header in which the page's script numbers its looks; the
// answer carries the number of its question, so that a late one is known.
const numbered = "X-Look"

// typingHeader names the field that is being typed in; the answer says how it is understood.
const typingHeader = "X-Typing"

// look shows what would come of the form as it stands, while something on the
// drawing is held. Nothing is saved. What cannot be solved is answered with
// what clashes.
func (s pages) look(w http.ResponseWriter, r *http.Request) error {
	s = s.asked(r)
	stored, err := s.filledFrom(r)
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
		return page.Render(w, r, http.StatusUnprocessableEntity, Clash(tried.job, tried.refused(faults)))
	}
	if err != nil {
		return err
	}
	b := s.viewOf(r, stored, tried.job, plan, "")
	return send(w, r, http.StatusOK, b.looks(r), Look(b), saidOf(b, typing(r)))
}

// saidOf says how one field is understood.
func saidOf(b Bench, path string) templ.Component {
	if path == "" || !form.IsLength(path) {
		return templ.NopComponent
	}
	return page.Said(b.Job, path)
}

// typing is the field that is being typed in, or nothing.
func typing(r *http.Request) string {
	path, err := url.PathUnescape(r.Header.Get(typingHeader))
	if err != nil {
		return ""
	}
	return path
}
