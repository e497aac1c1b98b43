package turns

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// Each job is solved by a solver of its own, which is with one request at a time; those that were used last are kept.
func TestEachJobHasASolverOfItsOwn(t *testing.T) {
	made := 0
	used := func(int) {}
	solve := ByJob(func() page.Solver {
		made++
		mine := made
		return func(context.Context, survey.Job) (layout.Plan, error) { used(mine); return layout.Plan{}, nil }
	})
	of := func(job string) (by int) {
		used = func(n int) { by = n }
		ctx := context.WithValue(t.Context(), turnKey{}, &turn{who: asker{job: job}})
		_, err := solve(ctx, survey.Job{})
		require.NoError(t, err)
		return by
	}
	require.Equal(t, []int{1, 2, 1, 2}, []int{of("/jobs/1"), of("/jobs/2"), of("/jobs/1"), of("/jobs/2")})
	used = func(int) {
		used = func(n int) { require.Equal(t, 3, n, "while the first is busy") }
		_, err := solve(context.WithValue(t.Context(), turnKey{}, &turn{who: asker{job: "/jobs/1"}}), survey.Job{})
		require.NoError(t, err)
	}
	_, err := solve(context.WithValue(t.Context(), turnKey{}, &turn{who: asker{job: "/jobs/1"}}), survey.Job{})
	require.NoError(t, err)
	require.Equal(t, 1, of("/jobs/1"), "of two that are given back the last is kept")
	for n := range mostSolvers - 1 {
		of(fmt.Sprint("/jobs/", 10+n))
	}
	require.Equal(t, 1, of("/jobs/1"))
	before := made
	require.Equal(t, before+1, of("/jobs/2"), "it was not used for the longest")
	_, err = solve(t.Context(), survey.Job{})
	require.NoError(t, err)
	require.Equal(t, before+2, made, "for no job a new one")
}
