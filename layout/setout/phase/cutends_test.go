package phase

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What an option of an end or the head gives with its corners cut does not come after what it gives with all
// cut that it touches, of which that is a part.
func TestCornersOfEndsAreAPartOfWhatTheyCut(t *testing.T) {
	small := 0
	rapid.Check(t, func(t *rapid.T) {
		r := randomRoom(t, 1)
		if wall := &r.Walls[0]; rapid.Bool().Draw(t, "between corners") {
			corner := survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: -1}
			wall.Left, wall.Right = corner, corner
			wall.Head = survey.HeadFound{Stops: survey.Span{From: 400 * mm, To: length.Length(rapid.IntRange(401, 600).Draw(t, "head")) * mm}}
		}
		w := NewWall(&r, r.Walls[0], bond.For(r, r.Bond.Hand))
		for range 4 {
			line := length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line"))
			x := &stretch{edge: length.Length(rapid.IntRange(-200_000, 900_000).Draw(t, "edge")), marks: 1}
			c := w.choose(x, &hunt{wall: w, line: line})
			c.ready()
			for i, a := range w.axes {
				if a.opening >= 0 {
					continue
				}
				for _, o := range c.axes[i].wait.items {
					corners, all, none := *o, *o, *o.merit
					none.Sight, none.OutOfSight = merit.Sight{}, merit.Sight{}
					corners.merit = &none
					c.cutEnds(a, &corners, c.axes[i].small)
					c.cutCorners(a, &all, nil)
					worse, term := w.order.Compare(corners.merit, all.merit)
					require.LessOrEqual(t, worse, 0, "%s: corners %+v, all %+v at %v", term, corners.merit, all.merit, o.at)
					small += corners.merit.Unworkable + corners.merit.Slivers
				}
			}
		}
	})
	require.Positive(t, small)
}
