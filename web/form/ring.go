package form

import (
	"fmt"
	"slices"

	"coursewright/layout/survey"
)

// Between tells whether a wall stands between the runs of two others, as the front of a bench and
// the face of a curb do.
func Between(w survey.Wall) bool { return w.Left.Meets == "wall" && w.Right.Meets == "wall" }

// outerEnds are the left end of the first wall that goes round the room and the right end of the last one, or
// nil where fewer than four do: it takes four to close a room.
func outerEnds(job *survey.Job) (first, last *survey.End) {
	n := 0
	for i := range job.Walls {
		w := &job.Walls[i]
		if Between(*w) {
			continue
		}
		if n++; first == nil {
			first = &w.Left
		}
		last = &w.Right
	}
	if n < 4 {
		return nil, nil
	}
	return first, last
}

// Closes tells whether the last wall of a room may meet the first, and whether it does.
func Closes(job survey.Job) (may, does bool) {
	first, last := outerEnds(&job)
	return first != nil, first != nil && first.Meets != "" && last.Meets != ""
}

// closeRoom lets the last wall meet the first in a corner, of which both say what one of them has measured.
func closeRoom(job *survey.Job, _ string) error {
	first, last := outerEnds(job)
	if first == nil {
		return fmt.Errorf("it takes four walls to close a room")
	}
	corner := survey.End{Meets: string(survey.Corner), Gap: pick(job, "1/8", "3")}
	*first, *last = corner, corner
	if n, met := across(*job, 0, true); met {
		if a, b := job.Walls[0].Base, job.Walls[n].Base; len(a) > 0 && len(b) > 0 && a[0].Meets == b[len(b)-1].Meets {
			agree(job, drop(*job, n, false), drop(*job, 0, true))
		}
		agree(job, rise(*job, n, false), rise(*job, 0, true))
	}
	return nil
}

// openRoom lets both end by themselves again.
func openRoom(job *survey.Job, _ string) error {
	first, last := outerEnds(job)
	if first == nil {
		return fmt.Errorf("the room is not closed")
	}
	*first, *last = survey.End{Finish: "trim"}, survey.End{Finish: "trim"}
	return nil
}

// seatAcross lets the three walls round a new bench stand on its seat: the one behind it, which meets
// both its neighbours in a corner, all along, and these from the front of the bench on. A seat is 16 in (400 mm)
// deep to the tile behind, which is 1/2 in (13 mm) off the board, and rises 1/4 in to the foot. Where the walls
// stand otherwise they stay as they are.
func seatAcross(job *survey.Job, bench int) {
	n := 0
	for n < bench && !Between(job.Walls[n]) {
		n++
	}
	if n < 3 {
		return
	}
	left, behind, right := &job.Walls[0], &job.Walls[1], &job.Walls[2]
	corner := string(survey.Corner)
	from, to := less(job, left.Width, pick(job, "16 1/2", "413")), pick(job, "16 1/2", "413")
	if behind.Left.Meets != corner || behind.Right.Meets != corner || len(behind.Base) != 1 || len(left.Base) == 0 || len(right.Base) == 0 ||
		behind.Base[0].Meets != string(survey.ShowerBase) || !splits(job, left.Base[len(left.Base)-1], from) || !splits(job, right.Base[0], to) {
		return
	}
	w := &job.Walls[bench]
	front := less(job, "0", w.Head.Stops.At)
	back := less(job, front, pick(job, "5/16", "8"))
	a, c := &left.Base[len(left.Base)-1], &right.Base[0]
	guessElsewhere(job, At(At("walls", 0)+".base", len(left.Base)-1)+".readings[1]", At("walls", 2)+".base[0].readings[0]")
	a.Readings[1].At, c.Readings[0].At = from, to
	w.Base[0].Readings[0].Drop, w.Base[0].Readings[1].Drop = a.Readings[1].Drop, c.Readings[0].Drop
	seat := func(x, y survey.Drop) survey.Segment {
		return survey.Segment{Meets: string(survey.Seat), Gap: a.Gap, Readings: []survey.Drop{x, y}}
	}
	k := len(left.Base)
	left.Base = append(left.Base, seat(survey.Drop{At: from, Drop: front}, survey.Drop{At: left.Width, Drop: back}))
	right.Base = append([]survey.Segment{seat(survey.Drop{At: "0", Drop: back}, survey.Drop{At: to, Drop: front})}, right.Base...)
	shift(job, At("walls", 2)+".base", 0, 1)
	behind.Base[0] = seat(survey.Drop{At: "0", Drop: back}, survey.Drop{At: behind.Width, Drop: back})
	w.Width, w.Base[0].Readings[1].At = behind.Width, behind.Width
	for _, path := range []string{At(At("walls", 0)+".base", k), At(At("walls", 1)+".base", 0), At(At("walls", 2)+".base", 0)} {
		for r := range 2 {
			job.Guess = append(job.Guess, At(path+".readings", r)+".drop")
		}
	}
}

// guessElsewhere makes guesses of readings of the base that were taken at another place than where they stand from now on.
func guessElsewhere(job *survey.Job, readings ...string) {
	for _, path := range readings {
		if path += ".drop"; !slices.Contains(job.Guess, path) {
			job.Guess = append(job.Guess, path)
		}
	}
}
