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
	Edges       []length.Length // by those: the left edge of a tile of its lowest course
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
