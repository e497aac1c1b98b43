package count

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// A left end that leans by 60 in 600: beside the row from 300 to 400 it stands from 30 to 40,
// and leaves of a tile from 0 to 300 no less than 260, a few units aside.
func TestTheLeastThatRowsOfAnEndMayHave(t *testing.T) {
	w := drawWall("1000x600 300x100+2 1/2 leanleft=0,60")
	left := edgeOf(t, w, int(survey.SideLeft), piece.OnLeft)
	tl := left.tiled(0)
	row := func(course int, low length.Length) bond.Row {
		return bond.Row{Course: course, Low: low * mm, High: (low + 100) * mm}
	}
	for name, c := range map[string]struct {
		rows  []bond.Row
		known length.Length
		least length.Length
	}{
		"no rows":              {nil, 290, 290},
		"one":                  {[]bond.Row{row(0, 300)}, 290, 260},
		"the higher of two":    {[]bond.Row{row(0, 300), row(2, 500)}, 290, 240},
		"of the other class":   {[]bond.Row{row(1, 300)}, 290, 290},
		"known for less":       {[]bond.Row{row(0, 300)}, 200, 200},
		"partly over the end":  {[]bond.Row{row(0, 550)}, 290, 240},
		"over it altogether":   {[]bond.Row{row(0, 700)}, 290, 290},
		"partly under the end": {[]bond.Row{row(0, -50)}, 299, 295},
		"under it altogether":  {[]bond.Row{row(0, -200)}, 299, 299},
	} {
		got := w.Bounds.leastOf(&tl, 0, c.rows, c.known*mm)
		require.InDelta(t, float64(c.least*mm), float64(got), 5, name)
	}
}

// What the edge of 60 in 600 leaves of tiles from 0 to 300 with joints of 2: whole ones where it stands in a joint
// or where sealant takes the strip, and of the next tile where it comes out of the joint into that.
func TestWhatAnEdgeLeavesOfTheTilesOnItsWay(t *testing.T) {
	w := drawWall("1000x600 300x100+2 leanleft=0,60")
	left := edgeOf(t, w, int(survey.SideLeft), piece.OnLeft)
	tl := left.tiled(0)
	for name, c := range map[string]struct{ from, to, leaves length.Length }{
		"it cuts one":                      {30, 40, 260},
		"the same downwards":               {40, 30, 260},
		"it stands in a joint":             {300, 301, 300},
		"a strip for sealant":              {296, 297, 300},
		"out of a joint into a tile":       {301, 312, 290},
		"out of a tile into a joint":       {290, 301, 0},
		"out of a tile, a joint, and into": {290, 312, 0},
		"out of a joint over a whole tile": {301, 603, 0},
	} {
		require.InDelta(t, float64(c.leaves*mm), float64(tl.leaves(c.from*mm, c.to*mm)), 5, name)
	}
}

// Which ends can be told apart by arithmetic.
func TestWhichEndsCanBeToldApart(t *testing.T) {
	for line, tells := range map[string]bool{
		"1000x600 300x100+2":                   true,
		"1000x600 300x100+2 1/2":               true,
		"1000x600 300x100+2 columns":           false,
		"1000x600 300x100+2 left=10":           false, // one end stops
		"1000x600 300x100+2 left=10 right=990": true,
		"600x600 300x100+2":                    false, // of two tiles a piece may reach from end to end
		"610x600 300x100+2":                    true,  // 600, and 8 and a few units for sealant and a joint
		"1000x600 300x100+2 base=0,-50":        true,
		"1000x600 300x100+2 leanleft=0,9":      true,
	} {
		require.Equal(t, tells, drawWall(line).Bounds.tellsApart(20*mm), line)
	}
}

// A rake leaves a wedge of a tile at an end where it runs from one course into the next there.
// Base from 0 at the left to -50 at the right, courses of 100 and 2: in the tile at the left,
// 302 wide, it falls to -15.1.
func TestWhereARakeLeavesAWedge(t *testing.T) {
	w := drawWall("1000x600 300x100+2 base=0,-50")
	for name, c := range map[string]struct {
		across      length.Length
		left, right bool
	}{
		"a course that begins at 0":               {0, true, false},
		"at -10, between 0 and -15":               {-10, true, false},
		"at -20, in the middle of the wall":       {-20, false, false},
		"at -40, within a tile of the right":      {-40, false, true},
		"at -50, at the right end":                {-50, false, true},
		"at -52, the joint over which is not met": {-54, false, false},
		"one that begins two pitches up from -40": {164, false, true},
		"its joint just over the left end":        {3, false, false},
	} {
		require.Equal(t, c.left, w.Bounds.rows.wedge(c.across*mm, survey.SideLeft), "%s: left", name)
		require.Equal(t, c.right, w.Bounds.rows.wedge(c.across*mm, survey.SideRight), "%s: right", name)
	}
	require.False(t, drawWall("1000x600 300x100+2").Bounds.rows.wedge(0, survey.SideLeft), "a level base leaves none")
	require.False(t, drawWall("1000x600 300x100+2 left=0..80 base=0,-50").Bounds.rows.wedge(0, survey.SideLeft), "a free end is no edge that stands")
}

// What stays beside an edge wherever the free openings go: a piece of which they come nowhere
// near the edge.
func TestWhatRemainsBesideAnEdge(t *testing.T) {
	w := drawWall("1000x600 300x100+2 niche=150..200,100,200,100") // from 150 to 300
	left, right := at(100*mm, &steep{onLeft: true, reach: 6 * mm}), at(400*mm, &steep{reach: 6 * mm})
	for name, c := range map[string]struct {
		s       stub
		remains bool
	}{
		"cut on its left at 100":  {stub{cuts: [2]*crossing{&left}}, true},
		"cut on its right at 400": {stub{cuts: [2]*crossing{nil, &right}}, true},
		"cut on both sides":       {stub{cuts: [2]*crossing{&left, &right}}, false},
		"cut on neither":          {stub{}, false},
	} {
		require.Equal(t, c.remains, w.cutter.tally().remains(c.s), name)
	}
	for x, remains := range map[length.Length]bool{143: true, 144: false, 200: false} { // 144 and what sealant reaches is 150
		edge := at(x*mm, &steep{onLeft: true, reach: 6 * mm})
		require.Equal(t, remains, w.cutter.tally().remains(stub{cuts: [2]*crossing{&edge}}), "on the left at %d", x)
	}
	for x, remains := range map[length.Length]bool{307: true, 306: false, 250: false} {
		edge := at(x*mm, &steep{reach: 6 * mm})
		require.Equal(t, remains, w.cutter.tally().remains(stub{cuts: [2]*crossing{nil, &edge}}), "on the right at %d", x)
	}
	leans := crossing{x0: 100 * mm, x1: 147 * mm, steep: &steep{onLeft: true, reach: 6 * mm}}
	require.False(t, w.cutter.tally().remains(stub{cuts: [2]*crossing{&leans}}), "as far as it leans")
}

// Where a free opening may come to stand, turned with the rows, and what it may touch.
func TestWhereAFreeOpeningMayStand(t *testing.T) {
	level, columns := drawWall("1000x600 300x100+2 niche=150..200,100..120,200..230,100"), drawWall("1000x600 300x100+2 columns niche=150..200,100..120,200..230,100")
	hull := plane.Rect{Left: 150 * mm, Right: 320 * mm, Bottom: 200 * mm, Top: 330 * mm}
	require.Equal(t, hull, level.facts.hull(0))
	require.Equal(t, hull.Transposed(), columns.facts.hull(0))
	for name, c := range map[string]struct {
		low, high      length.Length
		level, columns bool
	}{
		"under it":           {100, 200, false, true},
		"within":             {220, 300, true, true},
		"over it":            {330, 400, false, false},
		"from under to over": {100, 400, true, true},
		"far to the left":    {0, 150, false, false},
	} {
		require.Equal(t, c.level, level.facts.touched(c.low*mm, c.high*mm), name)
		require.Equal(t, c.columns, columns.facts.touched(c.low*mm, c.high*mm), name)
	}
	require.True(t, level.facts.freeIn(plane.Rect{Left: 310 * mm, Right: 400 * mm, Bottom: 320 * mm, Top: 400 * mm}))
	require.False(t, level.facts.freeIn(plane.Rect{Left: 320 * mm, Right: 400 * mm, Bottom: 320 * mm, Top: 400 * mm}), "it touches")
	away := level.facts.without(level.Outer())
	require.Equal(t, Away, away.Openings[0])
	require.NotEqual(t, Away, level.Outer().Openings[0], "the setting itself is left alone")
}
