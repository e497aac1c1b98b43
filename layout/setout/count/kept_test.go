package count

import (
	"testing"

	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// Law 3: a wall that is kept is with one room at a time, and with a room of which it is a wall in every reading; law 2: a
// new one has counted nothing, a kept one all that was counted with it, and one that forgot something is not kept.
func TestOneWallIsWithOneRoom(t *testing.T) {
	room := chance.Sketch("1000x600 300x100+2 1/2")
	found := room.Walls[0]
	var kept Kept
	w := kept.Wall(&room, found, survey.Left)
	require.Zero(t, w.Work())
	w.Spend(7)
	kept.Keep([]*Wall{w})
	again := kept.Wall(&room, found, survey.Left)
	require.Same(t, w, again)
	require.Equal(t, 7, again.Work())
	require.NotSame(t, w, kept.Wall(&room, found, survey.Left))
	kept.Keep([]*Wall{w})
	other := room
	other.Tape *= 2
	require.NotSame(t, w, kept.Wall(&other, found, survey.Left))
	require.NotSame(t, w, kept.Wall(&room, found, survey.Right))
	longer := found
	longer.Left.Gap++
	require.NotSame(t, w, kept.Wall(&room, longer, survey.Left))
	named := room
	named.Title = "another title, which a wall is not counted from"
	require.Same(t, w, kept.Wall(&named, found, survey.Left))
	w.shapes.empty()
	kept.Keep([]*Wall{w})
	require.NotSame(t, w, kept.Wall(&room, found, survey.Left))
}

// What was not asked for the longest is let go first, once much was counted.
func TestWhatIsKeptIsBounded(t *testing.T) {
	room := chance.Sketch("1000x600 300x100+2 1/2")
	wide := func(n int) survey.WallFound {
		found := room.Walls[0]
		found.Letter = string(rune('A' + n))
		return found
	}
	var kept Kept
	var walls []*Wall
	for n := range 4 {
		w := kept.Wall(&room, wide(n), survey.Left)
		w.Spend(mostKept / 2)
		walls = append(walls, w)
		kept.Keep(walls[n:])
	}
	require.Len(t, kept.walls, 2)
	require.NotSame(t, walls[1], kept.Wall(&room, wide(1), survey.Left))
	require.Same(t, walls[2], kept.Wall(&room, wide(2), survey.Left))
}

// Where nothing is kept every wall is new.
func TestNothingMayBeKept(t *testing.T) {
	room := chance.Sketch("1000x600 300x100+2 1/2")
	var none *Kept
	w := none.Wall(&room, room.Walls[0], survey.Left)
	none.Keep([]*Wall{w})
	require.NotSame(t, w, none.Wall(&room, room.Walls[0], survey.Left))
}
