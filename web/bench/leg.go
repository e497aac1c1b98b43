package bench

import (
	"slices"

	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// legLaid says how a leg is laid that the job leaves to the order of merit; empty where it says so
// itself, or where the plan is of other walls.
func legLaid(b Bench, wall, segment int) string {
	if b.Typed.Walls[wall].Base[segment].Leg != survey.BestLeg || wall >= len(b.Plan.Walls) {
		return ""
	}
	w := b.Plan.Walls[wall]
	for _, l := range w.Found.LegsBeside() {
		if k, _ := w.Found.LegOf(l); k == segment && w.Found.Base[k].Best {
			return tell.Leg(b.Plan.Room, w, l)
		}
	}
	return ""
}

// legBase is what legs stand beside.
func legBase(job survey.Job) string {
	for _, w := range job.Walls {
		for _, s := range w.Base {
			if survey.Kind(s.Meets).Rim() {
				return s.Meets
			}
		}
	}
	return "rim"
}

// hasLegs tells whether a job has any leg.
func hasLegs(job survey.Job) bool {
	return slices.ContainsFunc(job.Walls, func(w survey.Wall) bool {
		for j := range w.Base {
			if w.IsLeg(j) {
				return true
			}
		}
		return false
	})
}

// bareEnd is an end of a wall at which its tile stops over a rim, without a leg.
type bareEnd struct{ path, side, wall string }

// legless lists the ends to which a leg may be added.
func legless(job survey.Job) (all []bareEnd) {
	for i, w := range job.Walls {
		if n := len(w.Base); n == 0 || w.Top != nil {
			continue
		}
		at := form.At("walls", i) + ".base "
		if w.Left.Stops != nil && survey.Kind(w.Base[0].Meets).Rim() {
			all = append(all, bareEnd{at + "left", "left", w.Name})
		}
		if w.Right.Stops != nil && survey.Kind(w.Base[len(w.Base)-1].Meets).Rim() {
			all = append(all, bareEnd{at + "right", "right", w.Name})
		}
	}
	return all
}
