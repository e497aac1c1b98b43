package remedy

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// seats raise or lower the one seat or ledge of the room by no more than 2 in (50 mm), so that of the
// poor cuts under its edge or on it one is gone or whole. What was read of it under the walls behind
// goes along.
func (a *asker) seats(poor []troubled) (out []try) {
	bench := a.bench()
	if bench < 0 {
		return nil
	}
	w := a.now.Walls[bench].Found
	typed, read := a.headTyped(bench)
	if !read || w.Head.Stops.Free() {
		return nil
	}
	for _, by := range a.seatSteps(bench, poor) {
		use := append([]Use{{fmt.Sprintf("walls[%d].head.stops.at", bench), a.typed(typed + by)}}, a.readOfSeat(by)...)
		text := fmt.Sprintf("If %s is not built yet, make it %s.", w.Name, a.way(by, "lower", "higher"))
		out = append(out, try{Move, "seat", text, use, nil})
	}
	return out
}

// bench is the wall that bears the one seat or ledge; -1 where there is none, or several.
func (a *asker) bench() int {
	bench := -1
	for i, w := range a.now.Walls {
		if t := w.Found.Head.Top; t != nil && !t.Open() {
			if bench >= 0 {
				return -1
			}
			bench = i
		}
	}
	return bench
}

// seatSteps are how far the seat may be moved, the least first.
func (a *asker) seatSteps(bench int, poor []troubled) (out []length.Length) {
	room := &a.now.Room
	most := a.either(2*length.Inch, 50*length.Millimetre)
	for _, t := range poor {
		under := t.wall == bench && slices.Contains(t.run.Edges, "head")
		if t.run.Across || !under && !a.onSeat(t) {
			continue
		}
		gone, whole := t.run.Least+room.Joint, room.Tile.Height-t.run.Least
		if under {
			gone, whole = -gone, -whole
		}
		for _, by := range []length.Length{gone, -whole} {
			if by.Abs() <= most && !slices.Contains(out, by) {
				out = append(out, by)
			}
		}
	}
	slices.SortStableFunc(out, func(x, y length.Length) int { return int(max(-1, min(1, x.Abs()-y.Abs()))) })
	return out
}

// onSeat tells whether a run stands on a seat.
func (a *asker) onSeat(t troubled) bool {
	w := a.now.Walls[t.wall].Found
	return slices.ContainsFunc(t.run.Edges, func(e string) bool {
		n, base := strings.CutPrefix(e, "base ")
		i, err := strconv.Atoi(n)
		return base && err == nil && i < len(w.Base) && w.Base[i].Meets == survey.Seat
	})
}

// readOfSeat are the readings of the seat under the walls, with the seat higher by so much.
func (a *asker) readOfSeat(by length.Length) (use []Use) {
	for i, w := range a.job.Walls {
		for j, s := range w.Base {
			for k, r := range s.Readings {
				if drop, read := a.read(r.Drop); read && s.Meets == string(survey.Seat) {
					use = append(use, Use{fmt.Sprintf("walls[%d].base[%d].readings[%d].drop", i, j, k), a.typed(drop - by)})
				}
			}
		}
	}
	return use
}
