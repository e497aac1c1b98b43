package ask

import (
	"errors"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// MoveStuds moves the guess of a stud along where the other one of its bay was measured: the bay stays as wide
// as it was, as far as the wall goes.
func MoveStuds(before survey.Job, job *survey.Job) {
	for _, path := range job.Guess {
		other := otherStud(path)
		if other == "" || slices.Contains(job.Guess, other) || form.Get(before, other) == form.Get(*job, other) {
			continue
		}
		system, _ := form.System(job.Units)
		var unread error
		read := func(job survey.Job, path string) length.Length {
			l, err := length.Parse(form.Get(job, path), system)
			unread = errors.Join(unread, err)
			return l
		}
		wall, _, _ := strings.Cut(path, ".")
		at, width := read(*job, other), read(*job, wall+".width")
		to := at + read(before, path) - read(before, other)
		if unread == nil && 0 <= at && at <= width {
			_ = form.Set(job, path, max(0, min(width, to)).Plain(system, 0)) // it is there: it was read
		}
	}
}

// otherStud is the field of the other stud of a bay; empty of what is no stud.
func otherStud(path string) string {
	if bay, is := strings.CutSuffix(path, ".studs.left"); is {
		return bay + ".studs.right"
	}
	if bay, is := strings.CutSuffix(path, ".studs.right"); is {
		return bay + ".studs.left"
	}
	return ""
}
