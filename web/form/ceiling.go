package form

import (
	"fmt"

	"coursewright/layout/survey"
)

// ceiling lets the tile of the wall at a path go up to the ceiling. How high that is nobody has measured yet:
// it is guessed as in a room of 8 ft (2400 mm).
func ceiling(job *survey.Job, path string) error {
	w, err := wallAt(job, path)
	if err != nil {
		return err
	}
	rise := pick(job, "56", "1400")
	w.Head = survey.Head{Meets: string(survey.Ceiling), Gap: pick(job, "1/8", "3"), Sight: w.Head.Sight,
		Readings: []survey.Rise{{At: "0", Rise: rise}, {At: w.Width, Rise: rise}}}
	return guess(job, At(path+".head.readings", 0)+".rise "+At(path+".head.readings", 1)+".rise")
}

// line lets the tile of the wall at a path stop at a line, whose height is a guess.
func line(job *survey.Job, path string) error {
	w, err := wallAt(job, path)
	if err != nil {
		return err
	}
	w.Head = survey.Head{Stops: &survey.Mark{At: pick(job, "33", "840")}, Finish: "trim", Sight: w.Head.Sight}
	return guess(job, path+".head.stops.at")
}

// wallAt is the wall at a path, where it is one that has no top of its own.
func wallAt(job *survey.Job, path string) (*survey.Wall, error) {
	for i := range job.Walls {
		if At("walls", i) == path && job.Walls[i].Top == nil {
			return &job.Walls[i], nil
		}
	}
	return nil, fmt.Errorf("there is no such wall at %q", path)
}
