package history_test

import (
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/url"
	"os"
	"regexp"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

var filledFrom = regexp.MustCompile(`name="revision" value="(\d+)"`)

// crossed is one of several windows of one job that send at the same moment.
type crossed struct {
	trial.Site
	path     string
	revision string
	saved    []string // the titles that were answered as saved
}

// Four windows type, pin, undo, redo, name and bring back at once, and lag behind at times. Nothing that
// was answered as saved is missing among the revisions, every one stands on another of the job, and
// nothing is answered with a fault of the program.
func TestWindowsThatCrossLoseNothing(t *testing.T) {
	s := trial.Empty(t, trial.Resolved)
	document, err := os.ReadFile("../../testdata/jobs/toy.json")
	require.NoError(t, err)
	answer, page := s.Upload(document)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, page = s.Get(answer.Header.Get("Location"))
	windows := make([]*crossed, 4)
	var all sync.WaitGroup
	for n := range windows {
		windows[n] = &crossed{Site: s, path: answer.Header.Get("Location"), revision: filledFrom.FindStringSubmatch(page)[1]}
		all.Go(func() {
			by := rand.New(rand.NewPCG(uint64(n), 7))
			for k := range 60 {
				windows[n].does(by.IntN(8), fmt.Sprintf("window %d, edit %d", n, k))
			}
		})
	}
	all.Wait()

	now, err := s.Store.Load(t.Context(), 1)
	require.NoError(t, err)
	list, err := s.Store.Revisions(t.Context(), 1, 0, 1000)
	require.NoError(t, err)
	ids, titles := map[int64]bool{0: true}, map[string]bool{}
	for _, r := range list {
		state, err := s.Store.At(t.Context(), 1, r.ID)
		require.NoError(t, err)
		ids[r.ID], titles[state.Title] = true, true
	}
	require.True(t, ids[now.Revision])
	for _, r := range list {
		require.True(t, ids[r.Parent], "%d stands on %d", r.ID, r.Parent)
	}
	saved := 0
	for _, w := range windows {
		for _, title := range w.saved {
			saved++
			require.True(t, titles[title], "%s was answered as saved", title)
		}
	}
	require.Positive(t, saved)
}

// does one thing in the window, and takes up what the page then shows, but for one time of four.
func (w *crossed) does(what int, title string) {
	form := url.Values{"revision": {w.revision}, "title": {title}}
	var answer *http.Response
	var page string
	switch what {
	case 0, 1, 2:
		answer, page = w.Post(w.path, form)
	case 3:
		form.Set("do", "pin wall joint=5")
		answer, page = w.Post(w.path, form)
	case 4, 5:
		verb := []string{"/undo", "/redo"}[what-4]
		answer, page = w.Post(w.path+verb, url.Values{"revision": {w.revision}})
	case 6:
		answer, page = w.Post(w.path+"/history", url.Values{"revision": {w.revision}, "do": {"restore"}, "at": {w.revision}})
	default:
		answer, page = w.Post(w.path+"/history", url.Values{"do": {"name"}, "at": {w.revision}, "name": {title}})
	}
	assert.Less(w.T, answer.StatusCode, http.StatusInternalServerError, "%d: %s", what, page)
	if what <= 3 && answer.StatusCode == http.StatusSeeOther {
		w.saved = append(w.saved, title)
	}
	if what%4 == 0 {
		return // it lags behind
	}
	_, page = w.Get(w.path)
	if at := filledFrom.FindStringSubmatch(page); at != nil {
		w.revision = at[1]
	}
}
