package stages

import (
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Struck is the line that is struck round the room before anything is set, over
// or under the level line.
type Struck struct {
	At    length.Length
	Joint bool       // not the course line: a rim stands above that, so nobody could draw it
	Full  FullCourse // the course that stands on the batten

	// What of a tile meets this line from over it, and the plumb line of its wall from the right.
	Level, Plumb Touch
}

// Touch is what of a tile stands on a line.
type Touch string

// A tile meets a line with an edge or, where it leans or has points, with a corner.
const (
	Edge   Touch = "edge"
	Corner Touch = "corner"
)

// Is says what of a course the line is.
func (s Struck) Is(course string) string {
	if s.Level == Corner {
		return "The lowest corners of " + course + " stand on it."
	}
	return "It is the bottom edge of " + course + "."
}

// LeftOf and LowestOf tell what of some outline lies furthest to the left, and lowest.
func LeftOf(face plane.Region) Touch {
	return touch(face, func(p plane.Point) length.Length { return p.X })
}

func LowestOf(face plane.Region) Touch {
	return touch(face, func(p plane.Point) length.Length { return p.Y })
}

func touch(face plane.Region, off func(plane.Point) length.Length) Touch {
	var least length.Length
	n := 0
	for _, r := range face {
		for _, c := range r {
			switch at := off(c.Point); {
			case n == 0 || at < least:
				least, n = at, 1
			case at == least:
				n++
			}
		}
	}
	if n == 1 {
		return Corner
	}
	return Edge
}

// touches tells what of the tiles of a room's pattern meets the lines that are struck, by any tile that is whole.
func touches(walls []plan.Wall) (level, plumb Touch) {
	for i := range walls {
		for k := range walls[i].Pieces {
			if p := &walls[i].Pieces[k]; p.Laid == 0 && p.Whole && p.Outline != nil {
				tile := plane.Region{p.Outline}
				return LowestOf(tile), LeftOf(tile)
			}
		}
	}
	return Edge, Edge
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
	s.Level, s.Plumb = touches(walls)
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

// On is the height of the line that is struck on a wall: of one that ends under the first full
// course of the room the bottom edge of its own. Where its base cuts all of that, none is.
//
// Law, with a test: the line runs over the wall, and no base of it stands higher.
func (s Struck) On(w plan.Wall) (at length.Length, found bool) {
	own, found := s.Full.On(w)
	if own == s.Full {
		return s.At, true
	}
	return own.Bottom, found
}

// Over is how far the line struck runs over a station, found false where none does.
func (s Struck) Over(st Station, walls []plan.Wall) (up length.Length, found bool) {
	for _, i := range st.Walls {
		if at, is := s.On(walls[i]); is && (!found || at-st.Height > up) {
			up, found = at-st.Height, true
		}
	}
	return up, found
}

// From is how far a place along a wall lies from the left corner of the boards, measured
// along the line that is struck on it.
func (s Struck) From(w plan.Wall, x length.Length) length.Length {
	at, found := s.On(w)
	if !found {
		at = s.At
	}
	return StruckFrom(w, x, at)
}

// FromCorner writes how far a place lies from the left corner of the boards: where tile laps round an outside corner,
// beyond it.
func FromCorner(x length.Length, tape func(length.Length) string) string {
	if x < 0 {
		return tape(-x) + " beyond it"
	}
	return tape(x)
}

// Leans tells whether a tape shows another figure for the edge that is struck on a wall when it is held along the line
// struck than it shows for the same place counted as all else along the wall is: its left corner leans.
func (s Struck) Leans(w plan.Wall, edge length.Length, tape func(length.Length) string) bool {
	return tape(s.From(w, edge)) != tape(edge)
}

// Datum says where the figures along a wall are counted from: the plumb line through its left corner at the level line,
// unless the lean of that was read from another place.
func Datum(w plan.Wall) string {
	if e := w.Found.Left; e.Meets && len(e.Lean) > 0 && survey.At(e.Lean, 0) != 0 {
		return "from where its lean was read as 0"
	}
	return "from the corner on the level line"
}

// LeanText says how the edge that is struck on a wall is counted where its left corner leans, and how all else is; empty
// where it does not lean by what a tape shows.
func (s Struck) LeanText(w plan.Wall, edge length.Length, tape func(length.Length) string) string {
	if !s.Leans(w, edge, tape) {
		return ""
	}
	return "Its left corner leans: START is " + FromCorner(s.From(w, edge), tape) + " from it along the line struck, and " +
		FromCorner(edge, tape) + " " + Datum(w) + ", from where all else along the wall is counted."
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
