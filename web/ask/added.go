package ask

import (
	"slices"
	"strings"

	"coursewright/layout/survey"
	"coursewright/web/form"
)

// Added makes guesses of the figures that are asked for and were not before: nobody has measured what was
// just added, unless it stands where somebody has, as the corner that a new wall meets. What was put in before
// others moves these on in their list; they stay as measured as they were.
func Added(before survey.Job, job *survey.Job) {
	var known []string
	for _, path := range Paths(before) {
		known = append(known, movedOn(before, *job, path))
	}
	for _, q := range All(*job) {
		place := append([]string{q.Path}, q.Same...)
		guessed := func(path string) bool { return slices.Contains(job.Guess, path) }
		if slices.ContainsFunc(place, func(path string) bool { return slices.Contains(known, path) && !guessed(path) }) {
			continue
		}
		for _, path := range place {
			if !slices.Contains(known, path) && !guessed(path) && form.Get(*job, path) != "" {
				job.Guess = append(job.Guess, path)
			}
		}
	}
}

// movedOn is where a field stands by now: walls are known by their names, and the base of a wall goes on
// behind a seat that was put before it.
func movedOn(before, job survey.Job, path string) string {
	for i, was := range before.Walls {
		rest, inside := strings.CutPrefix(path, form.At("walls", i)+".")
		if !inside {
			continue
		}
		k := slices.IndexFunc(job.Walls, func(w survey.Wall) bool { return w.Name == was.Name })
		if k < 0 {
			return path
		}
		at := form.At("walls", k)
		if seatBefore(was, job.Walls[k]) {
			return form.Shifted([]string{at + "." + rest}, at+".base", 0, 1)[0]
		}
		return at + "." + rest
	}
	return path
}

// seatBefore tells whether a seat was put before the base of a wall.
func seatBefore(was, w survey.Wall) bool {
	return len(w.Base) > len(was.Base) && isSeat(w.Base[0]) && (len(was.Base) == 0 || !isSeat(was.Base[0]))
}
