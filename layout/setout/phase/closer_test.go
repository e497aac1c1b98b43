package phase

import (
	"cmp"
	"slices"
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plane"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// randomPhase is a wall with a way to place its marks that is not yet begun, twice the same.
func randomPhase(t *rapid.T, w *Wall) func() *choice {
	line := length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line"))
	x := &stretch{edge: length.Length(rapid.IntRange(-200_000, 900_000).Draw(t, "edge")), marks: 1}
	return func() *choice { return w.choose(x, &hunt{wall: w, line: line}) }
}

// Cutting that is stopped at each small piece, in any order of the boundaries, gives what cutting all at once gives.
func TestCuttingGoesOnWhereItWasStopped(t *testing.T) {
	stops := 0
	rapid.Check(t, func(t *rapid.T) {
		r := randomRoom(t, 1)
		w := NewWall(&r, r.Walls[0], bond.For(r, r.Bond.Hand))
		for range 3 {
			begin := randomPhase(t, w)
			once, often := begin(), begin()
			for once.cut < allCut {
				once.closer(nil)
			}
			for i := range w.shown {
				w.shown[i] = rapid.IntRange(0, 3).Draw(t, "shown")
			}
			for others := (merit.Merit{}); often.cut < allCut; stops++ {
				often.closer(&others)
				others.Bare, others.Unworkable, others.Slivers = often.stands.Bare, often.stands.Unworkable, often.stands.Slivers
			}
			require.Equal(t, once.stands, often.stands)
			require.ElementsMatch(t, once.apart.runs, often.apart.runs)
		}
	})
	require.Positive(t, stops)
}

// Which tiles are in some zones is the same whether or not it is known which may be in them, and in whatever order they
// are looked through.
func TestKnownZonesHoldTheSameTiles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := randomRoom(t, 1)
		w := NewWall(&r, r.Walls[0], bond.For(r, r.Bond.Hand))
		g := w.ground(w.outer)
		origin := plane.Point{X: length.Length(rapid.IntRange(-900_000, 900_000).Draw(t, "x")), Y: length.Length(rapid.IntRange(-900_000, 900_000).Draw(t, "y"))}
		for _, z := range []*zones{&g.zones, &g.turns, &g.marked} {
			var asked, known, byZone []bond.Set
			eachAsked(&w.Pattern, z.boxes, g.box, origin, func(set bond.Set, _ int) { asked = append(asked, set) })
			z.asked = true
			w.eachIn(g, z, origin, func(set bond.Set) { known = append(known, set) })
			require.Equal(t, asked, known)
			order := make([]int, len(z.boxes))
			for i := range order {
				order[i] = i
			}
			order = rapid.Permutation(order).Draw(t, "order")
			for i, n := range order {
				z.eachOf(&w.Pattern, g.box, order[:i], n, origin, func(set bond.Set) { byZone = append(byZone, set) })
			}
			sorted := func(all []bond.Set) []bond.Set {
				return slices.SortedFunc(slices.Values(all), func(a, b bond.Set) int {
					return cmp.Or(cmp.Compare(a.Place, b.Place), cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.At.Y, b.At.Y))
				})
			}
			require.Equal(t, sorted(asked), sorted(byZone))
		}
	})
}
