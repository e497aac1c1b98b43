package remedy

import (
	"context"
	"os"
	"testing"

	"coursewright/layout/setout/effort"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asking asks about a case.
func asking(t *testing.T, name string) (context.Context, *asker) {
	data, err := os.ReadFile("../../testdata/cases/" + name + ".json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	now, err := Solve(context.Background(), job)
	require.NoError(t, err)
	ctx, spent := effort.Counted(context.Background())
	return ctx, &asker{job: job, now: now, spent: spent}
}

// Law 4: in rooms that take long no change is begun once enough is counted, and each that may help
// is told to have been tried or not.
func TestWhatWouldHelpEnds(t *testing.T) {
	for _, name := range []string{"end-in-a-joint", "tape-course-smallest"} {
		ctx, a := asking(t, name)
		help, err := a.changes(ctx)
		require.NoError(t, err)
		assert.Less(t, a.spent.Spent(), mostEffort+3*search.Work, name)
		if !a.tired() && a.solved < mostTries {
			assert.Empty(t, help.Untried, name)
		}
		assert.LessOrEqual(t, a.solved+len(help.Untried), len(a.tries()), name)
		again, err := func() (Help, error) { ctx, a := asking(t, name); return a.changes(ctx) }()
		require.NoError(t, err)
		assert.Equal(t, help, again, name)
	}
}

// Law 4: nothing is begun by one who has counted enough, and all is told not to have been tried.
func TestWhoIsTiredBeginsNothing(t *testing.T) {
	ctx, a := asking(t, "tape-course-smallest")
	effort.Add(ctx, mostEffort)
	help, err := a.changes(ctx)
	require.NoError(t, err)
	assert.Zero(t, a.solved)
	assert.Len(t, help.Untried, len(a.tries()))
}

// What helps with the set-out as it is says so, and pins it.
func TestAChangeMayKeepTheSetOut(t *testing.T) {
	ctx, a := asking(t, "end-in-a-joint")
	help, err := a.changes(ctx)
	require.NoError(t, err)
	require.NotEmpty(t, help.Remedies)
	for _, r := range help.Remedies {
		job, err := Apply(a.job, r.Use)
		require.NoError(t, err)
		then, err := Solve(context.Background(), job)
		require.NoError(t, err)
		assert.Equal(t, then.Setout.Least, r.Least, r.Text)
		assert.True(t, a.helps(&then.Setout.Merit), r.Text)
	}
}
