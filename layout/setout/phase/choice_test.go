package phase

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What a way to place the marks cannot beat, nor those after it, is beaten by none that has its options of some axes
// and later ones of the others. Options were passed over once because one that came before them cut a run that others
// cut too, or left the ends less alike.
func TestAWayIsNoWorseThanThoseAfterIt(t *testing.T) {
	shared := 0
	rapid.Check(t, func(t *rapid.T) {
		r := randomRoom(t, 1)
		w := NewWall(&r, r.Walls[0], bond.For(r, r.Bond.Hand))
		if len(w.axes) == 0 {
			return
		}
		for range 4 {
			x := &stretch{edge: length.Length(rapid.IntRange(-200_000, 900_000).Draw(t, "edge")), marks: 1}
			c := w.choose(x, &hunt{wall: w, line: length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line"))})
			c.ready()
			fixed := rapid.IntRange(0, len(w.axes)).Draw(t, "fixed")
			way, later := make([]int, len(w.axes)), make([]int, len(w.axes))
			for axis := range way {
				for n := rapid.IntRange(0, 2).Draw(t, "option"); n > 0 && c.option(axis, way[axis]+1) != nil; n-- {
					way[axis]++
				}
				later[axis] = way[axis]
				for n := rapid.IntRange(0, 4).Draw(t, "later"); axis >= fixed && n > 0 && c.option(axis, later[axis]+1) != nil; n-- {
					later[axis]++
				}
				shared += len(c.option(axis, way[axis]).lowers)
			}
			before, after := c.bound(way, fixed), c.bound(later, len(later))
			worse, term := w.order.Compare(&before, &after)
			require.LessOrEqual(t, worse, 0, "%s: %+v, later %+v", term, before, after)
		}
	})
	require.Positive(t, shared)
}
