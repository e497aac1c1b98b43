package page

import (
	"slices"

	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// PartsEdit says in a few words which part of the room an edit has added or removed, as "adding
// niche on back"; nothing where it did neither, or both, as where a part gets another name.
func PartsEdit(before, now survey.Job) string {
	was, is := partNames(before), partNames(now)
	added, removed := without(is, was), without(was, is)
	switch {
	case len(added) > 0 && len(removed) == 0:
		return "adding " + added[0]
	case len(removed) > 0 && len(added) == 0:
		return "removing " + removed[0]
	}
	return ""
}

// partNames are the walls of a job, what stands on each, its bands and its trim.
func partNames(job survey.Job) (out []string) {
	for _, w := range job.Walls {
		out = append(out, "wall "+w.Name)
		for _, o := range w.Openings {
			out = append(out, drawing.OpeningName(o.Kind, o.Name)+" on "+w.Name)
		}
		for _, f := range w.Fixtures {
			out = append(out, f.Name+" on "+w.Name)
		}
		for _, s := range w.Strips {
			out = append(out, "strip "+s.Name+" on "+w.Name)
		}
	}
	for _, b := range job.Bands {
		out = append(out, "band "+b.Name)
	}
	for _, t := range job.Trims {
		out = append(out, "trim "+t.Name)
	}
	return out
}

// without are the names of one list that the other has not.
func without(list, other []string) (out []string) {
	for _, name := range list {
		if !slices.Contains(other, name) {
			out = append(out, name)
		}
	}
	return out
}
