package form

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/survey"
)

// place puts what was dragged or nudged on a drawing where it was let go:
//
//	1 course=-38 1/2                  the course line
//	1 start=32 7/16                   the start of wall 1: a joint's middle, or a tile's where one is pinned
//	1 phase=24 1/2;-38                the start of wall 1 by its edge, and the course line
//	1 pipe valve=19 1/2;-7            a pipe's centre
//	1 niche shelf left=34             a free mark, named as the plan file names it
//	1 move window north=20;10         the lower left corner of what was measured
//	1 size window north=24;30         its width and height, of a doorway its width and its top
//	1 move strip mosaic=19 3/4        the middle of a measured strip
//	1 band liner=20                   the bottom edge of a band, or what is wished of a free one
//	1 fixture shelf=12;8              a fixture along the wall and in height
//	1 stop right=32 1/4               an end or the head that was measured
//	1 base 1 reading 2=30;-38 13/16   a point of the level readings, and head reading 2=
//
// Walls count from 1, and so do stretches of base and readings. Where only one
// of two figures may move, it stands alone. What was measured changes in the
// survey; everything else is pinned.
func place(job *survey.Job, rest string) error {
	at, value, found := strings.Cut(rest, "=")
	number, handle, named := strings.Cut(at, " ")
	i, err := strconv.Atoi(number)
	if !found || !named || err != nil || i < 1 || i > len(job.Walls) {
		return fmt.Errorf("%q names no wall and no place on it", rest)
	}
	w := &job.Walls[i-1]
	kind, name, _ := strings.Cut(handle, " ")
	switch {
	case handle == "course":
		job.Pins.Course.Line = value
		return nil
	case handle == "start":
		return pin(job, w.Name+" "+startWord(job.Pins.Walls[w.Name])+"="+value)
	case handle == "phase":
		edge, line, both := strings.Cut(value, ";")
		if !both {
			return fmt.Errorf("a phase is a start and a line, not %q", value)
		}
		job.Pins.Course.Line = line
		return pin(job, w.Name+" edge="+edge)
	case kind == "pipe":
		return placePipe(w, name, value)
	case kind == "band":
		return placeBand(job, name, value)
	case kind == "fixture":
		return placeFixture(w, name, value)
	case kind == "stop":
		return placeStop(w, name, value)
	case strings.HasPrefix(handle, "move strip "):
		return placeStrip(w, strings.TrimPrefix(handle, "move strip "), value)
	case kind == "move":
		return placeOpening(job, i-1, name, value, "left", "bottom")
	case kind == "size":
		return placeOpening(job, i-1, name, value, "width", "height")
	case kind == "base" || strings.HasPrefix(handle, "head reading "):
		return placeReading(w, handle, value)
	case !hasMark(*w, handle):
		return fmt.Errorf("wall %q has no %q", w.Name, handle)
	}
	return Set(job, Key(Key("pins.walls", w.Name)+".marks", handle), value)
}

// startWord is what a start is told by where it is dragged.
func startWord(pin survey.WallPin) string {
	if pin.Tile != "" {
		return "tile"
	}
	return "joint"
}

func placePipe(w *survey.Wall, name, value string) error {
	x, y, both := strings.Cut(value, ";")
	j := slices.IndexFunc(w.Openings, func(o survey.Opening) bool { return o.Kind == "pipe" && o.Name == name })
	if j < 0 || !both {
		return fmt.Errorf("wall %q has no pipe %q", w.Name, name)
	}
	w.Openings[j].At, w.Openings[j].Height = x, &survey.Measure{Plain: y}
	return nil
}

// placeOpening writes the measured ones of two marks of a niche, window or doorway.
func placeOpening(job *survey.Job, wall int, name, value, level, plumb string) error {
	w := job.Walls[wall]
	j := slices.IndexFunc(w.Openings, func(o survey.Opening) bool { return o.Kind != "pipe" && o.Kind+" "+o.Name == name })
	if j < 0 {
		return fmt.Errorf("wall %q has no %q", w.Name, name)
	}
	path := At(At("walls", wall)+".openings", j)
	var marks []string
	for _, mark := range []string{path + "." + level, path + "." + plumb} {
		for _, field := range []string{mark + ".at", mark} { // a doorway's height is plain
			if Get(*job, field) != "" {
				marks = append(marks, field)
			}
		}
	}
	figures := strings.Split(value, ";")
	if len(marks) == 0 || len(marks) != len(figures) {
		return fmt.Errorf("%q takes %d figures, not %q", name, len(marks), value)
	}
	for k, mark := range marks {
		if err := Set(job, mark, figures[k]); err != nil {
			return err
		}
	}
	return nil
}

// placeReading moves a point of the level readings: along the wall too where
// the value has two figures. Heights are over the level line; the survey counts
// a base downwards.
func placeReading(w *survey.Wall, handle, value string) error {
	var stretch, k int
	x, y, both := strings.Cut(value, ";")
	if !both {
		y = value
	}
	if n, _ := fmt.Sscanf(handle, "head reading %d", &k); n == 1 && k >= 1 && k <= len(w.Head.Readings) {
		r := &w.Head.Readings[k-1]
		if r.Rise = y; both {
			r.At = x
		}
		return nil
	}
	n, _ := fmt.Sscanf(handle, "base %d reading %d", &stretch, &k)
	if n != 2 || stretch < 1 || stretch > len(w.Base) || k < 1 || k > len(w.Base[stretch-1].Readings) {
		return fmt.Errorf("wall %q has no %q", w.Name, handle)
	}
	r := &w.Base[stretch-1].Readings[k-1]
	if r.Drop = opposite(y); both {
		r.At = x
	}
	return nil
}

// opposite turns the sign of a length as typed.
func opposite(text string) string {
	if up, minus := strings.CutPrefix(text, "-"); minus {
		return up
	}
	if text == "0" {
		return text
	}
	return "-" + text
}
