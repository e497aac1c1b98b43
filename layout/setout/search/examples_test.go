package search

import (
	"context"
	"fmt"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// solved is the best set-out of a sketch.
func solved(t require.TestingT, line string) Result {
	room := chance.Sketch(line)
	r, err := Room(context.Background(), &room)
	require.NoError(t, err)
	return r
}

// ends are the least cuts at both ends of a wall of a result, by class, in millimetres.
func (r *Result) ends(wall int) (left, right []length.Length) {
	for _, l := range r.Walls[wall].LeftCuts {
		left = append(left, l/mm)
	}
	for _, l := range r.Walls[wall].RightCuts {
		right = append(right, l/mm)
	}
	return left, right
}

// trade.md, "Balanced ends": a wall of L between two corners with gaps g, tiles t and joints j
// has ends of e = (L − 2g − n·t − (n+1)·j)/2 beside n whole tiles. Of the two ways, a joint or
// a tile on the middle, that with more than half a tile at the ends is the better one.
func TestStackBondBetweenCornersIsBalanced(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 6 {
			long, tile := rapid.IntRange(600, 2400).Draw(t, "wall"), rapid.IntRange(100, 500).Draw(t, "tile")
			joint, gap := rapid.IntRange(1, 6).Draw(t, "joint"), rapid.IntRange(0, 4).Draw(t, "gap")
			r := solved(t, fmt.Sprintf("%dx%d %dx100+%d gap=%d", long, 2*gap+500+4*joint, tile, joint, gap))
			// The fewest whole tiles that leave no whole one at the ends: e ≤ t, in half millimetres.
			n := max(0, (long-2*gap-2*tile-joint+tile+joint-1)/(tile+joint))
			e := long - 2*gap - n*tile - (n+1)*joint
			if e <= tile+2*joint || e >= 2*tile { // half a tile or less: the parts of a tile may be more alike otherwise; a whole one is cut by nothing
				continue
			}
			left, right := r.ends(0)
			require.InDelta(t, float64(e)/2, float64(left[0]), 1, "wall %d, tile %d, joint %d, gap %d", long, tile, joint, gap)
			require.InDelta(t, float64(left[0]), float64(right[0]), 1)
			require.Zero(t, r.Merit.Mirror)
		}
	})
}

// Set-outs that a setter would sign, by hand. Merit.md, "Check values", in millimetres: common
// practice, no source.
func TestWhatASetterWouldSign(t *testing.T) {
	for name, c := range map[string]struct {
		sketch    string
		rim, head []length.Length // cuts there of tile 100 high, none where it is whole
		line      length.Length   // of the lowest course, from the tub; -1: told by the cuts
		left      []length.Length
		right     []length.Length
	}{
		// 600 holds five courses of 102 and 90 of a sixth: over a half it stays at the ceiling.
		"over a half at the ceiling": {"1000x600 300x100+2", nil, []length.Length{90}, 0, []length.Length{197}, []length.Length{197}},
		// 540 holds five and 30 of a sixth: 540 − 4·102 − 2 = 130 are shared, half a tile under the
		// ceiling and the rest on the tub.
		"less than a half is shared": {"1000x540 300x100+2", []length.Length{80}, []length.Length{50}, -1, []length.Length{197}, []length.Length{197}},
		"five courses and no more":   {"1000x508 300x100+2", nil, nil, 0, []length.Length{197}, []length.Length{197}},
		// A tub 8 out of level, the head free: a full course at its low point, the rest cut to
		// follow. It stands over the low point by the gap of 3 and the 3 more that sealant fills.
		"a tub out of level, a free head": {"1006x700 300x100+2 base=0,-8 gap=3 head=560..640", []length.Length{95}, nil, -2, []length.Length{197}, []length.Length{197}},
		// The end that stops has full tiles, the cut goes into the corner: 1000 − 3·302 = 94 of 300 is under a third but no sliver.
		"full tiles at the outer end": {"1060x508 300x100+2 right=1060", nil, nil, 0, []length.Length{154}, []length.Length{300}},
		// In half bond full and half tiles of 149; 1160 − 3·302 and half a pitch less in the corner.
		"full and half tiles at the outer end": {"1160x508 300x100+2 1/2 right=1160", nil, nil, 0, []length.Length{103, 254}, []length.Length{149, 300}},
		// Were 43 in the corner, a sliver, full tiles outside are given up: term 3 comes before term 5.
		"not for a sliver in the corner": {"1100x508 300x100+2 1/2 right=1100", nil, nil, 0, []length.Length{100, 251}, []length.Length{92, 243}},
	} {
		r := solved(t, c.sketch)
		share := func(list []piece.Share) (out []length.Length) {
			for _, s := range list {
				out = append(out, length.Length(100*s.Num/s.Den))
			}
			return out
		}
		require.Equal(t, c.rim, share(r.Merit.Rim), "%s: rim", name)
		require.Equal(t, c.head, share(r.Merit.Head), "%s: head", name)
		if c.line >= 0 || name == "a tub out of level, a free head" {
			require.Zero(t, length.Mod(r.Line-c.line*mm, 102*mm), "%s: the line is at %v", name, r.Line/mm)
		}
		left, right := r.ends(0)
		require.Equal(t, [][]length.Length{c.left, c.right}, [][]length.Length{left, right}, name)
		require.True(t, r.Proven, name)
	}
}

// Of a niche that may move both plumb edges stand on joint lines where they can, and its level
// ones: merit.md, term 6.
func TestAFreeNicheSitsOnTheJointLines(t *testing.T) {
	line := 0 * mm // a full course on the tub: the niche is to come to it, not it to the niche
	room := chance.Sketch("1500x1118 300x100+2 niche=550..700,304,450..560,206")
	room.Line = &line
	r, err := Room(context.Background(), &room)
	require.NoError(t, err)
	e := r.Walls[0].Placed.Openings[0]
	x, y := length.Mod(e.Left-r.Walls[0].Edge, 302*mm), length.Mod(e.Bottom-r.Line, 102*mm)
	require.Equal(t, []length.Length{300 * mm, 100 * mm}, []length.Length{x, y}, "it begins where a tile ends")
	require.Zero(t, r.Merit.Openings)
	require.True(t, r.Proven)
}

// A pinned start and line are what they are; the rest is found for them.
func TestPinsStandWhereTheyArePinned(t *testing.T) {
	room := chance.Sketch("1000x600 300x100+2 left=0..80 | 800x600")
	y := -33 * mm
	room.Line = &y
	room.Walls[1].Pin = &survey.StartPin{X: 123 * mm, Is: survey.OnEdge}
	r, err := Room(context.Background(), &room)
	require.NoError(t, err)
	require.Equal(t, y, r.Line)
	require.Equal(t, 123*mm, r.Walls[1].Edge)
	for _, c := range r.Walls {
		require.Equal(t, y, c.Line)
	}
	free := solved(t, "1000x600 300x100+2 left=0..80 | 800x600")
	require.True(t, free.order.Better(&free.Merit, &r.Merit), "pinned it is worse")
}

// By hand: courses begin at -40, so the base leaves 60 of 100; where the first and the last course are to be alike a head
// at 428 leaves 60 too, and one at 468 a whole one. Heads of several walls would have to be placed together.
func TestAHeadLeavesWhatTheBaseLeavesWhereTheyAreToBeAlike(t *testing.T) {
	room, line := chance.Sketch("1000x600 300x100+2 head=400..470"), -40*mm
	room.Line = &line
	r, err := Room(context.Background(), &room)
	require.NoError(t, err)
	require.Equal(t, 468*mm, r.Walls[0].Placed.Head)
	room.Prefer.Shared = true
	r, err = Room(context.Background(), &room)
	require.NoError(t, err)
	require.Equal(t, 428*mm, r.Walls[0].Placed.Head)
	require.True(t, r.Proven)
	room.Walls = append(room.Walls, room.Walls[0])
	r, err = Room(context.Background(), &room)
	require.NoError(t, err)
	require.False(t, r.Proven)
}
