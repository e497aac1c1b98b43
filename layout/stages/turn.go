package stages

import (
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// The stages by their place in the order of work.
const (
	dryLay = iota
	first
	field
	niche
	ends
	holes
	grout
	soft
	stageCount
)

// turn tells in which stage a piece is set. A piece of the first course is set
// with it, however it is cut; among the others holes come last, since they are
// marked on the wall, then ends, then what meets a niche or window. What is cut
// to the side of a step in the base goes with the field.
func (in Input) turn(w plan.Wall, p *piece.Piece) int {
	if in.FirstCourse(w, *p) {
		return first
	}
	at := field
	for _, side := range p.Cuts {
		at = max(at, stageOf(w.Shape.Sides[side]))
	}
	return at
}

// stageOf is the stage of the pieces cut to a boundary.
func stageOf(b survey.Boundary) int {
	switch {
	case strings.HasPrefix(b.Name, "pipe "):
		return holes
	case b.Name == "left" || b.Name == "right":
		return ends
	case strings.HasPrefix(b.Name, "niche ") || strings.HasPrefix(b.Name, "window "):
		return niche
	}
	return field
}

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

// days lists all stages with their words.
func days(set Settings) []Stage {
	all := make([]Stage, stageCount)
	all[dryLay] = Stage{Name: "Dry lay and marks", Do: "Measure a stack of ten tiles. Draw the level line, the course line, " +
		"the starts and the ends. Lay out the first course dry on the floor and hold it against the marks."}
	all[first] = Stage{Name: "First course", Do: "Set it on its supports, wedges or a batten, to the course line. Take the supports " +
		"away only when it has hardened.", Wait: set.First, Why: "the first course carries the others"}
	if set.Holds {
		all[first].Do = "Set it to the course line, on wedges at the base. The mortar holds the tile, so go on."
		all[first].Wait, all[first].Why = 0, ""
	}
	all[field] = Stage{Name: "Field", Do: "Set the whole tiles from the start outwards, course by course, against the story pole."}
	all[niche] = Stage{Name: "Niche and window", Do: "Set the pieces round the openings; check the edges against their marks before the mortar sets."}
	all[ends] = Stage{Name: "Ends and corners", Do: "Set the end pieces, cut edge into the corner and factory edge out. Measure each place before cutting."}
	all[holes] = Stage{Name: "Holes", Do: "Hold each tile to its place, check the centre of the pipe, then cut and set."}
	all[grout] = Stage{Name: "Grout", Do: "Clean the joints, then grout them all but the inside corners and where tile meets other things."}
	all[soft] = Stage{Name: "Soft joints", Do: "Fill the tub, where there is one, and keep it full. Seal the inside corners, the base, the head and round the pipes.",
		Wait: set.Water, Why: "the sealant sets before it gets wet"}
	all[grout].Wait, all[grout].Why = set.Sealant, "the grout dries before the sealant"
	return all
}
