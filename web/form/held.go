package form

import (
	"slices"

	"coursewright/layout/survey"
)

// hold answers for the set-out that the job holds because an earlier engine gave it: it is held for good.
func hold(job *survey.Job, _ string) error {
	if job.Held != nil {
		job.Held.Engine = ""
	}
	return nil
}

// letGo lets go of the set-out that the job holds.
func letGo(job *survey.Job, _ string) error {
	job.Held = nil
	return nil
}

// tidyHeld lets go of what is held of bands that are gone.
func tidyHeld(job *survey.Job) {
	if job.Held == nil {
		return
	}
	job.Held.Bands = slices.DeleteFunc(slices.Clone(job.Held.Bands), func(h survey.HeldBand) bool {
		return !slices.ContainsFunc(job.Bands, func(b survey.Band) bool { return b.Name == h.Name })
	})
	if len(job.Held.Bands) == 0 {
		job.Held.Bands = nil
	}
}
