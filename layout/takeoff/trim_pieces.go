package takeoff

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// trims are the lines of the trim that is set in pieces: those of one name
// together, and their corner pieces.
func (in Input) trims(set Settings) []Line {
	var lines []Line
	for _, t := range in.Room.Trims {
		var whole, corners int
		var cut []length.Length
		in.pieces(t.Name, func(p trim.Piece) {
			switch {
			case p.Corner:
				corners++
			case p.Whole:
				whole++
			default:
				cut = append(cut, p.Long)
			}
		})
		lines = append(lines, in.trim(set, t, whole, cut), corner(t, corners))
	}
	return lines
}

// pieces calls f for every piece of the trim of a name.
func (in Input) pieces(name string, f func(trim.Piece)) {
	for _, w := range plan.WithTops(in.Walls) {
		for _, p := range w.Trim {
			if p.Trim.Name == name {
				f(p)
			}
		}
	}
}

// trim is one line: whole pieces, and what is cut from others, a kerf after every
// cut. Bars are cut from end to end and have no spare; of pieces the spare is that
// of the tile.
func (in Input) trim(set Settings, t survey.TrimFound, whole int, cut []length.Length) Line {
	if whole+len(cut) == 0 {
		return Line{}
	}
	stock := len(pack(cut, t.Length, set.Kerf))
	unit, percent := "piece of ", set.Breakage
	if t.Bar() {
		unit, percent = "bar of ", 0
	}
	because := fmt.Sprintf("%d whole and %d cut from %d", whole, len(cut), stock)
	if percent > 0 {
		because += fmt.Sprintf(", and %d %% spare", percent)
	}
	l := bought(called(t), unit+t.Length.Fine(in.Room.Units), whole+stock, percent, because)
	return priced(l, t)
}

// corner is the line of the corner pieces.
func corner(t survey.TrimFound, n int) Line {
	return bought(called(t)+", corner piece", "piece", n, 0, "rounded on two sides, where two edges meet at an outer corner; or mitre two pieces")
}

// called is the trim by its name, with what it is where the name does not say so.
func called(t survey.TrimFound) string {
	if t.Name == string(t.Kind) {
		return t.Name
	}
	return string(t.Kind) + " " + t.Name
}

// priced fills boxes and price where the job tells how the trim is sold.
func priced(l Line, t survey.TrimFound) Line {
	return boxed(l, survey.TileSize{BoxCount: t.BoxCount, BoxCents: t.BoxCents, Money: t.Money})
}

// besideTrim is the area of the joints that trim has: one along the tile, and one
// between two pieces. Bars butt.
func (in Input) besideTrim() length.Area {
	var all length.Area
	for _, w := range in.Walls {
		for _, p := range w.Trim {
			all += p.Inner.Times(in.Room.Joint)
			if !p.Trim.Bar() {
				all += p.Trim.Width.Times(in.Room.Joint)
			}
		}
	}
	return all
}
