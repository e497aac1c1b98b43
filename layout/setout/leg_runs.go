package setout

import (
	"slices"
	"strconv"

	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// ofLeg tells whether the name of an edge is that of the floor under a leg, or of the front beside it.
func ofLeg(l survey.LegAt) func(edge string) bool {
	floor, front := "base "+strconv.Itoa(l.Segment), "step "+strconv.Itoa(max(0, l.Segment-1))
	return func(edge string) bool { return edge == floor || edge == front }
}

func sightOf(m *merit.Merit, r plan.Run) *merit.Sight {
	if r.Low {
		return &m.OutOfSight
	}
	return &m.Sight
}

// inMarks is the share of a run in whole marks of the tape.
func inMarks(room survey.Room, r plan.Run) piece.Share {
	tile := room.Tile.Height
	if r.Across {
		tile = room.Tile.Width
	}
	return piece.Part(r.Least.FloorTo(room.Tape), tile)
}

// addSmall counts what is too small beside the front of a leg in single tiles that is wider than one:
// the search counts only those as wide as a leg.
func addSmall(m *merit.Merit, w plan.Wall, l survey.LegAt) {
	name := "step " + strconv.Itoa(max(0, l.Segment-1))
	for i := range w.Pieces {
		p := &w.Pieces[i]
		if p.Whole || !slices.ContainsFunc(p.Across, func(e piece.Edge) bool { return e.Name(w.Shape.Sides) == name }) {
			continue
		}
		for low, sight := range []*merit.Sight{&m.Sight, &m.OutOfSight} {
			switch p.Grade(low == 1) {
			case piece.Hopeless:
				sight.Unworkable++
			case piece.Small:
				sight.Slivers++
			}
		}
	}
}
