package main

import (
	"runtime"
	"time"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// mostAtOnce is how many rooms are solved at the same time. More than there are processors, so that
// two large rooms do not keep everybody else waiting; not as many as ask, so that memory is bounded
// and those who came first are answered first.
func mostAtOnce() int { return max(4, 2*runtime.GOMAXPROCS(0)) }

// longestWait is how long a room waits for its turn: well under the time a connection has for the
// answer, so that whoever waited in vain is told.
const longestWait = 30 * time.Second

// inTurns lets so many rooms be solved at once; the others wait, and those that wait too long fail
// with page.ErrBusy.
func inTurns(most int, wait time.Duration, solve func(survey.Job) (layout.Plan, error)) func(survey.Job) (layout.Plan, error) {
	turns := make(chan struct{}, most)
	return func(job survey.Job) (layout.Plan, error) {
		late := time.NewTimer(wait)
		defer late.Stop()
		select {
		case turns <- struct{}{}:
			defer func() { <-turns }()
			return solve(job)
		case <-late.C:
			return layout.Plan{}, page.ErrBusy
		}
	}
}
