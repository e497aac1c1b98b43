package mosaic

import (
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
)

// mostLooks is how many pieces are looked at to find where sheets begin, and fewestTries in
// how many places however many pieces there are.
const (
	mostLooks   = 40_000
	fewestTries = 9
)

// begins is where the first sheet begins on a wall or face: with level rows at the start, as
// the rows run on from wall to wall, and without where fewest sheets are needed, and
// of those in fewest parts. It is always a tile of the same place of the pattern, so that
// the sheets are the same, moved.
func (l laying) begins(w plan.Wall, start plane.Point, laid int) plane.Point {
	if l.level() {
		return start
	}
	n := max(l.size.Across, l.size.Up)
	tries, step := max(fewestTries, mostLooks/max(1, len(w.Pieces))), 1
	for ((n+step-1)/step)*((n+step-1)/step) > tries {
		step++
	}
	needed := func(at plane.Point) int {
		f := Field{Size: l.size}
		l.gather(&f, w, at, laid)
		return needs([]Field{f})
	}
	best, least := start, needed(start)
	for a := 0; a < n; a += step {
		for b := 0; b < n; b += step {
			u, v := length.Length(a), length.Length(b)
			at := plane.Point{X: start.X + u*l.pattern.U.X + v*l.pattern.V.X, Y: start.Y + u*l.pattern.U.Y + v*l.pattern.V.Y}
			if k := needed(at); k < least {
				best, least = at, k
			}
		}
	}
	return best
}
