package turns

import (
	"context"
	"slices"
	"sync"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// mostSolvers is how many jobs have a solver of their own: those that were edited last. Those of 24 took
// 300 MB where 64 people each changed every wall, and many people at once would not find theirs again.
const mostSolvers = 4

// ByJob is a solver that has one of its own for each job, for solvers that keep what one edit leaves of the last. One solves at
// a time: who comes meanwhile, and who asks for no job, has a new one.
func ByJob(anew func() page.Solver) page.Solver {
	b := &byJob{anew: anew}
	return func(ctx context.Context, job survey.Job) (layout.Plan, error) {
		turn := turnOf(ctx)
		if turn == nil {
			return anew()(ctx, job)
		}
		solve := b.take(turn.who.job)
		plan, err := solve(ctx, job)
		b.keep(turn.who.job, solve) // not of one that broke down
		return plan, err
	}
}

// byJob are the solvers of jobs, the last used at the end.
type byJob struct {
	anew func() page.Solver

	mu   sync.Mutex
	kept []solverOf
}

type solverOf struct {
	job   string
	solve page.Solver
}

// take is the solver of a job, which is nobody else's until it is kept again.
func (b *byJob) take(job string) page.Solver {
	b.mu.Lock()
	defer b.mu.Unlock()
	i := slices.IndexFunc(b.kept, func(s solverOf) bool { return s.job == job })
	if i < 0 {
		return b.anew()
	}
	solve := b.kept[i].solve
	b.kept = slices.Delete(b.kept, i, i+1)
	return solve
}

func (b *byJob) keep(job string, solve page.Solver) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.kept = append(slices.DeleteFunc(b.kept, func(s solverOf) bool { return s.job == job }), solverOf{job, solve})
	if len(b.kept) > mostSolvers {
		b.kept = slices.Delete(b.kept, 0, 1)
	}
}
