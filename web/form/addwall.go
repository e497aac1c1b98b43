package form

import (
	"cmp"
	"fmt"
	"slices"

	"coursewright/layout/survey"
)

// newWall is what a wall is called that is added, until it gets a better name. Where walls are told of it follows the
// word “wall”: no wall is to be called “wall wall 2”.
const newWall = "side"

// addWall adds a wall to the right of the last one. The two meet in a corner.
func addWall(job *survey.Job) error {
	width := pick(job, "30", "760")
	gap := pick(job, "1/8", "3")
	corner := survey.End{Meets: "corner", Gap: gap}
	w := survey.Wall{
		Name: freshName(wallNames(*job), newWall), Width: width,
		Left: corner, Right: survey.End{Stops: &survey.Mark{At: width}, Finish: "trim"},
		Base: []survey.Segment{{Meets: "floor", Gap: gap, Readings: []survey.Drop{{At: "0", Drop: pick(job, "40", "1000")}, {At: width, Drop: pick(job, "40", "1000")}}}},
		Head: survey.Head{Stops: &survey.Mark{At: pick(job, "42", "1050")}, Finish: "trim"},
	}
	if n := len(job.Walls); n > 0 {
		last := &job.Walls[n-1]
		last.Right = corner
		w.Base[0] = continued(*last, w.Base[0], width)
	} else {
		w.Left = survey.End{Stops: &survey.Mark{At: "0"}, Finish: "trim"}
	}
	job.Walls = append(job.Walls, w)
	return nil
}

// addWallAsHigh adds a wall to the right of the last one, with tile up to the ceiling where that has it.
func addWallAsHigh(job *survey.Job) error {
	if err := addWall(job); err != nil {
		return err
	}
	n := len(job.Walls)
	if n < 2 {
		return nil
	}
	last, w := job.Walls[n-2].Head, &job.Walls[n-1]
	if k := len(last.Readings); last.Meets != "" && k > 0 {
		high := last.Readings[k-1].Rise
		w.Head = survey.Head{Meets: last.Meets, Gap: last.Gap, Readings: []survey.Rise{{At: "0", Rise: high}, {At: w.Width, Rise: high}}}
	}
	return nil
}

// beforeBenches adds a wall to the right of those that are not between two others, as the fronts of benches
// and curbs are, which come last in the list. Of these only such as are meant count.
func beforeBenches(job *survey.Job, add func(*survey.Job) error, meant func(survey.Wall) bool) error {
	k := len(job.Walls)
	for k > 0 && Between(job.Walls[k-1]) && meant(job.Walls[k-1]) {
		k--
	}
	names, between := wallNames(*job), slices.Clone(job.Walls[k:])
	job.Walls = job.Walls[:k:k]
	if err := add(job); err != nil {
		return err
	}
	if len(between) > 0 {
		job.Walls[k].Name = freshName(names, newWall)
		job.Walls = append(job.Walls, between...)
		shift(job, "walls", k, 1)
	}
	return nil
}

// continued carries the base of the last wall round the corner.
func continued(last survey.Wall, plain survey.Segment, width string) survey.Segment {
	if len(last.Base) == 0 {
		return plain
	}
	s := last.Base[len(last.Base)-1]
	if len(s.Readings) == 0 {
		return plain
	}
	drop := s.Readings[len(s.Readings)-1].Drop
	s.Readings = []survey.Drop{{At: "0", Drop: drop}, {At: width, Drop: drop}}
	return s
}

func addOpening(job *survey.Job, w *survey.Wall, kind string) error {
	var names []string
	for _, o := range w.Openings {
		names = append(names, o.Name)
	}
	o := survey.Opening{Kind: kind, Name: freshName(names, kind)}
	mid := middle(job, "0", w.Width)
	within := func(wide string) string { return narrower(job, wide, mid) }
	switch kind {
	case "niche":
		o.Left = &survey.Mark{From: middle(job, "0", mid), To: mid}
		o.Width = &survey.Mark{From: within(pick(job, "11", "280")), To: within(pick(job, "14 1/2", "370"))}
		tidyMark(o.Width)
		o.Bottom = &survey.Mark{From: pick(job, "2", "50"), To: pick(job, "12", "300")}
		o.Height = &survey.Measure{Mark: &survey.Mark{From: pick(job, "12", "300"), To: pick(job, "20", "500")}}
	case "window":
		o.Left = &survey.Mark{At: middle(job, "0", mid)}
		o.Width = &survey.Mark{At: within(pick(job, "20", "500"))}
		o.Bottom = &survey.Mark{At: pick(job, "10", "250")}
		o.Height = &survey.Measure{Mark: &survey.Mark{At: underStop(job, w.Head, o.Bottom.At, pick(job, "24", "600"))}}
	case "doorway":
		o.Left = &survey.Mark{At: middle(job, "0", mid)}
		o.Width = &survey.Mark{At: within(pick(job, "33", "840"))}
		o.Height = &survey.Measure{Plain: doorTop(job, w)}
	case "pipe":
		o.At, o.Diameter = mid, pick(job, "1", "25")
		o.Height = &survey.Measure{Plain: pick(job, "-7", "-180")}
	default:
		return fmt.Errorf("an opening is a niche, a window, a doorway or a pipe, not %q", kind)
	}
	clearOfStrips(job, w, &o)
	w.Openings = append(w.Openings, o)
	return nil
}

// doorTop is how high over the level line the top of a doorway is guessed to be: a usual door with its
// casing, over the lowest of what the wall stands on. Common practice, no source.
func doorTop(job *survey.Job, w *survey.Wall) string {
	high := pick(job, "82 1/2", "2100")
	floor := high
	for _, s := range w.Base {
		for _, r := range s.Readings {
			floor = narrower(job, floor, less(job, high, r.Drop))
		}
	}
	return floor
}

// underStop is the height that a window is guessed to have over its sill: as given, or less where
// its top would stand over the line at which tile stops, so that a course is left over it.
func underStop(job *survey.Job, head survey.Head, sill, height string) string {
	if head.Meets != "" || head.Stops == nil {
		return height
	}
	stop := cmp.Or(head.Stops.At, head.Stops.From)
	under := less(job, less(job, stop, sill), pick(job, "4", "100"))
	least := pick(job, "8", "200")
	if narrower(job, under, height) != under || narrower(job, under, least) == under {
		return height
	}
	return under
}

// freshName gives word, or word with the first number that is not taken.
func freshName(taken []string, word string) string {
	for n, name := 2, word; ; n++ {
		if !slices.Contains(taken, name) {
			return name
		}
		name = fmt.Sprintf("%s %d", word, n)
	}
}
