package setout

import (
	"coursewright/layout/fixture"
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// dress lays the trim along the edges of walls that are cut, and places what is
// fixed to them. A bond without courses has no lines that either could follow.
func dress(room survey.Room, walls []plan.Wall, line length.Length) {
	coursed := room.Bond.Coursed()
	stack := room.Bond.Num == 0
	for i := range walls {
		w := &walls[i]
		w.Trim = trim.Of(w.Found, w.Start.Placed, trim.Tile{Units: room.Units, Width: room.Tile.Width, Height: room.Tile.Height, Joint: room.Joint,
			Line: line, Start: w.Start.Edge, Level: coursed && (stack || !room.Bond.Plumb), Plumb: coursed && (stack || room.Bond.Plumb)})
		if len(w.Found.Fixtures) == 0 {
			continue
		}
		w.Fixtures = fixture.Of(fixture.Wall{Found: w.Found, Units: room.Units, Pieces: w.Pieces, Placed: w.Start.Placed, Joint: room.Joint,
			Level: coursed && (stack || !room.Bond.Plumb), Region: w.Shape.Region})
	}
}
