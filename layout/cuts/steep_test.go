package cuts

import (
	"testing"

	"github.com/stretchr/testify/require"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// Found by printing an attic: of a tile that a steep ceiling takes a corner off, the schedule said the heights at
// both sides, which a taper from side to side has too, and with its neighbour of the same course it was a rip.
func TestWhereARakeTakesACornerOffIsMarked(t *testing.T) {
	for _, c := range []struct {
		name string
		face plane.Ring
		says []string
	}{
		{"a corner", plane.Ring{corner(0, 0, 0), corner(8, 0, 0), corner(8, 4, 0), corner(3, 4, 3), corner(0, 2, 0)}, []string{"saw from 3\" on the way B to A to 2\" on the way B to C"}},
		{"a point", plane.Ring{corner(2, 0, 0), corner(8, 0, 0), corner(8, 4, 0), corner(7, 4, 3)}, []string{"saw from 1\" on the way A to B to 2\" on the way C to D"}},
		{"a triangle", plane.Ring{corner(5, 0, 0), corner(8, 0, 0), corner(8, 2, 3)}, []string{"saw from 2\" on the way D to A to 3\" on the way D to C"}},
		{"a corner by the floor", plane.Ring{corner(3, 0, 0), corner(8, 0, 0), corner(8, 4, 0), corner(0, 4, 0), corner(0, 2, 4)}, []string{"saw from 2\" on the way B to C to 3\" on the way C to D"}},
		{"from side to side", plane.Ring{corner(0, 0, 0), corner(8, 0, 0), corner(8, 3, 3), corner(0, 1, 0)}, nil},
		{"from end to end", plane.Ring{corner(2, 0, 0), corner(8, 0, 0), corner(8, 4, 0), corner(4, 4, 3)}, nil},
		{"hardly slanting", plane.Ring{corner(0, 0, 0), corner(8, 0, 0), corner(8, 4, 0), corner(7, 4, 3), {Point: plane.Point{Y: 4*inch - inch/2}}}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := scheduled(cut("B-01-01", piece.Taper, []plane.Side{3}, c.face))
			require.Equal(t, c.says, s.Cuts[0].Marks(length.Imperial))
			require.Equal(t, c.says != nil, s.Groups[0].Kind == "angle cut", s.Groups[0].Kind)
		})
	}
	a := cut("B-01-01", piece.Taper, []plane.Side{3}, plane.Ring{corner(5, 0, 0), corner(8, 0, 0), corner(8, 2, 3)})
	b := cut("B-01-02", piece.Taper, []plane.Side{3}, plane.Ring{corner(0, 0, 0), corner(8, 0, 0), corner(8, 4, 0), corner(3, 4, 3), corner(0, 2, 0)})
	require.Len(t, scheduled(a, b).Groups, 2)
}
