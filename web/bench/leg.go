package bench

import (
	"slices"

	"coursewright/layout/survey"
)

// isLeg tells whether a stretch of base is the floor under a leg: at an end of the
// wall, beside a tub, shower base or curb.
func isLeg(w survey.Wall, j int) bool {
	rim := func(k int) bool { return k >= 0 && k < len(w.Base) && survey.Kind(w.Base[k].Meets).Rim() }
	return survey.Kind(w.Base[j].Meets) == survey.Floor && (j == 0 && rim(1) || j == len(w.Base)-1 && rim(j-1))
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
			if isLeg(w, j) {
				return true
			}
		}
		return false
	})
}
