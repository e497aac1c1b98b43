package search

import (
	"context"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// raised is a room found from a level line that is lower by so much.
func raised(room survey.Room, by length.Length) survey.Room {
	walls := make([]survey.WallFound, len(room.Walls))
	for i, w := range room.Walls {
		walls[i] = chance.Raised(w, by)
	}
	room.Walls = walls
	return room
}

// The level line may be struck at any mark of the tape: a room that is found from another has the same set-out, as proven,
// and by the same work.
func TestTheLevelLineMayBeStruckAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := chance.House(t, 3)
		by := length.Length(rapid.IntRange(1, 900).Draw(t, "lower by")) * room.Tape
		a, err := Room(context.Background(), &room)
		require.NoError(t, err)
		high := raised(room, by)
		b, err := Room(context.Background(), &high)
		require.NoError(t, err)
		require.Equal(t, a.Proven, b.Proven)
		order, term := a.order.Compare(&a.Merit, &b.Merit)
		require.Zero(t, order, "they differ in %s:\n%+v\n%+v", term, a.Merit, b.Merit)
	})
}

// A course line that is pinned moves with the level line.
func TestAPinnedLineMovesWithTheLevelLine(t *testing.T) {
	for _, line := range []string{"1000x600 300x100+2", "1000x600 300x100+2 1/2 gap=3 | 800x600", "1000x600 150x150+2 columns left=0..80", "1000x600 300x100+2 niche=200..260,200,150..210,150"} {
		low := chance.Sketch(line)
		y := -37 * mm
		low.Line = &y
		for _, by := range []length.Length{13 * mm, -240 * mm} {
			high := raised(low, by)
			up := y + by
			high.Line = &up
			a, err := Room(context.Background(), &low)
			require.NoError(t, err)
			b, err := Room(context.Background(), &high)
			require.NoError(t, err)
			require.Equal(t, a.Line+by, b.Line, line)
			for i := range a.Walls {
				require.Equal(t, a.Walls[i].Edge, b.Walls[i].Edge, line)
			}
			order, _ := a.order.Compare(&a.Merit, &b.Merit)
			require.Zero(t, order, line)
		}
	}
}

// A wall that meets the others nowhere asks nothing of them: in the room the worse of both decides, and each is as good
// as by itself on the line of the room.
func TestARoomIsNoBetterThanItsWalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := chance.Room(t, 2)
		if len(room.Walls) < 2 {
			t.Skip("one wall")
		}
		both, err := Room(context.Background(), &room)
		require.NoError(t, err)
		for i := range room.Walls {
			if room.Walls[i].Left.Outside != nil || room.Walls[i].Right.Outside != nil {
				t.Skip("a corner that is wrapped ties them")
			}
			alone := room
			alone.Walls = room.Walls[i : i+1]
			one, err := Room(context.Background(), &alone)
			require.NoError(t, err)
			if !one.Proven {
				continue
			}
			mine := both.Walls[i].Merit
			order, term := both.order.Until(&mine, &one.Merit, merit.Exposed) // what is far enough up the order to know no other wall
			require.GreaterOrEqual(t, order, 0, "wall %d is better beside the other in %s", i, term)
		}
	})
}
