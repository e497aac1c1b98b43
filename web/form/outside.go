package form

import (
	"slices"

	"coursewright/layout/survey"
)

// turnsOut tells whether an end meets an outside corner.
func turnsOut(e survey.End) bool { return e.Meets == string(survey.OutsideCorner) }

// endsMet gives what the left and the right end of each wall meets.
func endsMet(job survey.Job) [][2]string {
	out := make([][2]string, len(job.Walls))
	for i, w := range job.Walls {
		out[i] = [2]string{w.Left.Meets, w.Right.Meets}
	}
	return out
}

// turnTogether lets the ends of two walls turn an outside corner together: where an
// edit turns one of them the other follows, and where it turns one back too. Where
// walls have come or gone, an end that is left without its neighbour stops.
func turnTogether(job *survey.Job, before [][2]string) {
	n := len(job.Walls)
	for i := range job.Walls {
		next := i + 1
		if next == n {
			if n < 4 {
				break
			}
			next = 0
		}
		a, b := &job.Walls[i].Right, &job.Walls[next].Left
		if n != len(before) {
			if turnsOut(*a) != turnsOut(*b) {
				stopAlone(a)
				stopAlone(b)
			}
			continue
		}
		newly := func(e *survey.End, was string) bool { return turnsOut(*e) && was != string(survey.OutsideCorner) }
		newA, newB := newly(a, before[i][1]), newly(b, before[next][0])
		if newA {
			*a = survey.End{Meets: string(survey.OutsideCorner), Sight: a.Sight}
		}
		if newB {
			*b = survey.End{Meets: string(survey.OutsideCorner), Sight: b.Sight}
		}
		switch {
		case turnsOut(*a) == turnsOut(*b):
		case newA:
			*b = survey.End{Meets: string(survey.OutsideCorner)}
		case newB:
			*a = survey.End{Meets: string(survey.OutsideCorner)}
		case turnsOut(*a):
			*a = turnedBack(*b)
		default:
			*b = turnedBack(*a)
		}
	}
	if n != len(before) && n > 0 && n < 4 {
		stopAlone(&job.Walls[0].Left)
		stopAlone(&job.Walls[n-1].Right)
	}
}

// stopAlone lets an end that turned an outside corner stop.
func stopAlone(e *survey.End) {
	if turnsOut(*e) {
		*e = survey.End{}
	}
}

// turnedBack is the end beside one that no longer turns an outside corner.
func turnedBack(other survey.End) survey.End {
	if other.Meets == "" {
		return survey.End{}
	}
	return survey.End{Meets: other.Meets, Gap: other.Gap}
}

// tidyOutside drops what means nothing at an outside corner as it is made.
func tidyOutside(job *survey.Job, e *survey.End, right bool) {
	e.Stops, e.Finish, e.Lean = nil, "", nil
	if !right {
		*e = survey.End{Meets: e.Meets, Sight: e.Sight}
		return
	}
	how := survey.Kind(e.Corner)
	if how != survey.Mitre {
		e.Angle = ""
	}
	if how == survey.Mitre || how == survey.Profile {
		e.Laps = ""
	}
	if how == survey.Profile {
		e.Gap = ""
	}
	fitTrim(job, how, &e.Trim)
}

// fitTrim keeps the trim that is named where it fits how an edge is made. A profile needs
// trim: the first of the job's that fits, or a bar of the usual size.
func fitTrim(job *survey.Job, how survey.Kind, name *string) {
	kinds := OutsideTrim(how)
	fits := func(t survey.TrimTile) bool {
		return slices.Contains(kinds, survey.Kind(t.Kind)) && t.Place != "beyond"
	}
	at := slices.IndexFunc(job.Trims, func(t survey.TrimTile) bool { return t.Name == *name && fits(t) })
	if at >= 0 {
		return
	}
	*name = ""
	if how != survey.Profile {
		return
	}
	if at = slices.IndexFunc(job.Trims, fits); at < 0 {
		at = len(job.Trims)
		job.Trims = append(job.Trims, survey.TrimTile{Name: freeName("profile", trimNames(*job)), Kind: string(survey.Profile),
			Width: pick(job, "1/8", "3"), Length: pick(job, "96", "2500")})
	}
	*name = job.Trims[at].Name
}

// OutsideTrim lists the kinds of trim that may stand at an outside corner.
func OutsideTrim(how survey.Kind) []survey.Kind {
	switch how {
	case survey.Profile:
		return []survey.Kind{survey.Profile, survey.QuarterRound}
	case survey.Bullnose:
		return []survey.Kind{survey.Bullnose}
	}
	return nil
}

// addWallRound adds a wall to the right of the last one, which turns away from the room
// there: the end of a half wall, as wide as studs and boards on both sides commonly are.
func addWallRound(job *survey.Job) error {
	if err := addWall(job); err != nil {
		return err
	}
	n := len(job.Walls)
	if n < 2 {
		return nil
	}
	last, w := &job.Walls[n-2], &job.Walls[n-1]
	last.Right, w.Left = survey.End{Meets: string(survey.OutsideCorner)}, survey.End{Meets: string(survey.OutsideCorner)}
	w.Width = pick(job, "4 1/2", "115")
	w.Right.Stops = &survey.Mark{At: w.Width}
	for i := range w.Base {
		if k := len(w.Base[i].Readings); k > 0 {
			w.Base[i].Readings[k-1].At = w.Width
		}
	}
	if h := last.Head; h.Meets == "" && h.Stops != nil {
		stops := *h.Stops
		w.Head = h
		w.Head.Stops = &stops
	}
	return nil
}
