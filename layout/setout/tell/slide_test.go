package tell

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/chance"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// Passing over what lies in line changes nothing, in any room: with built openings, leans, rakes, legs and columns.
func TestACurveIsTheSameWhereItIsAskedOfSome(t *testing.T) {
	spared := 0
	rapid.Check(t, func(t *rapid.T) {
		room := chance.House(t, 3)
		w := count.NewWall(&room, room.Walls[rapid.IntRange(0, len(room.Walls)-1).Draw(t, "wall")], survey.Left)
		line := length.Length(rapid.IntRange(0, int((room.Tile.Height+room.Joint)/room.Tape)).Draw(t, "line")) * room.Tape
		placed := w.Outer()
		asked := 0
		c := curve{starts: w.Starts.All(), tape: room.Tape, stride: 1, ended: func() bool { return false }, given: func(edge length.Length) merit.Merit {
			asked++
			return w.Count(count.Setting{Line: line, Edge: edge, Placed: placed}).Merit
		}}
		all := c.points()
		every := asked
		c.stride, asked = 8, 0
		for i, p := range c.points() {
			require.Equal(t, all[i], p, "start %d", i)
		}
		require.Equal(t, len(c.starts), every, "each once")
		spared += every - asked
	})
	require.Positive(t, spared)
}
