package form

import (
	"slices"

	"coursewright/layout/survey"
)

// across is the wall on the other side of the corner at an end of a wall, and false where none meets it there.
func across(job survey.Job, wall int, left bool) (int, bool) {
	meets := func(e survey.End) bool {
		return e.Meets == string(survey.Corner) || e.Meets == string(survey.OutsideCorner)
	}
	round := 0 // walls that go round the room: the fronts of benches and curbs come last in the list
	for round < len(job.Walls) && !Between(job.Walls[round]) {
		round++
	}
	if wall >= round {
		return 0, false
	}
	step := 1
	if left {
		step = -1
	}
	next := wall + step
	if _, closed := Closes(job); closed {
		next = (next + round) % round
	}
	if next < 0 || next >= round {
		return 0, false
	}
	here, there := job.Walls[wall].Right, job.Walls[next].Left
	if left {
		here, there = job.Walls[wall].Left, job.Walls[next].Right
	}
	return next, meets(here) && meets(there)
}

// agreeOnCeiling lets a wall whose ceiling is new have it at its corners where the walls beside it have it.
func agreeOnCeiling(job *survey.Job, wall int) {
	for _, left := range []bool{true, false} {
		if next, met := across(*job, wall, left); met {
			agree(job, rise(*job, wall, left), rise(*job, next, !left))
		}
	}
}

// rise is the field that says how high the ceiling is at an end of a wall, or nothing.
func rise(job survey.Job, wall int, left bool) string {
	return atEnd(At("walls", wall)+".head.readings", len(job.Walls[wall].Head.Readings), left, ".rise")
}

// drop is the field that says how far down a wall goes at an end, or nothing.
func drop(job survey.Job, wall int, left bool) string {
	base := job.Walls[wall].Base
	if len(base) == 0 {
		return ""
	}
	j := 0
	if !left {
		j = len(base) - 1
	}
	return atEnd(At(At("walls", wall)+".base", j)+".readings", len(base[j].Readings), left, ".drop")
}

func atEnd(list string, n int, left bool, field string) string {
	switch {
	case n == 0:
		return ""
	case left:
		return At(list, 0) + field
	}
	return At(list, n-1) + field
}

// agree lets two fields of one place say the same: what is measured, where only one of them is, else what
// the second says. Two that are measured stay as they are, for whoever reads them to be asked.
func agree(job *survey.Job, one, other string) {
	from, to := other, one
	if slices.Contains(job.Guess, other) && !slices.Contains(job.Guess, one) {
		from, to = one, other
	}
	said := Get(*job, from)
	if said == "" || Get(*job, to) == "" || !slices.Contains(job.Guess, to) || Set(job, to, said) != nil {
		return
	}
	if !slices.Contains(job.Guess, from) {
		job.Guess = slices.DeleteFunc(slices.Clone(job.Guess), func(path string) bool { return path == to })
	}
}
