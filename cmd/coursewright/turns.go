package main

import (
	"runtime"

	"coursewright/layout"
	"coursewright/layout/survey"
)

// mostAtOnce is how many rooms are solved at the same time. More than there are processors, so that
// two large rooms do not keep everybody else waiting; not as many as ask, so that memory is bounded
// and those who came first are answered first.
func mostAtOnce() int { return max(4, 2*runtime.GOMAXPROCS(0)) }

// inTurns lets so many rooms be solved at once; the others wait.
func inTurns(most int, solve func(survey.Job) (layout.Plan, error)) func(survey.Job) (layout.Plan, error) {
	turns := make(chan struct{}, most)
	return func(job survey.Job) (layout.Plan, error) {
		turns <- struct{}{}
		defer func() { <-turns }()
		return solve(job)
	}
}
