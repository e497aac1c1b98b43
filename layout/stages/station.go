package stages

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// Station is a place at which what a wall stands on is measured under the level
// line.
type Station struct {
	Name   string      // "L left", "corner L–B", "L at 4 3/8\""
	Meets  survey.Kind // what stands there
	Height length.Length
	Walls  []int // on which it is: one, or the two of a corner
}

// Stations are the ends of every stretch of base, in the job's order. A corner
// at which two walls have one height, inside or outside, is one station: in a closed room that before the first wall too.
func Stations(units length.System, walls []plan.Wall) []Station {
	var out []Station
	for i, w := range walls {
		letter, last := w.Found.Letter, len(w.Found.Base)-1
		for k, s := range w.Found.Base {
			on := []int{i}
			from, to := s.Readings[0], s.Readings[len(s.Readings)-1]
			left := Station{letter + " left", s.Meets, from.Value, on}
			right := Station{letter + " right", s.Meets, to.Value, on}
			if k > 0 {
				left.Name = letter + " at " + from.At.Tape(units)
			}
			if k < last {
				right.Name = letter + " at " + to.At.Tape(units)
			}
			n := len(out) - 1
			if before, turns := w.Found.Left.Neighbour(); k == 0 && i > 0 && turns && before == i-1 && out[n].Height == left.Height && out[n].Meets == left.Meets {
				out[n].Name, out[n].Walls = plan.CornerName(walls, i, true), []int{i - 1, i}
			} else {
				out = append(out, left)
			}
			out = append(out, right)
		}
	}
	if n := len(out) - 1; n > 0 {
		first, last := out[0], out[n]
		at := last.Walls[len(last.Walls)-1]
		if before, turns := walls[0].Found.Left.Neighbour(); turns && before == at && first.Height == last.Height && first.Meets == last.Meets {
			out[0].Name, out[0].Walls = plan.CornerName(walls, 0, true), []int{0, at}
			return out[:n]
		}
	}
	return out
}

// Rims are the stations that hold water; where there are none, all of them.
func Rims(all []Station) []Station {
	var out []Station
	for _, s := range all {
		if s.Meets.Rim() {
			out = append(out, s)
		}
	}
	if len(out) == 0 {
		return all
	}
	return out
}

// RimName is what lines are measured over: the rims of what holds water, or the floor of a room that has none.
func RimName(all []Station) string {
	if slices.ContainsFunc(all, func(s Station) bool { return s.Meets.Rim() }) {
		return "rim"
	}
	return string(survey.Floor)
}
