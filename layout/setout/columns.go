package setout

import (
	"context"

	"coursewright/layout/plan"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// solveColumns is Solve for a room with strips that may have more columns or fewer: it is
// solved with each number, strip by strip, and the best is taken. The strips that follow have
// the fewest meanwhile. Walls without such a strip are the same with each number, and are kept from one to the next;
// what is to be told is told of the best alone.
func solveColumns(ctx context.Context, room survey.Room, of telling, kept *count.Kept) (survey.Room, plan.Setout, []plan.Wall, error) {
	if kept == nil {
		kept = &count.Kept{}
	}
	var best uncut
	chosen, proven := 0, true
	for wall, opening, columns := room.FreeColumns(); wall >= 0; wall, opening, columns = room.FreeColumns() {
		most := 0
		for i, n := range columns {
			with, err := withFewest(ctx, room.ChooseColumns(wall, opening, n), kept)
			if err != nil {
				return room, plan.Setout{}, nil, err
			}
			proven = proven && with.setout.Proven
			if i == 0 || with.setout.Better(&best.setout) {
				best, most = with, n
			}
		}
		if len(columns) > 1 {
			chosen++
		}
		room = room.ChooseColumns(wall, opening, most)
	}
	switch {
	case of == everything:
		var err error
		if best.room, best.setout, best.walls, err = solve(ctx, room, of, nil); err != nil {
			return room, plan.Setout{}, nil, err
		}
	case best.beside != nil:
		best.room, best.setout, best.walls = best.cut()
	}
	s := &best.setout
	if s.Proven && (!proven || chosen > 1) {
		s.Proven, s.Bound = false, "A strip may have more columns or fewer, and not every set-out was looked at with each number. Say how many it has, and that is tried."
		if s.Told() {
			s.Reasons = append(s.Reasons, s.Bound)
		}
	}
	return best.room, best.setout, best.walls, ctx.Err()
}

// withFewest is a room with the fewest columns in every strip that may have more. Of one of parts the walls are not cut.
func withFewest(ctx context.Context, room survey.Room, kept *count.Kept) (s uncut, err error) {
	for wall, opening, columns := room.FreeColumns(); wall >= 0; wall, opening, columns = room.FreeColumns() {
		room = room.ChooseColumns(wall, opening, columns[0])
	}
	if len(room.OpenLegs()) == 0 && room.Bond.Coursed() && room.Parted() {
		return setBeside(ctx, room, little, kept)
	}
	s.room, s.setout, s.walls, err = solve(ctx, room, little, kept)
	return s, err
}
