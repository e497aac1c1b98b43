package form

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/survey"
)

// place puts what was dragged or nudged on a drawing where it was let go:
//
//	1 course=-38 1/2        the course line
//	1 joint=32 7/16         the start of wall 1, and tile= the same
//	1 pipe valve=19 1/2;-7  a pipe's centre
//	1 niche shelf left=34   a mark, named as the plan file names it
//
// Walls count from 1. A pipe was measured, so its survey changes; everything
// else is pinned.
func place(job *survey.Job, rest string) error {
	at, value, found := strings.Cut(rest, "=")
	number, handle, named := strings.Cut(at, " ")
	i, err := strconv.Atoi(number)
	if !found || !named || err != nil || i < 1 || i > len(job.Walls) {
		return fmt.Errorf("%q names no wall and no place on it", rest)
	}
	w := &job.Walls[i-1]
	switch {
	case handle == "course":
		job.Pins.Course.Line = value
		return nil
	case handle == "joint" || handle == "tile":
		return pin(job, w.Name+" "+handle+"="+value)
	case strings.HasPrefix(handle, "pipe "):
		return placePipe(w, strings.TrimPrefix(handle, "pipe "), value)
	case !hasMark(*w, handle):
		return fmt.Errorf("wall %q has no %q", w.Name, handle)
	}
	return Set(job, Key(Key("pins.walls", w.Name)+".marks", handle), value)
}

func placePipe(w *survey.Wall, name, value string) error {
	x, y, both := strings.Cut(value, ";")
	j := slices.IndexFunc(w.Openings, func(o survey.Opening) bool { return o.Kind == "pipe" && o.Name == name })
	if j < 0 || !both {
		return fmt.Errorf("wall %q has no pipe %q", w.Name, name)
	}
	w.Openings[j].At, w.Openings[j].Height = x, &survey.Measure{Plain: y}
	return nil
}
