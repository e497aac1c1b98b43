package form

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// widths gives the widths of the walls as typed.
func widths(job survey.Job) []string {
	out := make([]string, len(job.Walls))
	for i, w := range job.Walls {
		out[i] = w.Width
	}
	return out
}

// follow moves what stood at a wall's right end along when its width changes:
// the last readings of base and ceiling, and the line the tile stops at.
func follow(job *survey.Job, before []string) {
	system, _ := System(job.Units)
	for i, old := range before {
		if i >= len(job.Walls) || job.Walls[i].Width == old {
			continue
		}
		was, err := length.Parse(old, system)
		if _, unread := length.Parse(job.Walls[i].Width, system); err != nil || unread != nil {
			continue
		}
		w := &job.Walls[i]
		for _, at := range atRightEnd(w) {
			if l, err := length.Parse(*at, system); err == nil && l == was {
				*at = w.Width
			}
		}
	}
}

// atRightEnd lists the fields of a wall that may stand at its right end.
func atRightEnd(w *survey.Wall) []*string {
	var out []*string
	if n := len(w.Base); n > 0 {
		if m := len(w.Base[n-1].Readings); m > 0 {
			out = append(out, &w.Base[n-1].Readings[m-1].At)
		}
	}
	if n := len(w.Head.Readings); n > 0 {
		out = append(out, &w.Head.Readings[n-1].At)
	}
	if s := w.Right.Stops; s != nil {
		out = append(out, &s.At, &s.To)
	}
	return out
}
