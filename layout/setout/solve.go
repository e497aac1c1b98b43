// Package setout finds the best set-out of a room and cuts its walls: search
// finds it, count says what each set-out gives, tell says why it was chosen.
package setout

import (
	"context"
	"slices"

	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/setout/count"
	"coursewright/layout/setout/search"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
)

// Solve finds the best set-out of a room, with the best of its joints, and cuts
// its walls. The room is given back with that joint. The error is the context's.
func Solve(ctx context.Context, room survey.Room) (survey.Room, plan.Setout, []plan.Wall, error) {
	return solve(ctx, room, everything, nil)
}

// Quick is Solve for whoever does not ask why: the same set-out and pieces, without what
// the classic starts and lines would give, how far a start may slip, and the reasons.
func Quick(ctx context.Context, room survey.Room) (survey.Room, plan.Setout, []plan.Wall, error) {
	return solve(ctx, room, little, nil)
}

// Kept is what is kept of walls from one room to the next, of whoever solves one after the other.
type Kept struct{ walls count.Kept }

// Quick is Quick of a room of which some walls may be as in a room before it: what was worked out of them is used again.
// Rooms with bands, patterns and legs that are open are solved as if nothing were kept.
func (k *Kept) Quick(ctx context.Context, room survey.Room) (survey.Room, plan.Setout, []plan.Wall, error) {
	return solve(ctx, room, little, &k.walls)
}

// telling is how much is told of a set-out.
type telling bool

const (
	little     telling = false
	everything telling = true
)

func solve(ctx context.Context, room survey.Room, of telling, kept *count.Kept) (survey.Room, plan.Setout, []plan.Wall, error) {
	if len(room.OpenLegs()) > 0 {
		return bestLegs(ctx, room, of)
	}
	if wall, _, _ := room.FreeColumns(); wall >= 0 {
		return solveColumns(ctx, room, of, kept)
	}
	switch {
	case !room.Bond.Coursed():
		return ofPattern(ctx, room, of)
	case room.Parted():
		return solveBeside(ctx, room, of, kept)
	}
	if len(room.Bands) > 0 {
		return solveParted(ctx, room, of)
	}
	r, room, joints, err := joint(ctx, room, kept)
	if err != nil {
		return room, plan.Setout{}, nil, err
	}
	s, walls := whole(room, r, of)
	r.Keep(kept)
	s.Joints = joints
	told(&s, room, walls, of)
	return room, s, walls, ctx.Err()
}

// whole is a set-out that was found with what is said of it and the walls cut, but for
// what is read from their pieces.
func whole(room survey.Room, r *search.Result, of telling) (plan.Setout, []plan.Wall) {
	s := said(&room, r)
	return s, laid(room, r, of, &s)
}

// said is what is said of a set-out as it was found, before it is known where its walls start.
func said(room *survey.Room, r *search.Result) plan.Setout {
	return plan.Setout{Line: r.Line, Hand: r.Hand, Joint: room.Joint, Pinned: room.Line != nil, Merit: r.Merit,
		Order: r.Order(), Proven: r.Proven, Bound: tell.Bound(room, r)}
}

// laid adds where its walls start, and cuts them.
func laid(room survey.Room, r *search.Result, of telling, s *plan.Setout) []plan.Wall {
	s.Walls, s.Lines = begun(&room, r, of)
	return cut(room, r, s.Walls)
}

// begun says where walls start, and what the classic starts and lines would give.
func begun(room *survey.Room, r *search.Result, of telling) ([]plan.Start, []plan.ClassicLine) {
	if of == little {
		return tell.Begins(room, r), nil
	}
	return tell.Starts(room, r), tell.Lines(room, r)
}

// told adds to a set-out what is read from its pieces.
func told(s *plan.Setout, room survey.Room, walls []plan.Wall, of telling) {
	for _, w := range walls {
		for _, p := range w.Pieces {
			if !p.Whole {
				s.CutTiles++
			}
		}
	}
	s.Least = tell.Least(walls)
	s.Holds = tell.Holds(room, walls)
	if of == everything {
		s.Reasons = tell.Reasons(s, room, walls)
	}
}

// WithTops tells the set-out of a room anew once the tops of its walls are laid.
func WithTops(s *plan.Setout, room survey.Room, walls []plan.Wall) {
	if !slices.ContainsFunc(walls, func(w plan.Wall) bool { return w.Top != nil }) || !room.Bond.Coursed() {
		return
	}
	s.Least = tell.Least(walls)
	if s.Told() {
		s.Reasons = tell.Reasons(s, room, walls)
	}
}

// cut makes and numbers the pieces of every wall.
func cut(room survey.Room, r *search.Result, starts []plan.Start) []plan.Wall {
	walls := make([]plan.Wall, len(room.Walls))
	pieces := make([][]piece.Piece, len(room.Walls))
	letters := make([]string, len(room.Walls))
	for i, w := range room.Walls {
		shape, cut, gaps := r.Wall(i).CutWithLegs(r.Walls[i].Setting)
		gaps = withoutSeams(w, room.Joint, gaps)
		walls[i] = plan.Wall{Found: w, Shape: shape, Start: starts[i], Gaps: gaps, Bare: places(gaps)}
		pieces[i], letters[i] = cut, w.Letter
	}
	number(room, walls, pieces, letters)
	dress(room, walls, r.Line)
	return walls
}

// number gives the pieces their ids and finds the runs of every wall.
func number(room survey.Room, walls []plan.Wall, pieces [][]piece.Piece, letters []string) {
	piece.Number(pieces, letters, room.Bond.Plumb)
	for i := range walls {
		walls[i].Pieces = pieces[i]
		walls[i].Runs = plan.FindRuns(room, walls[i])
	}
}

// places are the middles of bare stretches.
func places(gaps []piece.Gap) []plane.Point {
	var out []plane.Point
	for _, g := range gaps {
		out = append(out, plane.Point{X: (g.From.X + g.To.X).Half(), Y: (g.From.Y + g.To.Y).Half()})
	}
	return out
}
