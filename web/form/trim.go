package form

import (
	"slices"
	"strconv"

	"coursewright/layout/survey"
)

// addTrim adds a kind of trim with the sizes that are common, and lays it along
// every edge where tile stops without any: bullnose 2 by 6 in (50 by 150 mm), and of
// the others what shops have. Common practice, no source.
func addTrim(job *survey.Job, kind string) error {
	t := survey.TrimTile{Kind: kind, Width: pick(job, "2", "50"), Length: pick(job, "6", "150")}
	switch survey.Kind(kind) {
	case survey.QuarterRound:
		t.Width = pick(job, "1", "25")
	case survey.Pencil:
		t.Width, t.Length = pick(job, "1/2", "15"), pick(job, "8", "200")
	case survey.Profile:
		t.Width, t.Length = pick(job, "1/8", "3"), pick(job, "96", "2500")
	case survey.Cove:
		t.Width, t.Length = pick(job, "4", "100"), pick(job, "6", "150")
	default:
		t.Kind = string(survey.Bullnose)
	}
	t.Name = freeName(t.Kind, trimNames(*job))
	job.Trims = append(job.Trims, t)
	_, before := job.Resolve()
	put := func(trim *string) { // unless that leaves no room for what stands there, as a strip or a band near it
		*trim = t.Name
		if _, faults := job.Resolve(); len(before) == 0 && len(faults) > 0 {
			*trim = ""
		}
	}
	lay := func(stops bool, finish string, trim *string) {
		if stops && *trim == "" && finish != string(survey.Casing) {
			put(trim)
		}
	}
	for i := range job.Walls {
		w := &job.Walls[i]
		if kind == string(survey.Cove) {
			if w.Top != nil && w.Top.Kind == string(survey.CurbTop) { // too low for a cove and tile over it
				continue
			}
			for k := range w.Base {
				if w.Base[k].Trim == "" && !legged(w) {
					put(&w.Base[k].Trim)
				}
			}
			continue
		}
		lay(w.Left.Meets == "", w.Left.Finish, &w.Left.Trim)
		lay(w.Right.Meets == "", w.Right.Finish, &w.Right.Trim)
		lay(w.Head.Meets == "" && capRound(job, i) == nil, w.Head.Finish, &w.Head.Trim)
	}
	return nil
}

// legged tells whether the tile of a wall goes down to the floor beside what it stands on.
func legged(w *survey.Wall) bool {
	return len(w.Base) > 1 && slices.ContainsFunc(w.Base, func(s survey.Segment) bool { return s.Meets == string(survey.Floor) })
}

// freeName is a name that none of those taken is: "bullnose", "bullnose 2".
func freeName(name string, taken []string) string {
	free := name
	for n := 2; slices.Contains(taken, free); n++ {
		free = name + " " + strconv.Itoa(n)
	}
	return free
}

func trimNames(job survey.Job) []string {
	names := make([]string, len(job.Trims))
	for i, t := range job.Trims {
		names[i] = t.Name
	}
	return names
}

// eachTrim calls f for the name of the trim of every edge.
func eachTrim(job *survey.Job, f func(*string)) {
	for i := range job.Walls {
		w := &job.Walls[i]
		f(&w.Left.Trim)
		f(&w.Right.Trim)
		f(&w.Head.Trim)
		if w.Top != nil {
			f(&w.Top.Trim)
		}
		for k := range w.Base {
			f(&w.Base[k].Trim)
		}
	}
}

// renameTrims lets edges follow the trim they name when it is called otherwise.
func renameTrims(job *survey.Job, before []string) {
	now := trimNames(*job)
	if len(now) != len(before) {
		return
	}
	eachTrim(job, func(name *string) {
		if i := slices.Index(before, *name); *name != "" && i >= 0 && now[i] != "" {
			*name = now[i]
		}
	})
}

// tidyTrims lets go of trim that is gone, and of what means nothing where an edge
// meets something.
func tidyTrims(job *survey.Job) {
	for i := range job.Trims {
		if b := job.Trims[i].Box; b != nil && *b == (survey.Box{}) {
			job.Trims[i].Box = nil
		}
	}
	names := trimNames(*job)
	eachTrim(job, func(name *string) {
		if !slices.Contains(names, *name) {
			*name = ""
		}
	})
	if len(job.Trims) == 0 {
		job.Trims = nil
	}
}
