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

// walled is a wall of a room of any kind, with built openings, leans, rakes, legs and columns, and a course line.
type walled struct {
	room survey.Room
	wall int
	line length.Length
}

var walls = rapid.Custom(func(t *rapid.T) walled {
	room := chance.House(t, 3)
	return walled{room: room, wall: rapid.IntRange(0, len(room.Walls)-1).Draw(t, "wall"),
		line: length.Length(rapid.IntRange(0, int((room.Tile.Height+room.Joint)/room.Tape)).Draw(t, "line")) * room.Tape}
})

// Passing over what lies in line changes nothing, in any room.
func TestACurveIsTheSameWhereItIsAskedOfSome(t *testing.T) {
	spared := 0
	rapid.Check(t, func(t *rapid.T) {
		spared += sameCurve(t, walls.Draw(t, "wall"))
	})
	require.Positive(t, spared)
}

// Bare wall at one start alone, between others in line.
func TestACurvePassesOverNoStartThatStandsAlone(t *testing.T) {
	for _, seed := range []int{1755} {
		sameCurve(t, walls.Example(seed))
	}
}

// sameCurve asks every start and some, and tells how many were spared.
func sameCurve(t require.TestingT, of walled) (spared int) {
	w := count.NewWall(&of.room, of.room.Walls[of.wall], survey.Left)
	placed := w.Outer()
	asked := 0
	c := curve{starts: w.Starts.All(), tape: of.room.Tape, stride: 1, ended: func() bool { return false }, given: func(edge length.Length) merit.Merit {
		asked++
		return w.Count(count.Setting{Line: of.line, Edge: edge, Placed: placed}).Merit
	}}
	all := c.points()
	every := asked
	c.stride, asked = 8, 0
	for i, p := range c.points() {
		require.Equal(t, all[i], p, "start %d", i)
	}
	require.Equal(t, len(c.starts), every, "each once")
	return every - asked
}
