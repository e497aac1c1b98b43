package history_test

import (
	"coursewright/web/trial"

	"fmt"
	"maps"
	"net/http"
	"net/url"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout/survey"
	"coursewright/web/form"
)

// modelled are the fields of the model, with what may be typed in them.
var modelled = map[string][]string{"title": {"a", "b", "c"}, "joint": {"2", "3", "4"}, "bed": {"", "3", "5"}, "tile.name": {"x", "y"}}

// history is the model: what each revision of the job holds, and which one it shows.
type history struct {
	holds  map[int64]map[string]string
	parent map[int64]int64
	shown  int64
}

// window is one open page.
type window struct {
	seen  int64             // the revision its form was filled from
	form  url.Values        // the whole form, as the page gave it
	holds map[string]string // what has become of the fields of the model
	asked *question         // the page that asks which of two values to keep
}

type question struct {
	base, shown int64
	mine        map[string]string
	page        string
}

// met is the model of two edits of one base: what comes of them, and the fields both changed.
func met(base, saved, mine map[string]string) (both map[string]string, odds []string) {
	both = maps.Clone(saved)
	for name := range modelled {
		switch {
		case mine[name] == base[name] || mine[name] == saved[name]:
		case saved[name] == base[name]:
			both[name] = mine[name]
		default:
			odds = append(odds, name)
		}
	}
	return both, odds
}

// TestTwoWindowsAgainstAModel lets two windows edit, answer, undo and load again in any order over
// real HTTP. After every step the job holds what the model says: nothing typed and saved is ever
// overwritten unless the person was shown it and chose. More: -rapid.checks=10000.
func TestTwoWindowsAgainstAModel(t *testing.T) {
	s := trial.Empty(t, trial.Resolved)
	document, err := os.ReadFile("../../testdata/jobs/toy.json")
	require.NoError(t, err)
	rapid.Check(t, func(r *rapid.T) {
		answer, page := s.Upload(document)
		require.Equal(r, http.StatusSeeOther, answer.StatusCode, page)
		m := &meeting{t: r, s: s, path: answer.Header.Get("Location")}
		m.id, _ = strconv.ParseInt(strings.TrimPrefix(m.path, "/jobs/"), 10, 64)
		revision, holds := m.stored()
		m.history = history{map[int64]map[string]string{revision: holds}, map[int64]int64{}, revision}
		windows := []*window{{}, {}}
		for _, w := range windows {
			m.load(w)
		}
		for range rapid.IntRange(1, 16).Draw(r, "steps") {
			w := rapid.SampledFrom(windows).Draw(r, "window")
			switch act := rapid.SampledFrom([]string{"edit", "edit", "edit", "undo", "load"}).Draw(r, "act"); {
			case w.asked != nil && act != "load":
				m.answer(w)
			case act == "edit":
				m.edit(w)
			case act == "undo":
				m.undo(w)
			default:
				m.load(w)
			}
			revision, holds := m.stored()
			require.Equal(r, m.shown, revision)
			require.Equal(r, m.holds[m.shown], holds)
		}
	})
}

// meeting is one job, the windows' server and the model.
type meeting struct {
	history
	t    *rapid.T
	s    trial.Site
	id   int64
	path string
}

func (m *meeting) stored() (int64, map[string]string) {
	kept, err := m.s.Store.Load(m.s.T.Context(), m.id)
	require.NoError(m.t, err)
	job, err := survey.Read(kept.Document)
	require.NoError(m.t, err)
	holds := map[string]string{}
	for name := range modelled {
		holds[name] = form.Get(job, name)
	}
	return kept.Revision, holds
}

// load opens the job in a window; what it had typed or was asked is dropped by the person.
func (m *meeting) load(w *window) {
	answer, page := m.s.Get(m.path)
	require.Equal(m.t, http.StatusOK, answer.StatusCode)
	*w = window{seen: m.shown, form: trial.Fields(m.s.T, page), holds: maps.Clone(m.holds[m.shown])}
	require.Equal(m.t, fmt.Sprint(m.shown), w.form.Get("revision"))
	for name, value := range w.holds {
		require.Equal(m.t, value, w.form.Get(name))
	}
}

func (m *meeting) edit(w *window) {
	for range rapid.IntRange(1, 3).Draw(m.t, "changes") {
		name := rapid.SampledFrom([]string{"title", "joint", "bed", "tile.name"}).Draw(m.t, "field")
		w.holds[name] = rapid.SampledFrom(modelled[name]).Draw(m.t, "value")
	}
	for name, value := range w.holds {
		w.form.Set(name, value)
	}
	answer, page := m.s.Post(m.path, w.form)
	m.lands(w, answer, page, w.seen, maps.Clone(w.holds))
}

// lands holds an answer to an edit of a base against the model.
func (m *meeting) lands(w *window, answer *http.Response, page string, base int64, mine map[string]string) {
	now := m.holds[m.shown]
	both, odds := met(m.holds[base], now, mine)
	switch {
	case maps.Equal(mine, now) || base == m.shown:
		require.Equal(m.t, http.StatusSeeOther, answer.StatusCode)
		m.saves(base, mine)
	case len(odds) == 0:
		require.Equal(m.t, http.StatusOK, answer.StatusCode, page)
		m.saves(m.shown, both)
	default:
		require.Equal(m.t, http.StatusConflict, answer.StatusCode)
		for _, name := range odds {
			require.Contains(m.t, page, `name="pick `+name+`"`)
		}
		require.Equal(m.t, 2*len(odds), strings.Count(page, `type="radio"`))
		w.asked = &question{base, m.shown, mine, page}
		return
	}
	m.load(w)
}

// saves adds what a revision holds, unless the job holds it already.
func (m *meeting) saves(base int64, holds map[string]string) {
	if maps.Equal(holds, m.holds[m.shown]) {
		return
	}
	revision, _ := m.stored()
	require.NotContains(m.t, m.holds, revision)
	m.holds[revision], m.parent[revision], m.shown = holds, base, revision
}

// answer chooses one of two for every field that was asked about.
func (m *meeting) answer(w *window) {
	q := w.asked
	w.asked = nil
	both, odds := met(m.holds[q.base], m.holds[q.shown], q.mine)
	posted := trial.Hidden(m.s.T, q.page)
	for _, name := range odds {
		whose := rapid.SampledFrom([]string{"saved", "yours"}).Draw(m.t, "keep")
		posted.Set("pick "+name, whose)
		if whose == "yours" {
			both[name] = q.mine[name]
		}
	}
	answer, page := m.s.Post(m.path+"/keep", posted)
	m.lands(w, answer, page, q.shown, both)
}

func (m *meeting) undo(w *window) {
	m.s.Post(m.path+"/undo", url.Values{"revision": {fmt.Sprint(w.seen)}})
	if parent, ok := m.parent[m.shown]; ok && w.seen == m.shown {
		m.shown = parent
	}
	m.load(w)
}
