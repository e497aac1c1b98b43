package count

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout/merit"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"
)

// A table works a value out once, holds no more than it may, and says when it has forgotten.
func TestATableIsBounded(t *testing.T) {
	m, made := &meter{}, 0
	squares := newTable[int, int](3, m)
	square := func(n int) int {
		return squares.of(n, func() int {
			made++
			return n * n
		})
	}
	for range 2 {
		for n := 1; n <= 3; n++ {
			require.Equal(t, n*n, square(n))
		}
	}
	require.Equal(t, 3, made, "each once")
	require.False(t, m.emptied)
	require.True(t, squares.full())
	require.Equal(t, 16, square(4))
	require.True(t, m.emptied)
	require.Len(t, squares.values, 1, "the others are forgotten")
	require.Equal(t, 1, square(1))
	require.Equal(t, 5, made, "and worked out again")
}

// forgetful lets every table of a wall hold one value.
func (w *Wall) forgetful() {
	w.shapes.most, w.Places.options.most = 1, 1
	c, b := w.cutter, w.Bounds
	c.grounds.most, c.rows.most, c.patches.most, c.bare.most, c.lonely.most = 1, 1, 1, 1, 1
	b.beds.most, b.heads.most, b.best.most, b.lined.most, b.zones.known.most = 1, 1, 1, 1, 1
}

// What is kept saves work and nothing else: a wall that forgets at once counts and bounds the same.
func TestAWallThatForgetsCountsTheSame(t *testing.T) {
	forgot := 0
	rapid.Check(t, func(t *rapid.T) {
		room := chance.House(t, 2)
		found := room.Walls[rapid.IntRange(0, len(room.Walls)-1).Draw(t, "wall")]
		w, f := NewWall(&room, found, survey.Left), NewWall(&room, found, survey.Left)
		f.forgetful()
		for range 3 {
			s := setting(t, w)
			if w.Places.Overlap(s.Placed) {
				continue
			}
			require.Equal(t, w.Count(s), f.Count(s))
			for name, bound := range map[string]func(*Wall) merit.Merit{
				"OfBoth":  func(w *Wall) merit.Merit { return w.Bounds.OfBoth(s.Line, s.Edge) },
				"Plainly": func(w *Wall) merit.Merit { return w.Bounds.Plainly(s.Line, s.Edge) },
				"Beyond":  func(w *Wall) merit.Merit { return w.Bounds.Beyond(s) },
			} {
				a, b := bound(w), bound(f)
				order, term := w.facts.order.Compare(&a, &b)
				require.Zero(t, order, "%s differs in %s", name, term)
			}
			require.GreaterOrEqual(t, f.Work(), w.Work(), "what is forgotten is counted again")
		}
		if f.meter.emptied {
			forgot++
		}
	})
	require.Positive(t, forgot)
}

// Counting the same again is counted as next to nothing.
func TestWhatIsKnownIsNoWork(t *testing.T) {
	for _, c := range everyKind {
		w := drawWall(c.sketch)
		s := Setting{Placed: w.Outer()}
		before := w.Work()
		w.Count(s)
		first := w.Work() - before
		w.Count(s)
		require.Less(t, w.Work()-before-first, first, c.sketch)
	}
}
