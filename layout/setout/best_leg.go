package setout

import (
	"context"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// A leg that is laid as is best is first laid in single tiles. Where it is no wider than one
// tile nothing else is better by the order of merit down to the runs: the bond has the same
// pieces in it or smaller ones, and the rest of the wall is as free as can be without it. So the
// bond is taken where it is as good, and in a leg wider than a tile where it is better. A leg so
// narrow that nobody can cut a tile for it is left out.

// bestLegs is Solve for a room with legs that are open.
func bestLegs(ctx context.Context, room survey.Room, of telling) (survey.Room, plan.Setout, []plan.Wall, error) {
	open := room.OpenLegs()
	single := room
	for _, l := range open {
		why := survey.LegWorse
		if room.LegParted(l) {
			why = survey.LegParted
		}
		single = single.LayLeg(l, survey.SingleTiles, why)
	}
	best, err := solveWith(ctx, single, of)
	if err != nil {
		return room, plan.Setout{}, nil, err
	}
	if thin := tooThin(best, open); len(thin) > 0 {
		for _, l := range thin {
			single = single.LayLeg(l, survey.NoLeg, survey.LegTooThin)
		}
		if best, err = solveWith(ctx, single, of); err != nil {
			return room, plan.Setout{}, nil, err
		}
	}
	bonded, any := single, false
	for _, l := range open {
		as := best.room.Walls[l.Wall].Base[l.Segment]
		if as.Why != survey.LegWorse {
			continue
		}
		good, why, err := bondGood(ctx, best, single, l)
		if err != nil {
			return room, plan.Setout{}, nil, err
		}
		if good {
			bonded, any = bonded.LayLeg(l, survey.InBond, why), true
		}
	}
	if any {
		with, err := bondedLegs(ctx, best, bonded, of)
		if err != nil {
			return room, plan.Setout{}, nil, err
		}
		if down(with, best) <= 0 {
			best = with
		}
	}
	return best.room, best.setout, best.walls, nil
}

func solveWith(ctx context.Context, room survey.Room, of telling) (s solved, err error) {
	s.room, s.setout, s.walls, err = solve(ctx, room, of, nil)
	return s, err
}

// tooThin are the legs in single tiles of which nobody can cut the tiles.
func tooThin(s solved, open []survey.LegAt) []survey.LegAt {
	return slices.DeleteFunc(slices.Clone(open), func(l survey.LegAt) bool {
		w := s.walls[l.Wall]
		wide := l.Beside.Width(w.Found, w.Start.Placed)
		return wide <= 0 || wide >= piece.UnworkableLimit(s.room, s.room.Tile.Width)
	})
}

// bondGood tells whether a leg may as well be laid in the bond. One no wider than a tile is laid so on the
// course line, with the joint and the hand, that were found with single tiles; there the bond must be
// as good. For a wider one the whole room is to be looked at.
func bondGood(ctx context.Context, best solved, room survey.Room, l survey.LegAt) (bool, survey.LegReason, error) {
	if _, most := l.Widths(room); most > room.Tile.Width {
		return true, survey.LegBetter, nil
	}
	with, err := solveWith(ctx, onLineOf(best, room.LayLeg(l, survey.InBond, survey.LegAlike)), little)
	return err == nil && down(with, best) <= 0, survey.LegAlike, err
}

// bondedLegs sets the room out with those legs in the bond. Where not every line was looked at with
// single tiles either, the line found with them stays: another whole search would take as long again.
func bondedLegs(ctx context.Context, best solved, room survey.Room, of telling) (solved, error) {
	if best.setout.Proven {
		return solveWith(ctx, room, of)
	}
	s, err := solveWith(ctx, onLineOf(best, room), of)
	if err != nil {
		return s, err
	}
	s.room.Joints, s.room.Line, s.room.Bond.Hand = room.Joints, room.Line, room.Bond.Hand
	s.setout.Pinned, s.setout.Joints = room.Line != nil, best.setout.Joints
	if s.setout.Proven {
		s.setout.Proven, s.setout.Bound = false, "Not every set-out was looked at."
		if s.setout.Told() {
			s.setout.Reasons = append(s.setout.Reasons, s.setout.Bound)
		}
	}
	return s, nil
}

// onLineOf is a room with the course line, the joint and the hand of a set-out of it.
func onLineOf(s solved, room survey.Room) survey.Room {
	joint := s.setout.Joint
	room = room.Jointed(joint)
	room.Joints = []length.Length{joint}
	room.Line, room.Bond.Hand = &s.setout.Line, s.setout.Hand
	return room
}

// down compares two set-outs of a room with their legs, down to the runs.
func down(a, b solved) int {
	x, y := withLegs(a), withLegs(b)
	order, _ := b.setout.Order.Until(&x, &y, merit.Mirror)
	return order
}

// withLegs is the merit of a set-out by which ways to lay its legs compare. Pieces as wide as their
// leg count in no run, since nobody chooses that width. The search counts no other of a leg in single
// tiles; one that is wider than a tile has more of them, beside the front.
func withLegs(s solved) merit.Merit {
	m := s.setout.Merit
	m.Sight.Runs, m.OutOfSight.Runs = slices.Clone(m.Sight.Runs), slices.Clone(m.OutOfSight.Runs)
	for _, l := range s.room.ChosenLegs() {
		w := s.walls[l.Wall]
		wide := l.Beside.Width(w.Found, w.Start.Placed)
		single, wider := w.Found.Base[l.Segment].Leg == survey.SingleTiles, wide > s.room.Tile.Width
		for _, r := range w.Runs {
			switch {
			case !slices.ContainsFunc(r.Edges, ofLeg(l)):
			case single && wider:
				sightOf(&m, r).AddRun(inMarks(s.room, r))
			case !single && r.Across && r.Least == wide:
				sightOf(&m, r).DropRun(inMarks(s.room, r))
			}
		}
		if single && wider {
			addSmall(&m, w, l)
		}
	}
	slices.SortFunc(m.Sight.Runs, piece.Share.Compare)
	slices.SortFunc(m.OutOfSight.Runs, piece.Share.Compare)
	return m
}
