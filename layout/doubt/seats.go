package doubt

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// seats asks where the walls that stand on a seat and the bench it lies on do not go together: a
// seat that is read at another height than that of the bench, or that begins elsewhere than the bench
// is deep. A room with several seats is not asked, because nobody says which stands on which.
func (a *asker) seats() {
	bench := -1
	for i, w := range a.room.Walls {
		if t := w.Head.Top; t != nil && !t.Open() {
			if bench >= 0 || w.Head.Stops.Free() {
				return
			}
			bench = i
		}
	}
	if bench < 0 {
		return
	}
	a.seatHeights(bench)
	a.seatFronts(bench)
}

// onSeat is a reading of a seat under a wall.
type onSeat struct {
	wall int
	up   length.Length
	path string
}

// onSeats lists what was measured of seats.
func (a *asker) onSeats() (all []onSeat) {
	for i, w := range a.room.Walls {
		for j, s := range w.Base {
			for k, r := range s.Readings {
				path := fmt.Sprintf("walls[%d].base[%d].readings[%d].drop", i, j, k)
				if s.Meets == survey.Seat && a.texts[path] != "" && !a.guessed(path) {
					all = append(all, onSeat{i, r.Value, path})
				}
			}
		}
	}
	return all
}

// seatHeights asks about the front edge of the bench where no reading lies between that and how
// far the seat rises to its back, and else about those that do not: by more than twice the doubt and what
// a tile with its bed is thick, since boards may have been read.
func (a *asker) seatHeights(bench int) {
	w := a.room.Walls[bench]
	top := w.Head.Top
	front := w.Head.Stops.From + w.Head.Inset(a.room) + top.Lined
	rise := top.Rise(top.Deepest(), a.room.Units)
	slack := 2*a.room.Doubt + a.room.Bed + a.room.Tile.Thickness
	all := a.onSeats()
	var off []onSeat
	lowest := length.Length(0)
	for i, s := range all {
		if i == 0 || s.up < lowest {
			lowest = s.up
		}
		if s.up < front-slack || s.up > front+rise+slack {
			off = append(off, s)
		}
	}
	if len(off) == 0 {
		return
	}
	name, path := a.room.Walls[bench].Name, fmt.Sprintf("walls[%d].head.stops.at", bench)
	if len(off) == len(all) {
		var with []string
		for _, s := range all {
			with = append(with, s.path)
		}
		a.ask(Doubt{Rule: Seat, Path: path, Wall: bench, Fits: a.typed(lowest - top.Lined),
			Text: fmt.Sprintf("The front edge of %s stands %s the level line, and the seat under the walls behind it %s it.", name, a.side(front), a.side(lowest))}, with...)
		return
	}
	for _, s := range off {
		a.ask(Doubt{Rule: Seat, Path: s.path, Wall: s.wall,
			Text: fmt.Sprintf("The seat under %s is read %s the level line; %s rises from %s to %s.", a.room.Walls[s.wall].Name, a.side(s.up), name,
				a.side(front), a.side(front+rise))}, path)
	}
}

// side says a height in words: so far under or over a line.
func (a *asker) side(up length.Length) string {
	if up < 0 {
		return a.say(-up) + " under"
	}
	return a.say(up) + " over"
}

func (a *asker) guessed(path string) bool { return slices.Contains(a.room.Guesses, path) }

// seatFronts asks where a seat begins on the walls at its two ends: by more than twice the doubt and what
// a tile with its bed is thick elsewhere than by the depth of the bench.
func (a *asker) seatFronts(bench int) {
	top := a.room.Walls[bench].Head.Top
	for i, w := range a.room.Walls {
		last := len(w.Base) - 1
		if last > 0 && w.Base[0].Meets == survey.Seat && len(w.Base[0].Readings) > 0 {
			r := w.Base[0].Readings
			a.seatFront(bench, i, 1, r[len(r)-1].At, a.reach(top, top.Right))
		}
		if last > 0 && w.Base[last].Meets == survey.Seat && len(w.Base[last].Readings) > 0 {
			a.seatFront(bench, i, last, w.Width-w.Base[last].Readings[0].At, a.reach(top, top.Left))
		}
	}
}

// reach is how far from the corner of the boards the front of a bench comes along a wall: its depth and the
// tile of the wall behind; in a corner as far as its boards reach, and what the tile on them comes
// further out, (√2 − 1) of its thickness where the corner is square.
func (a *asker) reach(top *survey.TopFound, depth length.Length) length.Length {
	deep := a.room.Bed + a.room.Tile.Thickness
	if top.Corner != nil {
		return depth + deep*2/5
	}
	return depth + deep
}

// seatFront asks about the place at which a stretch of base begins, as it is read and as the bench would have
// it, both from the corner.
func (a *asker) seatFront(bench, wall, segment int, read, expected length.Length) {
	if (read - expected).Abs() <= 2*a.room.Doubt+a.room.Bed+a.room.Tile.Thickness {
		return
	}
	w, place := a.room.Walls[wall], expected
	if segment > 1 || w.Base[0].Meets != survey.Seat {
		place = w.Width - expected
	}
	at, top := fmt.Sprintf("walls[%d]", wall), fmt.Sprintf("walls[%d].top", bench)
	path := fmt.Sprintf("%s.base[%d].readings[%d].at", at, segment-1, max(0, len(w.Base[segment-1].Readings)-1))
	other := fmt.Sprintf("%s.base[%d].readings[0].at", at, segment)
	if a.texts[path] == "" || a.texts[other] == "" {
		return
	}
	fits := a.typed(place)
	a.ask(Doubt{Rule: Seat, Path: path, Wall: wall, Fits: fits, Use: []Use{{path, fits}, {other, fits}},
		Text: fmt.Sprintf("The seat begins %s from the corner on %s; by the depth of %s it would at %s.",
			a.say(read), w.Name, a.room.Walls[bench].Name, a.say(expected.RoundTo(a.room.Tape)))},
		other, top+".depth", top+".right", at+".width")
}
