package form

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// addCornerBench adds the front of a bench in the corner of two walls, with its seat, and
// lets those two walls stand on the seat from the front to the corner: the first inside
// corner of the room with room for it. Where none has, the walls stay as they are.
// The seat is 21 3/4 in (600 mm) along both walls, which is 15 1/8 in (418 mm) deep when it is tiled in a square
// corner (at least 15: NKBA, as quoted by a how-to page).
func addCornerBench(job *survey.Job) error {
	if err := addWallBetween(job, "bench"); err != nil {
		return err
	}
	n := len(job.Walls) - 1
	w, at := &job.Walls[n], At("walls", n)
	w.Width = pick(job, "30 3/4", "849") // 21 3/4 in (600 mm) times √2
	w.Base[0].Readings[1].At = w.Width
	w.Top.Behind = "corner"
	w.Top.Depth = pick(job, "21 3/4", "600")
	w.Top.Right = w.Top.Depth
	job.Guess = append(job.Guess, at+".top.right")
	for i := range n - 1 {
		if job.Walls[i].Right.Meets == string(survey.Corner) && job.Walls[i+1].Left.Meets == string(survey.Corner) && seated(job, i, w.Head.Stops.At) {
			break
		}
	}
	return nil
}

// seated lets both walls of a corner stand on a seat there, and tells whether their
// lowest stretches of base had room for it. Tile and bed on a front of 30 3/4 in (849 mm) come some
// 3/16 in (5 mm) further out along the walls; the seat rises 1/4 in to the foot to the corner.
func seated(job *survey.Job, i int, front string) bool {
	left, right := &job.Walls[i], &job.Walls[i+1]
	along := pick(job, "21 15/16", "605")
	drop := less(job, "0", front)
	corner := less(job, drop, pick(job, "5/16", "9"))
	from, to := less(job, left.Width, along), along
	a, b := &left.Base[len(left.Base)-1], &right.Base[0]
	if !splits(job, *a, from) || !splits(job, *b, to) {
		return false
	}
	k := len(left.Base)
	guessElsewhere(job, At(At("walls", i)+".base", k-1)+".readings[1]", At("walls", i+1)+".base[0].readings[0]")
	w := &job.Walls[len(job.Walls)-1]
	w.Base[0].Readings[0].Drop, w.Base[0].Readings[1].Drop = a.Readings[1].Drop, b.Readings[0].Drop
	a.Readings[1].At, b.Readings[0].At = from, to
	seat := func(x, y survey.Drop) survey.Segment {
		return survey.Segment{Meets: string(survey.Seat), Gap: a.Gap, Readings: []survey.Drop{x, y}}
	}
	left.Base = append(left.Base, seat(survey.Drop{At: from, Drop: drop}, survey.Drop{At: left.Width, Drop: corner}))
	right.Base = slices.Insert(right.Base, 0, seat(survey.Drop{At: "0", Drop: corner}, survey.Drop{At: to, Drop: drop}))
	shift(job, At("walls", i+1)+".base", 0, 1)
	for _, path := range []string{At(At("walls", i)+".base", k), At(At("walls", i+1)+".base", 0)} {
		for r := range 2 {
			job.Guess = append(job.Guess, At(path+".readings", r)+".drop")
		}
	}
	return true
}

// splits tells whether a stretch of base with two readings has some of itself on both
// sides of a place.
func splits(job *survey.Job, s survey.Segment, at string) bool {
	if len(s.Readings) != 2 {
		return false
	}
	system, _ := System(job.Units)
	x, err := length.Parse(at, system)
	from, bad := length.Parse(s.Readings[0].At, system)
	to, worse := length.Parse(s.Readings[1].At, system)
	return err == nil && bad == nil && worse == nil && from < x && x < to
}
