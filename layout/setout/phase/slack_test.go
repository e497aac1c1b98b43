package phase

import (
	"context"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// Term 17: of the starts beside each other that are as good the middle one is taken, by brute force,
// on a wall so narrow that one tile goes from end to end, begun at any of them but the one that is
// found again by the middle of the wall.
func TestAStartMaySlipBothWays(t *testing.T) {
	for _, tape := range []length.Length{10 * mm, 12 * mm, 15 * mm} {
		r := small(survey.MixedHeights, 600*mm, 75*mm, func(r *survey.Room) {
			w := &r.Walls[0]
			w.Width, w.Base[0].Readings[1].At = 150*mm, 150*mm
			w.Right = survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: -1}
			r.Tape, r.Bond.Others = tape, []survey.TileSize{{Width: 600 * mm, Height: 40 * mm}}
		})
		found, err := Room(context.Background(), &r)
		require.NoError(t, err)
		w, walls := found.Wall(0), []Counted{found.Wall(0).Count(Setting{found.Line, -20 * tape, found.Walls[0].Placed})}
		require.Zero(t, walls[0].Merit.Slivers)
		found.slacken(walls, 0)
		c := walls[0]
		reach := func(way length.Length) (n length.Length) {
			for ; n <= slips; n++ {
				at := w.Count(Setting{c.Line, c.Edge + way*(n+1)*tape, c.Placed})
				if order, _ := found.Order().Compare(&at.Merit, &c.Merit); order != 0 {
					break
				}
			}
			return n
		}
		right, left := reach(1), reach(-1)
		require.Greater(t, left, length.Length(5))
		require.Contains(t, []length.Length{left, left + 1}, right)
	}
}
