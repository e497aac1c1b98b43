package search

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Law 6: against a rival a room gives what it gives without, or nothing, where that is worse than the rival. It does give up.
func TestAgainstARival(t *testing.T) {
	gaveUp, found := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		room := chance.House(t, 2)
		line := room.Tile.Height / 3
		room.Line = &line
		begun := func(name string) survey.Room {
			out := room
			out.Walls = append([]survey.WallFound(nil), room.Walls...)
			for i := range out.Walls {
				x := length.Length(rapid.IntRange(0, int(room.Tile.Width/room.Tape)).Draw(t, name)) * room.Tape
				out.Walls[i].Pin = &survey.StartPin{X: x, Is: survey.OnEdge}
			}
			return out
		}
		one, other := begun("start"), begun("start of the rival")
		want, err := Room(t.Context(), &one)
		require.NoError(t, err)
		rival, err := Room(t.Context(), &other)
		require.NoError(t, err)
		got, err := Against(t.Context(), &one, Work, nil, &rival.Merit)
		require.NoError(t, err)
		if got == nil {
			require.True(t, want.Order().Better(&rival.Merit, &want.Merit))
			gaveUp++
			return
		}
		require.Equal(t, told(want), told(*got))
		found++

		got, err = Against(t.Context(), &room, Work, nil, &rival.Merit)
		require.NoError(t, err)
		require.NotNil(t, got, "starts are free")
	})
	require.NotZero(t, gaveUp)
	require.NotZero(t, found)
}
