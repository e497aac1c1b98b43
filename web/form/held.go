package form

import "coursewright/layout/survey"

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
