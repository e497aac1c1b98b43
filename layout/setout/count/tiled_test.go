package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A corner at 0 that is met without a gap, tile 100 deep and a joint of 2: sealant
// reaches 6 from the edge, or none where it stops.
func corner(meets bool, hidden length.Length) *feature {
	f := &feature{facing: piece.OnLeft, deep: 100 * mm, broad: 50 * mm, joint: 2 * mm, meets: meets, hidden: hidden * mm}
	if meets {
		f.reach = 6 * mm
	}
	return f
}

func TestWhatAnEdgeMakesOfATile(t *testing.T) {
	for name, c := range map[string]struct {
		f      *feature
		first  length.Length
		v0, v1 length.Length
		is     cut
		least  length.Length // in millimetres
		more   length.Length // and units
		bare   bool
	}{
		"whole, its edge on the boundary":      {corner(true, 0), 0, 0, 0, uncut, 0, 0, false},
		"cut to 70":                            {corner(true, 0), -30, 0, 0, kept, 70, 0, false},
		"cut to 70, of which 13 are hidden":    {corner(true, 13), -30, 0, 0, kept, 57, 0, false},
		"all of it hidden":                     {corner(true, 80), -30, 0, 0, kept, 0, 0, false},
		"cut to 7":                             {corner(true, 0), -93, 0, 0, kept, 7, 0, false},
		"a strip of 6 is left to sealant":      {corner(true, 0), -94, 0, 0, sealed, 0, 0, true}, // 6 + 2 to the next tile
		"a strip of 3 is":                      {corner(true, 0), -97, 0, 0, sealed, 0, 0, false},
		"where the wall stops it stays":        {corner(false, 0), -94, 0, 0, kept, 6, 0, false},
		"in a joint":                           {corner(true, 0), -101, 0, 0, uncut, 0, 0, false},
		"leaning, within one tile":             {corner(true, 0), -30, 0, 5, kept, 65, 2, false},
		"leaning the other way":                {corner(true, 0), -30, 5, 0, kept, 65, 2, false},
		"leaning out of a tile into the joint": {corner(true, 0), -98, 0, 3, unsure, 0, 0, false},
		"leaning from one tile into the next":  {corner(true, 0), -98, 0, 9, unsure, 0, 0, false},
		"the same, two tiles further":          {corner(true, 0), -30 - 204, 0, 0, kept, 70, 0, false},
	} {
		tl := tiled{c.f, c.first * mm, absent}
		is, least, bare := tl.slot(c.v0*mm, c.v1*mm)
		require.Equal(t, c.is, is, name)
		require.Equal(t, c.least*mm+c.more, least, name)
		require.Equal(t, c.bare, bare, name)
	}
}

// Wherever in its slot a tile is cut, no less is left than is claimed, two units aside; and
// what is sealed is nowhere wider than sealant reaches.
func TestASlotHoldsForEveryPlaceInIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) length.Length {
			return length.Length(rapid.IntRange(low, high).Draw(t, name))
		}
		f := &feature{facing: piece.Under, deep: n("deep", 20, 90), joint: n("joint", 0, 6), meets: rapid.Bool().Draw(t, "meets")}
		if f.meets {
			f.reach = n("reach", -3, 8)
		}
		tl := tiled{f, n("first", -200, 200), absent}
		v0 := n("v0", -100, 100)
		v1 := v0 + n("lean", -30, 30)
		is, least, _ := tl.slot(v0, v1)
		for v := min(v0, v1); v <= max(v0, v1); v++ {
			left := tl.left(v)
			switch is {
			case kept:
				require.GreaterOrEqual(t, left, least-2)
				require.LessOrEqual(t, left, tl.deep)
			case uncut:
				require.True(t, left <= 0 || left == tl.deep)
			}
		}
		if is == sealed {
			require.LessOrEqual(t, min(tl.left(v0), tl.left(v1)), f.reach+(v1-v0).Abs())
		}
	})
}

// Both ends see the same: a wall mirrored has the same tiles against its other end.
func TestAnEdgeOnTheRightSeesWhatOneOnTheLeftSees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := length.Length(rapid.IntRange(-5000, 5000).Draw(t, "at"))
		left, right := corner(true, 0), corner(true, 0)
		right.facing = piece.OnRight
		a, b := left.tiled(at), right.tiled(-at-left.deep)
		require.Equal(t, length.Mod(a.first, left.pitch()), length.Mod(b.first, left.pitch()))
	})
}

// What is known of an edge that leans: to within its drift, if all of it falls in one tile.
func TestWhenTheCutsOfAnEdgeAreAlike(t *testing.T) {
	for name, c := range map[string]struct {
		first, low, high length.Length
		alike            bool
	}{
		"plumb, in a tile":         {-30, 0, 0, true},
		"plumb, on its edge":       {0, 0, 0, true},
		"plumb, in a joint":        {-101, 0, 0, true},
		"plumb, a strip to seal":   {-97, 0, 0, false},
		"leaning within a tile":    {-30, 0, 8, true},
		"leaning out of it":        {-95, 0, 8, false},
		"leaning to a strip":       {-88, 0, 8, false},
		"leaning to just over one": {-80, 0, 8, true},
	} {
		f := corner(true, 0)
		f.low, f.high = c.low*mm, c.high*mm
		tl := tiled{f, c.first * mm, absent}
		require.Equal(t, c.alike, tl.alike(), name)
	}
}
