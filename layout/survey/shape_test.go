package survey

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plane"

	"github.com/stretchr/testify/require"
)

const in = length.Inch

func at(x, v length.Length) Reading { return Reading{x * in, v * in} }

func alcoveLeft() WallFound {
	return WallFound{Name: "left", Width: 35 * in, Left: EndFound{Stops: Span{0, 0}}, Right: EndFound{Meets: true, Gap: in / 8},
		Base: []SegmentFound{
			{Meets: "floor", Gap: in / 8, Readings: []Reading{at(0, -58), at(4, -58)}},
			{Meets: "tub", Gap: in / 8, Readings: []Reading{at(4, -38), at(35, -37)}}},
		Head: HeadFound{Stops: Span{40 * in, 40 * in}}}
}

func TestATubsFrontKeepsItsGapFromTheLeg(t *testing.T) {
	s := alcoveLeft().Shape(length.Imperial, Placed{Head: 40 * in})
	require.Len(t, s.Solid, 1)
	b := s.Solid.Bounds()
	require.Equal(t, plane.Rect{Left: 0, Bottom: -58*in + in/8, Right: 35*in - in/8, Top: 40 * in}, b)
	found := false
	for _, c := range s.Solid[0] {
		if c.X == 4*in-in/8 {
			found = true
		}
	}
	require.True(t, found, "the step stands one gap in front of the tub: %v", s.Solid)
}

func TestACornerLeansAndIsCutOnce(t *testing.T) {
	w := alcoveLeft()
	w.Right.Lean = []Reading{at(-30, 0), at(0, 1), at(20, 0)}
	s := w.Shape(length.Imperial, Placed{Head: 40 * in})
	require.Len(t, s.Solid, 1)
	require.Positive(t, s.Solid.Area2())
	require.Equal(t, 36*in-in/8, s.Solid.Bounds().Right)
}

func TestOpeningsMayTouchTheHead(t *testing.T) {
	w := alcoveLeft()
	w.Openings = []OpeningFound{{Kind: "window", Name: "w"}, {Kind: "pipe", Name: "p", At: 10 * in, Up: 0, Diameter: 2 * in}}
	p := Placed{Head: 40 * in, Openings: []Edges{{Left: 20 * in, Bottom: 10 * in, Right: 30 * in, Top: 50 * in}, {}}}
	s := w.Shape(length.Imperial, p)
	whole := alcoveLeft().Shape(length.Imperial, Placed{Head: 40 * in})
	require.Len(t, s.Solid, 1)
	require.Equal(t, whole.Solid.Area2()-2*length.Area(10*in)*length.Area(30*in), s.Solid.Area2())
	require.Len(t, s.Region, 2, "the pipe is a hole")
	require.Negative(t, s.Region[1].Area2()+s.Region[0].Area2()-s.Solid.Area2()-0)
}
