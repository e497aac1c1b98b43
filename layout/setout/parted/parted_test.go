package parted

import (
	"context"
	"os"
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/setout/chance"
	"coursewright/layout/steady"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestMain(m *testing.M) { os.Exit(steady.Run(m, "8")) }

const mm = length.Millimetre

// Law 1: no course of the field and none of the band is cut by the band's edges, the
// tile next to the band stands a joint off it, and no two tiles come nearer to each
// other than a joint.
func TestTheCoursesBesideABandAreWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := chance.Banded(t, 3)
		r, err := Room(context.Background(), &room)
		require.NoError(t, err)
		b := room.Bands[0]
		at := r.Bands[0]
		require.GreaterOrEqual(t, at.Bottom, b.Bottom.From)
		require.LessOrEqual(t, at.Bottom, b.Bottom.To)
		for i, w := range room.Walls {
			shape := w.Shape(room.Units, r.Placed(i))
			pieces, _ := piece.CutLaid(shape, r.Laid(i, shape))
			for k, p := range pieces {
				if b.On(i) {
					require.True(t, beside(p, at, b.ToHead, room.Joint), "%v of tile %d beside the band from %v to %v", p.Tile, p.Laid, at.Bottom, at.Top)
				} else {
					require.Zero(t, p.Laid)
				}
				for _, q := range pieces[:k] {
					least := room.Laid(max(p.Laid, q.Laid)).Joint
					require.False(t, near(p.Tile, q.Tile, least) && p.Tile != q.Tile, "%v and %v", p.Tile, q.Tile)
				}
			}
		}
	})
}

// beside tells whether a piece keeps to its side of the band's edges.
func beside(p piece.Piece, at Band, toHead bool, joint length.Length) bool {
	switch {
	case p.Laid > 0:
		return p.Tile.Bottom >= at.Bottom && (toHead || p.Tile.Top <= at.Top)
	case toHead:
		return p.Tile.Top <= at.Bottom-joint
	}
	return p.Tile.Top <= at.Bottom-joint || p.Tile.Bottom >= at.Top+joint
}

// near tells whether two tiles are nearer than a joint.
func near(a, b plane.Rect, joint length.Length) bool {
	return a.Left < b.Right+joint && b.Left < a.Right+joint && a.Bottom < b.Top+joint && b.Bottom < a.Top+joint
}

// What is counted on the folded room is what the pieces of the real one give, where
// no opening stands across the band.
func TestTheFoldedRoomCountsTheRealPieces(t *testing.T) {
	counted := 0
	rapid.Check(t, func(t *rapid.T) {
		room := chance.Banded(t, 3)
		r, err := Room(context.Background(), &room)
		require.NoError(t, err)
		if r.across() {
			return
		}
		counted++
		var unworkable, slivers int
		var bare length.Length
		for i, w := range room.Walls {
			shape := w.Shape(room.Units, r.Placed(i))
			pieces, gaps := piece.CutLaid(shape, r.Laid(i, shape))
			for k := range pieces {
				switch pieces[k].Grade(false) {
				case piece.Hopeless:
					unworkable++
				case piece.Small:
					slivers++
				}
			}
			for _, g := range gaps {
				if !g.Low {
					bare += g.Length
				}
			}
		}
		require.Equal(t, unworkable, r.Merit.Unworkable, "unworkable pieces")
		require.Equal(t, slivers, r.Merit.Slivers, "slivers")
		require.Equal(t, bare == 0, r.Merit.Bare == 0, "bare wall: %v, counted %v", bare, r.Merit.Bare)
	})
	require.NotZero(t, counted)
}

// across tells whether an opening touches the band, or the joints beside it.
func (r *Result) across() bool {
	b := r.room.Bands[0]
	for _, w := range b.Walls {
		placed := r.Placed(w)
		for k, o := range r.room.Walls[w].Openings {
			e := o.Reach()
			if o.Kind != survey.Pipe {
				e = placed.Openings[k]
			}
			far := 10 * mm
			if b.ToHead && e.Top > r.Bands[0].Bottom-far || e.Top > r.Bands[0].Bottom-far && e.Bottom < r.Bands[0].Top+far {
				return true
			}
		}
	}
	return false
}

// Law 2: with a measured band, no starts are better for field and band than those that
// are proven best.
func TestNoStartsAreBetterBesideAMeasuredBand(t *testing.T) {
	proven := 0
	rapid.Check(t, func(t *rapid.T) {
		room := chance.Banded(t, 3)
		room.Bands[0].Bottom.To = room.Bands[0].Bottom.From
		room.Bands[0].Near = room.Bands[0].Bottom.From
		room = room.WithJoint(room.Joint)
		r, err := Room(context.Background(), &room)
		require.NoError(t, err)
		if !r.Proven {
			return
		}
		proven++
		with := room
		with.Walls = slices.Clone(room.Walls)
		with.Line = &r.Field.Line
		with.Bands = slices.Clone(room.Bands)
		with.Bands[0].Starts = map[int]length.Length{}
		for _, w := range with.Bands[0].Walls {
			with.Bands[0].Starts[w] = length.Length(rapid.IntRange(0, 200).Draw(t, "start of the band")) * room.Tape
		}
		for i := range with.Walls {
			with.Walls[i].Pin = &survey.StartPin{X: length.Length(rapid.IntRange(0, 400).Draw(t, "start")) * room.Tape, Is: survey.OnEdge}
		}
		other, err := Room(context.Background(), &with)
		require.NoError(t, err)
		order, term := r.Field.Order().Until(&other.Merit, &r.Merit, merit.Slack)
		require.GreaterOrEqual(t, order, 0, "%s", term)
	})
	require.NotZero(t, proven)
}

// Law 4: the same room gives the same result.
func TestTheSameRoomIsPartedAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := chance.Banded(t, 3)
		a, err := Room(context.Background(), &room)
		require.NoError(t, err)
		b, err := Room(context.Background(), &room)
		require.NoError(t, err)
		require.Equal(t, a.Bands, b.Bands)
		require.Equal(t, a.Merit, b.Merit)
	})
}
