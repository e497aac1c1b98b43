package setout

import (
	"context"
	"slices"
	"strconv"

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
		with, err := solveWith(ctx, bonded, of)
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
	s.room, s.setout, s.walls, err = solve(ctx, room, of)
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
	joint := best.setout.Joint
	room = room.Jointed(joint).LayLeg(l, survey.InBond, survey.LegAlike)
	room.Joints = []length.Length{joint}
	room.Line, room.Bond.Hand = &best.setout.Line, best.setout.Hand
	with, err := solveWith(ctx, room, little)
	return err == nil && down(with, best) <= 0, survey.LegAlike, err
}

// down compares two set-outs of a room with their legs, down to the runs.
func down(a, b solved) int {
	x, y := withLegs(a), withLegs(b)
	order, _ := b.setout.Order.Until(&x, &y, merit.Mirror)
	return order
}

// withLegs is the merit of a set-out with the runs of its legs in single tiles, which count for
// nothing in the search.
func withLegs(s solved) merit.Merit {
	m := s.setout.Merit
	m.Sight.Runs, m.OutOfSight.Runs = slices.Clone(m.Sight.Runs), slices.Clone(m.OutOfSight.Runs)
	for _, w := range s.walls {
		for _, r := range w.Runs {
			if ofSingleLeg(w.Found, r) {
				addRun(&m, s.room, r)
			}
		}
	}
	slices.SortFunc(m.Sight.Runs, byShare)
	slices.SortFunc(m.OutOfSight.Runs, byShare)
	return m
}

// ofSingleLeg tells whether a run is of a leg in single tiles: cut beside the front, or by the floor.
func ofSingleLeg(w survey.WallFound, r plan.Run) bool {
	for _, l := range w.LegsBeside() {
		k, how := w.LegOf(l)
		floor, front := "base "+strconv.Itoa(k), "step "+strconv.Itoa(max(0, k-1))
		if how == survey.SingleTiles && (slices.Contains(r.Edges, floor) || slices.Contains(r.Edges, front)) {
			return true
		}
	}
	return false
}

// addRun counts a run as the search does.
func addRun(m *merit.Merit, room survey.Room, r plan.Run) {
	tile := room.Tile.Height
	if r.Across {
		tile = room.Tile.Width
	}
	share, sight := piece.Part(r.Least.FloorTo(room.Tape), tile), &m.Sight
	if r.Low {
		sight = &m.OutOfSight
	}
	if share.Less(piece.Share{Num: 1, Den: 5}) {
		sight.Fifths++
	}
	if share.Less(piece.Share{Num: 1, Den: 3}) {
		sight.Thirds++
	}
	if share.Less(piece.Share{Num: 1, Den: 2}) {
		sight.Runs = append(sight.Runs, share)
	}
}

func byShare(a, b piece.Share) int {
	switch {
	case a.Less(b):
		return -1
	case b.Less(a):
		return 1
	}
	return 0
}
