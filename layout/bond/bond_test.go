package bond

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const mm = length.Millimetre

func random(t *rapid.T) Coursed {
	n := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low, high).Draw(t, name))
	}
	den := int64(rapid.IntRange(1, 5).Draw(t, "den"))
	return Coursed{n("width", 4800, 600_000), n("height", 4800, 600_000), n("joint", 0, 9600),
		int64(rapid.IntRange(0, int(den)-1).Draw(t, "num")), den, survey.Hand(rapid.SampledFrom([]int{-1, 1}).Draw(t, "hand"))}
}

// Rows are every row that meets the stretch, no other, in order, one pitch apart.
func TestRowsAreThoseThatMeetTheStretch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := random(t)
		low := length.Length(rapid.IntRange(-9_000_000, 9_000_000).Draw(t, "low"))
		high := low + length.Length(rapid.IntRange(1, 5_000_000).Draw(t, "reach"))
		line := length.Length(rapid.IntRange(-9_000_000, 9_000_000).Draw(t, "line"))
		edge := length.Length(rapid.IntRange(-9_000_000, 9_000_000).Draw(t, "edge"))
		rows := c.Rows(line, edge, low, high)
		for i, r := range rows {
			require.Equal(t, line+length.Length(r.Course)*c.Across(), r.Low)
			require.Equal(t, r.Low+c.Height, r.High)
			require.True(t, r.High > low && r.Low < high)
			require.Equal(t, c.Along(), r.Pitch)
			require.Equal(t, edge+c.Shifts()[r.Phase], r.First)
			if i > 0 {
				require.Equal(t, rows[i-1].Course+1, r.Course)
			}
		}
		meets := 0
		for k := length.DivFloor(low-line, c.Across()) - 2; line+length.Length(k)*c.Across() < high; k++ {
			if line+length.Length(k)*c.Across()+c.Height > low {
				meets++
			}
		}
		require.Len(t, rows, meets)
	})
}

// The bond repeats exactly: after Den courses the rows stand as before, and a
// course line moved by that period, or a start by a pitch, is the same bond.
func TestPeriodsAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := random(t)
		k := rapid.IntRange(-40, 40).Draw(t, "course")
		require.Equal(t, c.shift(k), c.shift(k+int(c.Den)))
		require.True(t, c.shift(k) >= 0 && c.shift(k) < c.Along())
		other := c
		other.Hand = -c.Hand
		require.InDelta(t, 0, float64(length.Mod(c.shift(k)+other.shift(k)+1, c.Along())), 2, "the hands mirror each other")
		period := c.Across() * length.Length(c.Den)
		a, b := c.Rows(0, 0, 0, 3*period), c.Rows(period, 0, 0, 3*period)
		require.Equal(t, len(a), len(b))
		for i := range a {
			require.Equal(t, [3]length.Length{a[i].Low, a[i].High, a[i].First}, [3]length.Length{b[i].Low, b[i].High, b[i].First})
		}
	})
}

// Shifts of the bonds people lay: formats.md, "moved by k · offset · (width + joint)".
func TestShifts(t *testing.T) {
	for _, c := range []struct {
		name     string
		num, den int64
		hand     survey.Hand
		want     []length.Length
	}{
		{"stack", 0, 1, survey.Left, []length.Length{0}},
		{"half", 1, 2, survey.Left, []length.Length{0, 150 * mm}},
		{"third to the right", 1, 3, survey.Right, []length.Length{0, 100 * mm, 200 * mm}},
		{"third to the left", 1, 3, survey.Left, []length.Length{0, 200 * mm, 100 * mm}},
		{"quarter to the right", 1, 4, survey.Right, []length.Length{0, 75 * mm, 150 * mm, 225 * mm}},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, Coursed{297 * mm, 97 * mm, 3 * mm, c.num, c.den, c.hand}.Shifts())
		})
	}
}

// Columns are courses turned: along means up the wall.
func TestColumnsAreCoursesTurned(t *testing.T) {
	room := survey.Room{Tile: survey.TileSize{Width: 97 * mm, Height: 297 * mm}, Joint: 3 * mm, Bond: survey.BondRule{Num: 1, Den: 2, Plumb: true}}
	c := Of(room, survey.Left)
	require.Equal(t, 300*mm, c.Along())
	require.Equal(t, 100*mm, c.Across())
	require.Equal(t, []length.Length{0, 150 * mm}, c.Shifts())
	room.Bond = survey.BondRule{}
	require.Equal(t, []length.Length{0}, Of(room, survey.Free).Shifts(), "stack bond has one phase")
}
