package page_test

import (
	"context"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/page"
	"coursewright/web/trial"
)

// Who needs no plan has a room solved once by each run of the program, and again where another set-out
// is kept than the one that came of it.
func TestWhatStandsIsSolvedOnce(t *testing.T) {
	kept, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "jobs.db"))
	require.NoError(t, err)
	defer kept.Close()
	solved := 0
	site := page.Site{Store: kept, Settled: new(page.Settled), Solve: func(ctx context.Context, job survey.Job) (layout.Plan, error) {
		solved++
		return layout.Solve(ctx, job)
	}}
	document := trial.File(t, "toy.json")
	stored, err := kept.Create(t.Context(), "toy", document)
	require.NoError(t, err)
	stands := func() store.Job {
		stored, err = kept.Load(t.Context(), stored.ID)
		require.NoError(t, err)
		out, err := site.Stands(t.Context(), stored)
		require.NoError(t, err)
		return out
	}
	for range 3 {
		assert.Equal(t, string(document), string(stands().Document))
		assert.Equal(t, 1, solved)
	}
	site.Settled = new(page.Settled) // the program is started anew
	for range 3 {
		stands()
		assert.Equal(t, 2, solved)
	}
	other, err := keep.Read(stored.Setout)
	require.NoError(t, err)
	other.Course.Line = "-3"
	setout, err := keep.Write(other)
	require.NoError(t, err)
	stored, err = kept.Create(t.Context(), "toy", document)
	require.NoError(t, err)
	require.NoError(t, kept.KeepSetout(t.Context(), stored.ID, stored.Revision, setout))
	held, err := survey.Read(stands().Document)
	require.NoError(t, err)
	require.NotNil(t, held.Held)
	assert.Equal(t, "-3", held.Held.Course.Line)
}
