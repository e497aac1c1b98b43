package bench_test

import (
	"fmt"
	"net/http"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"coursewright/web/trial"
)

// Every list has what the job says among its words, also where it says nothing: a browser sends the first word of a list
// that has none chosen, and the first edit of a job file that said nothing of how its rows run was called "bond, along".
func TestListsShowWhatTheJobSays(t *testing.T) {
	files, err := os.ReadDir("../../testdata/jobs")
	require.NoError(t, err)
	s := trial.Swift(t)
	for i, f := range files {
		answer, page := s.Upload(trial.File(t, f.Name()))
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		for _, query := range []string{"", "?all=1"} {
			answer, page := s.Get(fmt.Sprintf("/jobs/%d%s", i+2, query))
			require.Equal(t, http.StatusOK, answer.StatusCode)
			assert.Empty(t, undecided(t, page), f.Name()+query)
		}
	}
}

// undecided names the lists of which no word is chosen.
func undecided(t *testing.T, page string) (out []string) {
	root, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	for n := range root.Descendants() {
		if n.Data != "select" {
			continue
		}
		chosen := false
		for o := range n.Descendants() {
			chosen = chosen || trial.Has(o, "selected")
		}
		if !chosen {
			out = append(out, trial.Attr(n, "name"))
		}
	}
	return out
}
