package mosaic

import (
	"testing"

	"coursewright/layout/plane"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Where no rows are level sheets begin at that tile of the pattern from which fewest are needed: never more than
// from the start, nor, where sheets are small enough for every beginning to be tried, than from any.
func TestSheetsOfATiltedPatternBeginWhereFewestAreNeeded(t *testing.T) {
	tilted, fewer, before, now := 0, 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		room, walls := drawn(t)
		l := layingOf(room, handOf(room, walls[0], 0))
		if l.level() || len(walls[0].Pieces) == 0 {
			return
		}
		start := plane.Point{X: walls[0].Start.Edge, Y: l.start(walls)}
		from := func(a, b int) int {
			u, v := l.pattern.U, l.pattern.V
			for range a {
				start.X, start.Y = start.X+u.X, start.Y+u.Y
			}
			for range b {
				start.X, start.Y = start.X+v.X, start.Y+v.Y
			}
			out := l.better(func(l laying) []Field {
				f := Field{Size: l.size}
				l.gather(&f, walls[0], start, 0)
				return []Field{f}
			})
			start = plane.Point{X: walls[0].Start.Edge, Y: l.start(walls)}
			return needs(out)
		}
		got, plain := needs(Of(room, walls)), from(0, 0)
		require.LessOrEqual(t, got, plain)
		tilted++
		before, now = before+plain>>20, now+got>>20
		if got>>20 < plain>>20 {
			fewer++
		}
		n := max(l.size.Across, l.size.Up)
		if n*n > max(fewestTries, mostLooks/len(walls[0].Pieces)) {
			return
		}
		for a := range n {
			for b := range n {
				require.LessOrEqual(t, got, from(a, b), "from %d, %d of %d", a, b, n)
			}
		}
	})
	t.Logf("%d walls without level rows, %d sheets from the start, %d now; fewer on %d", tilted, before, now, fewer)
	require.NotZero(t, fewer)
}
