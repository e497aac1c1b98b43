package stages

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// FirstCourse tells whether a piece belongs to the first course: a level or raked
// edge of it lies on the base, or it stands so low over it that no piece fits below. What fits below is
// at most the sealed strip of formats.md and a joint.
func (in Input) FirstCourse(w plan.Wall, p piece.Piece) bool {
	for _, ring := range p.Face {
		for i, c := range ring {
			next := ring[(i+1)%len(ring)]
			if w.Shape.Sides[c.On].Name == "base" && (next.X-c.X).Abs() > (next.Y-c.Y).Abs() {
				return true
			}
		}
	}
	box := p.Face.Bounds()
	for _, x := range [...]length.Length{box.Left, box.Right} {
		if base, found := baseAt(w, x); found && box.Bottom-base <= in.Room.Sealant+in.Room.Joint {
			return true
		}
	}
	return false
}

// baseAt is the height of the base at x; of the two at a step, the higher one.
// A lone reading is level over the whole wall, and past its readings a base
// goes on level.
func baseAt(w plan.Wall, x length.Length) (y length.Length, found bool) {
	last := len(w.Found.Base) - 1
	for i, s := range w.Found.Base {
		from, to := s.Readings[0].At, s.Readings[len(s.Readings)-1].At
		if x < from && i > 0 || x > to && i < last {
			continue
		}
		if v := survey.At(s.Readings, x); !found || v > y {
			y, found = v, true
		}
	}
	return y, found
}
