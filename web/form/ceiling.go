package form

import (
	"fmt"

	"coursewright/layout/survey"
)

// ceiling lets the tile of the wall at a path go up to the ceiling. How high that is nobody has measured yet:
// it is guessed as in a room of 8 ft (2400 mm), but in a corner it is as high as on the wall that meets this one there.
func ceiling(job *survey.Job, path string) error {
	k, err := wallAt(*job, path)
	if err != nil {
		return err
	}
	w := &job.Walls[k]
	rise := pick(job, "56", "1400")
	w.Head = survey.Head{Meets: string(survey.Ceiling), Gap: pick(job, "1/8", "3"), Sight: w.Head.Sight,
		Readings: []survey.Rise{{At: "0", Rise: rise}, {At: w.Width, Rise: rise}}}
	if err := guess(job, At(path+".head.readings", 0)+".rise "+At(path+".head.readings", 1)+".rise"); err != nil {
		return err
	}
	agreeOnCeiling(job, k)
	return nil
}

// line lets the tile of the wall at a path stop at a line, whose height is a guess.
func line(job *survey.Job, path string) error {
	k, err := wallAt(*job, path)
	if err != nil {
		return err
	}
	w := &job.Walls[k]
	w.Head = survey.Head{Stops: &survey.Mark{At: pick(job, "33", "840")}, Finish: "trim", Sight: w.Head.Sight}
	return guess(job, path+".head.stops.at")
}

// wallAt is which wall stands at a path, where it is one that has no top of its own.
func wallAt(job survey.Job, path string) (int, error) {
	for i, w := range job.Walls {
		if At("walls", i) == path && w.Top == nil {
			return i, nil
		}
	}
	return 0, fmt.Errorf("there is no such wall at %q", path)
}
