package piece_test

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// raked is a wall of 1000 by 600 over a tub that rises from one height to another, in units.
func raked(left, right length.Length) survey.Shape {
	at := func(x, y length.Length, on plane.Side) plane.Corner {
		return plane.Corner{Point: plane.Point{X: x, Y: y}, On: on}
	}
	r := plane.Region{{at(0, left, survey.SideBase), at(1000*mm, right, survey.SideRight), at(1000*mm, 600*mm, survey.SideHead), at(0, 600*mm, survey.SideLeft)}}
	sides := []survey.Boundary{{}, {Name: "left"}, {Name: "right"}, {Name: "head"}, {Name: "base", Part: survey.Part{Is: survey.BaseSegment}, Meets: true, Gap: 3 * mm}}
	return survey.Shape{Region: r, Solid: r, Visible: r, Sides: sides}
}

// covered covers the base of a raked wall with courses of 100 from a line.
func covered(s survey.Shape, line, joint length.Length) *piece.Cover {
	rule := piece.Rule{Along: 300 * mm, Across: 100 * mm, Joint: joint, Sealant: 6 * mm, Sides: s.Sides}
	c := piece.NewCover(s, rule)
	for _, row := range (bond.Coursed{Width: 300 * mm, Height: 100 * mm, Joint: joint, Den: 1}).Rows(line, 0, -1200*mm, 600*mm) {
		piece.Row(piece.BandOf(s, row, false), row, rule, func(p *piece.Piece) { c.Region(p.Solid()) }, c.Rect)
	}
	return c
}

func bareOf(gaps []piece.Gap) (sum length.Length) {
	for _, g := range gaps {
		sum += g.Length
	}
	return sum
}

// Of a level boundary all that is bare is surely so; of one that rises 20 in 1000 a gap may be
// shorter by 4 · (1 + 50) units.
func TestHowSureAGapIs(t *testing.T) {
	level := covered(raked(0, 0), 5*mm, 8*mm)
	require.Equal(t, 1000*mm, bareOf(level.Gaps()), "5 off, and sealant reaches 3")
	require.Equal(t, level.Gaps(), level.Sure())
	slant := covered(raked(-10*mm, 10*mm), 5*mm, 8*mm)
	gaps, sure := slant.Gaps(), slant.Sure()
	require.Len(t, gaps, 1)
	// Of the course under it sealant takes what is left in the tile from 308 on, 0.84 high; up to
	// 300 and a joint further its tile covers. The course over it is 3 off at 600, where it is at 2;
	// square to the edge sealant reaches a thousandth of a millimetre further.
	require.InDelta(t, float64(292*mm), float64(gaps[0].Length), 60)
	require.InDelta(t, float64(308*mm), float64(gaps[0].From.X), 1)
	require.Equal(t, gaps[0].Length-4*(1+50), sure[0].Length)
	require.Equal(t, []plane.Point{gaps[0].From, gaps[0].To}, []plane.Point{sure[0].From, sure[0].To})
}

// Along a boundary as steep as a roof the tile of every row is cut to it, and the mouths of joints
// of 4 between rows are no wider, square to it, than sealant fills beside its gap of 3.
func TestARoofLeavesNoWallBare(t *testing.T) {
	for _, rise := range []length.Length{450 * mm, 600 * mm, 750 * mm, 900 * mm} {
		require.Empty(t, covered(raked(-rise, 50*mm), 5*mm, 4*mm).Gaps(), "rising %v in 1000", rise/mm+50)
		require.Empty(t, covered(raked(50*mm, -rise), 5*mm, 4*mm).Gaps(), "falling %v in 1000", rise/mm+50)
	}
}

// Sealant fills 6 square to an edge: 7.5 plumb where it rises 3 in 4.
func TestHowMuchFartherSealantReachesOnASlant(t *testing.T) {
	require.Zero(t, piece.Slant(6*mm, plane.Point{}, plane.Point{X: 9 * mm}))
	require.Equal(t, 15*mm/10, piece.Slant(6*mm, plane.Point{}, plane.Point{X: 4 * mm, Y: -3 * mm}))
	require.Equal(t, 15*mm/10, piece.Slant(6*mm, plane.Point{}, plane.Point{X: 3 * mm, Y: 4 * mm}))
}

// However the ends of a slanted boundary are rounded, by two units each, no less of it is bare
// than is sure.
func TestNoLessIsBareThanIsSure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) length.Length {
			return length.Length(rapid.IntRange(low, high).Draw(t, name))
		}
		left, right, line := n("left", -20_000, 20_000), n("right", -20_000, 20_000), n("line", -100_000, 0)
		sure := bareOf(covered(raked(left, right), line, 8*mm).Sure())
		require.LessOrEqual(t, sure, bareOf(covered(raked(left, right), line, 8*mm).Gaps()))
		for range 3 {
			a, b := left+n("left by", -2, 2), right+n("right by", -2, 2)
			require.LessOrEqual(t, sure, bareOf(covered(raked(a, b), line, 8*mm).Gaps()), "ends moved from %v, %v to %v, %v", left, right, a, b)
		}
	})
}
