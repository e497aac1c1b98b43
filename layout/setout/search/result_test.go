package search

import (
	"context"
	"slices"
	"testing"

	"coursewright/layout/merit"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What another start of one wall is said to give is what the room gives with it, the other walls
// as they are; and what is said of the start that was found is no better than what was found.
func TestWhatAnotherStartGives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 3)
		r, err := Room(context.Background(), &room)
		require.NoError(t, err)
		i := rapid.IntRange(0, len(r.walls)-1).Draw(t, "wall")
		edge := rapid.SampledFrom(r.walls[i].Starts.Tried()).Draw(t, "start")
		before := slices.Clone(r.Walls)
		c, m := r.Start(i, edge)
		require.Equal(t, before, r.Walls, "the set-out stays as it was found")
		require.Equal(t, edge, c.Edge)
		require.Equal(t, r.Line, c.Line)
		walls := slices.Clone(r.Walls)
		walls[i] = c
		whole := r.whole(walls)
		order, term := r.order.Compare(&whole, &m)
		require.Zero(t, order, "the room has another merit in %s", term)
		if r.Proven {
			order, term = r.order.Until(&m, &r.Merit, merit.Slack)
			require.GreaterOrEqual(t, order, 0, "start %v is better in %s than what is proven", edge, term)
		}
	})
}

// What another line is said to give is a set-out on it, no better than what is proven best.
func TestWhatAnotherLineGives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 3)
		r, err := Room(context.Background(), &room)
		require.NoError(t, err)
		line := rapid.SampledFrom(r.lines()).Draw(t, "line")
		walls, m := r.OnLine(line)
		require.Len(t, walls, len(r.walls))
		for _, c := range walls {
			require.Equal(t, line, c.Line)
		}
		if r.Proven {
			order, term := r.order.Until(&m, &r.Merit, merit.Slack)
			require.GreaterOrEqual(t, order, 0, "line %v is better in %s than what is proven", line, term)
		}
	})
}

// A bond whose hand is free is tried with both, but for a stack and a half bond, which look the
// same from either side; the best of both is no worse than either.
func TestBothHandsAreTried(t *testing.T) {
	hands := func(num, den int64, hand survey.Hand) []survey.Hand {
		return hands(&survey.Room{Bond: survey.BondRule{Num: num, Den: den, Hand: hand}})
	}
	require.Equal(t, []survey.Hand{survey.Left, survey.Right}, hands(1, 3, survey.Free))
	require.Equal(t, []survey.Hand{survey.Left}, hands(1, 2, survey.Free))
	require.Equal(t, []survey.Hand{survey.Left}, hands(0, 1, survey.Free))
	require.Equal(t, []survey.Hand{survey.Right}, hands(1, 3, survey.Right))
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 1)
		if room.Bond.Num == 0 || 2*room.Bond.Num == room.Bond.Den {
			return
		}
		room.Bond.Hand = survey.Free
		both, err := Room(context.Background(), &room)
		require.NoError(t, err)
		for _, hand := range []survey.Hand{survey.Left, survey.Right} {
			room.Bond.Hand = hand
			one, err := Room(context.Background(), &room)
			require.NoError(t, err)
			require.False(t, both.Proven && both.order.Better(&one.Merit, &both.Merit), "%v alone is better", hand)
			require.False(t, both.order.Better(&one.Merit, &both.Bound) && one.Proven, "%v alone beats the bound", hand)
		}
	})
}

// Some walls of a room, set out anew by themselves on its line, take their places in it.
func TestWallsOfAnotherResultTakeTheirPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := coarse(t, 3)
		r, err := Room(context.Background(), &room)
		require.NoError(t, err)
		i := rapid.IntRange(0, len(r.walls)-1).Draw(t, "wall")
		alone := room
		alone.Walls = []survey.WallFound{room.Walls[i]}
		alone.Walls[0].Left.Beyond, alone.Walls[0].Right.Beyond = -1, -1
		alone.Line, alone.Bond.Hand = &r.Line, r.Hand
		other, err := Room(context.Background(), &alone)
		require.NoError(t, err)
		got := r.With(&room, map[int]Taken{i: {From: &other, Wall: 0}})
		require.Equal(t, other.Walls[0].Edge, got.Walls[i].Edge)
		for k := range r.Walls {
			if k != i {
				require.Equal(t, r.Walls[k].Edge, got.Walls[k].Edge)
			}
		}
		whole := got.whole(got.Walls)
		order, term := got.order.Compare(&whole, &got.Merit)
		require.Zero(t, order, "the room has another merit in %s", term)
	})
}
