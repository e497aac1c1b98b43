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

// laterHeader says that what was typed is drawn once the person pauses.
const laterHeader = "X-Later"

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
	if field := typing(r); field != "" && len(tried.faults) == 0 && swells(stored.Document, tried.job) {
		w.Header().Set(laterHeader, "pause")
		return send(w, r, http.StatusOK, nil, saidOf(Bench{Job: page.Job{Typed: tried.job}}, field))
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

// fewPieces are as many as are drawn at every key, whatever was drawn before.
const fewPieces = 1000

// swells tells whether the form as it stands makes a room of far more pieces than the one that is saved,
// as the first digit of a size does: a tile of “1” on the way to “12” is a hundred tiles to each. Such a
// room is drawn once the person pauses, for it may well be meant.
func swells(saved []byte, typed survey.Job) bool {
	room, faults := typed.Resolve()
	if len(faults) > 0 || room.About() <= fewPieces {
		return false
	}
	job, err := survey.Read(saved)
	if err != nil {
		return false
	}
	was, _ := job.Resolve()
	return room.About() > 4*was.About()
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
