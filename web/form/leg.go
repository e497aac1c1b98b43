package form

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// goOn lets the base of a wall reach both of its ends again, where the stretch at one of them has been
// taken out: what stood beside a leg then goes on under all of the tile. Nobody measures the end of a wall twice,
// so it is no guess.
func goOn(job *survey.Job, wall int) {
	w := &job.Walls[wall]
	if len(w.Base) == 0 {
		return
	}
	base := At("walls", wall) + ".base"
	if r := w.Base[0].Readings; len(r) > 1 {
		r[0].At = "0"
		noGuess(job, At(At(base, 0)+".readings", 0)+".at")
	}
	last := len(w.Base) - 1
	if r := w.Base[last].Readings; len(r) > 1 {
		r[len(r)-1].At = w.Width
		noGuess(job, At(At(base, last)+".readings", len(r)-1)+".at")
	}
}

// dropLegs takes out the legs that have no width (any more): the tile stops where the tub, the shower base or
// the curb ends.
func dropLegs(job *survey.Job) {
	system, _ := System(job.Units)
	for i := range job.Walls {
		for k := len(job.Walls[i].Base) - 1; k >= 0; k-- {
			if w := job.Walls[i]; w.IsLeg(k) && noWidth(w.Base[k], system) {
				_ = remove(job, At(At("walls", i)+".base", k)) // it is there
			}
		}
	}
}

// noWidth tells whether a stretch of base ends where it begins.
func noWidth(s survey.Segment, system length.System) bool {
	if len(s.Readings) < 2 {
		return false
	}
	from, unread := length.Parse(s.Readings[0].At, system)
	to, err := length.Parse(s.Readings[len(s.Readings)-1].At, system)
	return unread == nil && err == nil && from == to
}

// noGuess notes that a figure is none that is still to be measured.
func noGuess(job *survey.Job, path string) {
	job.Guess = slices.DeleteFunc(slices.Clone(job.Guess), func(one string) bool { return one == path })
}
