package stages

import (
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// Struck is the line that is struck round the room before anything is set, over
// or under the level line.
type Struck struct {
	At    length.Length
	Joint bool       // not the course line: a rim stands above that, so nobody could draw it
	Full  FullCourse // the course that stands on the batten
}

// ToStrike finds the line to strike: the course line, or where any rim stands
// above it the bottom edge of the first full course, which is the first joint
// line over the rim.
//
// Laws, each with a test:
//  1. No rim stands above the line struck, if the walls hold a course that no
//     base cuts.
//  2. Where no rim stands above the course line, that is the line struck.
func ToStrike(room survey.Room, line length.Length, walls []plan.Wall) Struck {
	s := Struck{At: line}
	full, found := FirstFull(room, line, walls)
	s.Full = full
	for _, w := range walls {
		for _, base := range w.Found.Base {
			for _, r := range base.Readings {
				s.Joint = s.Joint || found && r.Value > line && full.Bottom > line
			}
		}
	}
	if s.Joint {
		s.At = full.Bottom
	}
	return s
}

// StruckFrom is how far a place along a wall lies from the left corner of the
// boards, measured at a height: a corner that leans is met somewhere else there
// than on the level line. It is what a tape shows that is held along the line
// struck.
//
// Law, with a test: where the corner is plumb, or the tile stops short of it, it
// is the place itself.
func StruckFrom(w plan.Wall, x, at length.Length) length.Length {
	if e := w.Found.Left; e.Meets && len(e.Lean) > 0 {
		return x - survey.At(e.Lean, at)
	}
	return x
}
