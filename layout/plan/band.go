package plan

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Band is where a band of the room stands and where its tile starts.
type Band struct {
	Name        string
	Bottom, Top length.Length // over the level line; Top is where it ends under a head at its highest
	ToHead      bool
	Hand        survey.Hand     // of its bond
	Walls       []int           // ascending
	Line        length.Length   // of one laid in a pattern: its line
	Edges       []length.Length // by those: the left edge of a tile of its lowest course, or of a tile on its line
}

// Edge is where the band's tile starts on a wall; false where it does not run there.
func (b Band) Edge(wall int) (length.Length, bool) {
	for i, w := range b.Walls {
		if w == wall {
			return b.Edges[i], true
		}
	}
	return 0, false
}

// At is how a wall is laid at a height: the room with the tile there, and the
// set-out with the line and the edge of the courses there. Over a band the courses
// begin anew.
func (s Setout) At(room survey.Room, wall int, start length.Length, y length.Length) (survey.Room, Setout, length.Length) {
	if !room.Bond.Coursed() {
		return room, s, start
	}
	for _, i := range room.BandsOn(wall) {
		b := s.Bands[i]
		if b.Top > y && !b.ToHead || b.Bottom > y {
			break
		}
		if b.ToHead {
			edge, _ := b.Edge(wall)
			s.Line = b.Bottom
			return room.Laid(i + 1), s, edge
		}
		s.Line += b.Top - b.Bottom + room.Joint
	}
	return room, s, start
}
