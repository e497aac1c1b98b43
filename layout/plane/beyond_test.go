package plane

import (
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What lies beyond a plumb line is taken out to the very same rings, from the same corner on, as a box
// taken out that reaches far beyond the region.
func TestLessBeyondAPlumbLineIsLessABox(t *testing.T) {
	quick := 0
	rapid.Check(t, func(t *rapid.T) {
		r := randomRegion(t)
		ring := r[rapid.IntRange(0, len(r)-1).Draw(t, "ring")]
		if rapid.Bool().Draw(t, "one ring") {
			r, ring = r[:1], r[0]
		}
		x := number(t, "x", -100, int(r.Bounds().Right)+100)
		if rapid.IntRange(0, 3).Draw(t, "at a corner") == 0 {
			x = ring[rapid.IntRange(0, len(ring)-1).Draw(t, "corner")].X
		}
		if rapid.Bool().Draw(t, "turned") {
			n := rapid.IntRange(0, len(r[0])-1).Draw(t, "first corner")
			r[0] = append(append(Ring{}, r[0][n:]...), r[0][:n]...)
		}
		const far = 100 * length.Metre
		require.Equal(t, r.Less(Rect{Left: -far, Right: x, Bottom: -far, Top: far}.Ring(0), 7), r.LessLeft(x, 7), "left of %v", x)
		require.Equal(t, r.Less(Rect{Left: x, Right: far, Bottom: -far, Top: far}.Ring(0), 8), r.LessRight(x, 8), "right of %v", x)
		if _, is := r[0].lessBeyond(RightOf(x), 7); is && len(r) == 1 {
			quick++
		}
	})
	require.Positive(t, quick, "rings that cross the line twice were drawn")
}
