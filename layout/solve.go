// Package layout works out where every tile lands: Solve turns a job into a
// plan. It is pure: the same job gives the same plan, whatever the host, the
// clock or the store.
package layout

import (
	"coursewright/layout/doubt"
	"coursewright/layout/finding"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/setout"
	"coursewright/layout/survey"
)

// Solve takes the steps the trade takes: read the room as found, find the best
// set-out, cut the pieces, and say what should be known. A job that cannot be
// worked with is refused with survey.Faults, all of them at once.
func Solve(job survey.Job) (Plan, error) {
	room, faults := job.Resolve()
	if len(faults) > 0 {
		return Plan{}, faults
	}
	chosen := setout.Solve(room)
	walls := cut(room, chosen)
	setout.Explain(&chosen, room, walls)
	plan := Plan{Room: room, Setout: chosen, Walls: walls, Doubts: doubt.Raise(room, job)}
	plan.Findings = finding.Judge(finding.Input{Room: room, Setout: chosen, Walls: walls})
	return plan, nil
}

// cut makes and numbers the pieces of every wall.
func cut(room survey.Room, s plan.Setout) []plan.Wall {
	walls := make([]plan.Wall, len(room.Walls))
	pieces := make([][]piece.Piece, len(room.Walls))
	letters := make([]string, len(room.Walls))
	for i, w := range room.Walls {
		start := s.Walls[i]
		shape, cut, gaps := setout.Cut(room, w, s.Hand, s.Line, start.Edge, start.Placed)
		walls[i] = plan.Wall{Found: w, Shape: shape, Start: start, Bare: gaps}
		pieces[i], letters[i] = cut, w.Letter
	}
	piece.Number(pieces, letters, room.Bond.Plumb)
	for i := range walls {
		walls[i].Pieces = pieces[i]
	}
	return walls
}
