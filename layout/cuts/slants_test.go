package cuts

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"

	"github.com/stretchr/testify/require"
)

// A triangle that is cut off a tile of a pattern is as wide below as its long side, and has no width above: its
// point was once said to be half as wide.
func TestAPointHasNoWidth(t *testing.T) {
	const in = length.Inch
	ring := func(p ...plane.Point) (r plane.Ring) {
		for _, p := range p {
			r = append(r, plane.Corner{Point: p})
		}
		return r
	}
	triangle := ring(plane.Point{}, plane.Point{X: 3 * in}, plane.Point{X: 3 * in / 2, Y: 3 * in / 2})
	cut := ring(plane.Point{X: 2 * in}, plane.Point{X: 3 * in}, plane.Point{X: 6 * in, Y: 2 * in}, plane.Point{X: in, Y: 2 * in})
	tile := ring(plane.Point{}, plane.Point{X: 8 * in}, plane.Point{X: 8 * in, Y: 3 * in}, plane.Point{Y: 3 * in})
	for _, c := range []struct {
		face plane.Ring
		says string
	}{
		{triangle, "wide 3\", high 1\u00a01/2\""},
		{cut, "wide 1\"\u00a0below, 5\"\u00a0above, high 2\""},
	} {
		w := work{wall: &plan.Wall{}, own: &frame{}, piece: piece.Piece{Outline: tile}, face: plane.Region{c.face}, box: plane.Region{c.face}.Bounds()}
		require.Equal(t, c.says, words{length.Imperial}.size(w.size(length.Inch / 32))[0])
	}
}

// An edge that leaves the fence, or what is square to it, by no more than 1 in 8 is that of a taper.
func TestEdgesThatSlantMoreThanATaper(t *testing.T) {
	for _, c := range []struct {
		wide, high length.Length
		slants     bool
	}{{80, 0, false}, {0, 80, false}, {80, 10, false}, {-10, 80, false}, {80, 11, true}, {11, -80, true}, {50, 50, true}} {
		to := plane.Point{X: 7 + c.wide, Y: 9 + c.high}
		require.Equal(t, c.slants, slants(plane.Point{X: 7, Y: 9}, to), "%d over %d", c.wide, c.high)
	}
}
