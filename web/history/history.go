package history

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/form"
	"coursewright/web/page"
)

// Routes are the addresses of the history.
func Routes(site page.Site) []page.Route {
	k := Keeper{Site: site}
	return []page.Route{
		page.Get("/jobs/{id}/history", k.showHistory),
		page.Post("/jobs/{id}/history", k.editHistory),
	}
}

// onePage is how many states one page of the history lists.
const onePage = 30

// History is the page that lists what a job was.
type History struct {
	page.Job
	States []State
	Older  int64         // where the next page begins, or 0
	First  bool          // this is the page of the newest
	Faults survey.Faults // why a state could not be brought back
}

// State is one saved state of a job.
type State struct {
	store.Revision
	Changes []string // what it changed of the state it was made from, in words
	More    int      // how many changes more there are
	Taken   bool     // nothing changed but the set-out, which was judged anew and taken
	Beyond  bool     // it was made from a state that does not stand below it

	Returns []store.Return // when the job was deleted while it showed this state, and brought back
}

func (k Keeper) showHistory(w http.ResponseWriter, r *http.Request) error {
	return k.history(w, r, http.StatusOK, nil)
}

// history renders the page: ?before=REVISION for older states.
func (k Keeper) history(w http.ResponseWriter, r *http.Request, status int, faults survey.Faults) error {
	stored, job, err := k.Typed(r)
	if err != nil {
		return err
	}
	before, _ := strconv.ParseInt(r.URL.Query().Get("before"), 10, 64)
	list, err := k.Store.Revisions(r.Context(), stored.ID, max(before, 0), onePage+1)
	if err != nil {
		return err
	}
	out := History{Job: k.Shown(r.Context(), stored, job, layout.Plan{}), First: before <= 0, Faults: faults}
	if len(list) > onePage {
		list, out.Older = list[:onePage], list[onePage-1].ID
	}
	returns, err := k.Store.Returns(r.Context(), stored.ID)
	if err != nil {
		return err
	}
	known := pasts{k: k, id: stored.ID, known: map[int64]past{}}
	for i, revision := range list {
		one := State{Revision: revision}
		one.Beyond = revision.Parent != 0 && i+1 < len(list) && list[i+1].ID != revision.Parent
		if one.Changes, err = known.changes(r.Context(), revision); err != nil {
			return err
		}
		one.Taken = len(one.Changes) == 0 && known.otherSetout(revision)
		if n := len(one.Changes) - mostChanges; n > 0 {
			one.Changes, one.More = one.Changes[:mostChanges], n
		}
		one.Returns = returnsAt(returns, revision.ID, before)
		out.States, before = append(out.States, one), revision.ID
	}
	return page.Render(w, r, status, HistoryPage(out))
}

// returnsAt are those at one state, or at a later one before the next that is listed, which was thinned out since;
// there is no next where it is 0.
func returnsAt(all []store.Return, state, next int64) (here []store.Return) {
	for _, r := range all {
		if r.Revision >= state && (next <= 0 || r.Revision < next) {
			here = append(here, r)
		}
	}
	return here
}

// mostChanges is how many changes of one state are told in words.
const mostChanges = 6

// past is what a job was, with the set-out it kept.
type past struct {
	job    survey.Job
	setout []byte
}

// pasts reads what a job was, each state once.
type pasts struct {
	k     Keeper
	id    int64
	known map[int64]past
}

func (p pasts) at(ctx context.Context, revision int64) (survey.Job, error) {
	if was, found := p.known[revision]; found {
		return was.job, nil
	}
	was, err := p.k.Store.At(ctx, p.id, revision)
	if errors.Is(err, fs.ErrNotExist) { // thinned out meanwhile
		return survey.Job{}, nil
	}
	if err != nil {
		return survey.Job{}, err
	}
	job, err := survey.Read(was.Document)
	p.known[revision] = past{job, was.Setout}
	return job, err
}

// otherSetout tells whether a state keeps another set-out than the one it was made from. Both must be known.
func (p pasts) otherSetout(r store.Revision) bool {
	return !bytes.Equal(p.known[r.ID].setout, p.known[r.Parent].setout)
}

// changes says in words what a state changed; of the first one there is nothing to say. A state
// written by another version that this one cannot read is said to be one.
func (p pasts) changes(ctx context.Context, r store.Revision) ([]string, error) {
	if r.Parent == 0 {
		return nil, nil
	}
	var faults survey.Faults
	is, err := p.at(ctx, r.ID)
	was, wasErr := p.at(ctx, r.Parent)
	if err = errors.Join(err, wasErr); errors.As(err, &faults) {
		return []string{"this version cannot read it"}, nil
	}
	if err != nil {
		return nil, err
	}
	if said := page.ChoicesEdit(was, is); said != "" {
		return []string{said}, nil // not every field that another choice has otherwise
	}
	both, err := form.Merge(was, is, was, nil)
	if err != nil {
		return nil, err
	}
	out := stood(was, is)
	for _, c := range both.Changes {
		if c.Path == "guess" || ofStanding.MatchString(c.Path) {
			continue
		}
		from, to := page.ValueIn(was, c.Path, c.Was), page.ValueIn(both.Job, c.Path, c.Is)
		if from != to { // a front is told from its corner, and stands there still where the wall has another width
			out = append(out, page.PlaceIn(both.Job, c.Path)+": "+orNone(from)+" → "+orNone(to))
		}
	}
	out = once(out)
	if len(out) == 0 && len(both.Changes) > 0 {
		out = measured(both.Job, was.Guess, is.Guess)
	}
	return out, nil
}

// measured says which figures are measured by now, and which are guesses again, where
// nothing else has changed.
func measured(job survey.Job, was, is []string) []string {
	var out []string
	for _, path := range was {
		if !slices.Contains(is, path) {
			out = append(out, page.PlaceIn(job, path)+": measured")
		}
	}
	for _, path := range is {
		if !slices.Contains(was, path) {
			out = append(out, page.PlaceIn(job, path)+": not measured")
		}
	}
	return once(out)
}

// once leaves out what was said before: a place that two walls share stands in a field of each.
func once(list []string) (out []string) {
	for _, text := range list {
		if !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return out
}

// Fields of the forms of the history, beside the revision that is shown.
const (
	atField   = "at"   // the state a button belongs to
	nameField = "name" // what to call it
)

// longestName is how many letters the name of a state may have.
const longestName = 80

// editHistory brings a state back, as a new one, or gives it a name.
func (k Keeper) editHistory(w http.ResponseWriter, r *http.Request) error {
	id, err := page.JobID(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return page.BadRequest(err)
	}
	at, err := strconv.ParseInt(r.PostForm.Get(atField), 10, 64)
	if err != nil {
		return &page.Refusal{Status: http.StatusBadRequest, Text: "The form does not say which state is meant. Load the page again."}
	}
	switch r.PostForm.Get(form.Do) {
	case "restore":
		return k.bringBack(w, r, id, at)
	case "name":
		name := strings.Join(strings.Fields(strings.ToValidUTF8(r.PostForm.Get(nameField), "")), " ")
		if err := k.Store.Name(r.Context(), id, at, clipped(name, longestName)); err != nil {
			return err
		}
		http.Redirect(w, r, r.URL.RequestURI(), http.StatusSeeOther)
		return nil
	}
	return &page.Refusal{Status: http.StatusBadRequest, Text: "That button is not known. Load the page again."}
}

// clipped is a text of so many letters at most.
func clipped(text string, most int) string {
	letters := []rune(text)
	return string(letters[:min(len(letters), most)])
}

// bringBack makes a state of the past the newest one, as an edit like any other: undo takes it back,
// and an edit made meanwhile in another window is not overwritten. It comes with the set-out it kept, and
// its name says which state was brought back.
func (k Keeper) bringBack(w http.ResponseWriter, r *http.Request, id, at int64) error {
	base, err := page.Revision(r)
	if err != nil {
		return err
	}
	was, err := k.Store.At(r.Context(), id, at)
	if err != nil {
		return err
	}
	name, err := k.nameBroughtBack(r.Context(), id, at)
	if err != nil {
		return err
	}
	then, err := k.Standing(r.Context(), was.Of(id, at))
	var faults survey.Faults
	if err == nil {
		return k.Keep(w, r, Edit{ID: id, Base: base, Job: then.Job, Plan: then.Plan, Name: name})
	}
	if !errors.As(err, &faults) {
		return err
	}
	return k.history(w, r, http.StatusUnprocessableEntity, faults)
}

// broughtBack begins the name of a state that was brought back.
const broughtBack = "Brought back: "

// nameBroughtBack names a state by the one it brings back. One that was brought back itself hands its name on.
func (k Keeper) nameBroughtBack(ctx context.Context, id, at int64) (string, error) {
	list, err := k.Store.Revisions(ctx, id, at+1, 1)
	if err != nil || len(list) == 0 {
		return "", err
	}
	was := list[0]
	if strings.HasPrefix(was.Name, broughtBack) {
		return was.Name, nil
	}
	of := "the state of " + was.Saved.Format(page.Moment)
	if was.Name != "" {
		of = "“" + clipped(was.Name, longestName-len(broughtBack+of)-len(", “”")) + "”, " + of
	}
	return broughtBack + of, nil
}
