package piece_test

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Formats.md, "Sliver": the job's own limit, but at most half the tile; without one a quarter
// of the tile, at most 2 in (50 mm). Common practice, no source.
func TestSliverLimits(t *testing.T) {
	const in = length.Inch
	for name, c := range map[string]struct {
		units      length.System
		own, full  length.Length
		limit      length.Length
		unworkable length.Length // with tile 8 mm thick
	}{
		"a quarter of 100 mm":                   {length.Metric, 0, 100 * mm, 25 * mm, 13 * mm},
		"at most 50 mm":                         {length.Metric, 0, 600 * mm, 50 * mm, 13 * mm},
		"just 50 mm":                            {length.Metric, 0, 200 * mm, 50 * mm, 13 * mm},
		"a quarter of 6 in":                     {length.Imperial, 0, 6 * in, in + in/2, in / 2},
		"at most 2 in":                          {length.Imperial, 0, 24 * in, 2 * in, in / 2},
		"the job's own":                         {length.Metric, 60 * mm, 300 * mm, 60 * mm, 13 * mm},
		"the job's own, at most half":           {length.Metric, 60 * mm, 100 * mm, 50 * mm, 13 * mm},
		"a quarter that is no whole unit":       {length.Metric, 0, 101, 26, 51},
		"half of what is odd":                   {length.Metric, 60 * mm, 101, 51, 51},
		"half a small tile cannot be worked":    {length.Metric, 0, 20 * mm, 5 * mm, 10 * mm},
		"a mosaic of 1 in, half of which is it": {length.Imperial, 0, in, in / 4, in / 2},
	} {
		room := survey.Room{Units: c.units, Sliver: c.own, Tile: survey.TileSize{Thickness: 8 * mm}}
		require.Equal(t, c.limit, piece.SliverLimit(room, c.full), name)
		require.Equal(t, c.unworkable, piece.UnworkableLimit(room, c.full), name)
	}
	// Merit.md, "Unworkable": 1.5 times the thickness where that is more.
	thick := survey.Room{Units: length.Metric, Tile: survey.TileSize{Thickness: 20 * mm}}
	require.Equal(t, 30*mm, piece.UnworkableLimit(thick, 300*mm))
	thick.Tile.Thickness = 20*mm + 1
	require.Equal(t, 30*mm+2, piece.UnworkableLimit(thick, 300*mm), "rounded up: a size at the limit passes")
}

// With columns along is up the wall: sizes, limits and pipes are turned.
func TestTheRuleOfColumnsIsTurned(t *testing.T) {
	level, columns := sketch("1000x600 300x100+2 pipe=400,150,40", 0, 0), sketch("1000x600 300x100+2 columns pipe=400,150,40", 0, 0)
	require.Equal(t, []length.Length{300 * mm, 100 * mm}, []length.Length{level.rule.Along, level.rule.Across})
	require.Equal(t, []length.Length{100 * mm, 300 * mm}, []length.Length{columns.rule.Along, columns.rule.Across})
	require.Equal(t, level.rule.Limits[0], columns.rule.Limits[1])
	require.Equal(t, level.rule.Limits[1], columns.rule.Limits[0])
	require.Equal(t, 50*mm, level.rule.Limits[0].Sliver)
	require.Equal(t, 25*mm, level.rule.Limits[1].Sliver)
	pipe := level.rule.Pipes[0]
	require.Equal(t, plane.Point{X: 400 * mm, Y: 150 * mm}, pipe.Centre)
	require.Equal(t, 23*mm, pipe.Radius, "3 mm clear of the pipe all round: ANSI A108.02 4.3")
	require.Equal(t, "pipe p", level.rule.Sides[pipe.Side].Name)
	require.Equal(t, plane.Point{X: 150 * mm, Y: 400 * mm}, columns.rule.Pipes[0].Centre)
}

// A piece is judged by the directions in which it is cut, each against its own limit: under
// 13 mm nobody cuts it, under 50 of 300 and 25 of 100 it is a sliver.
func TestHowSmallAPieceIs(t *testing.T) {
	const base = "1000x600 300x100+2"
	for name, c := range map[string]struct {
		sketch             string
		line, edge, x, y   length.Length
		unworkable, sliver bool
		seen, hidden       piece.Grade
	}{
		"50 of 300 is none":                        {base, 0, -250, 20, 50, false, false, piece.Sound, piece.Sound},
		"49 is a sliver":                           {base, 0, -251, 20, 50, false, true, piece.Small, piece.Sound},
		"13 is a sliver":                           {base, 0, -287, 10, 50, false, true, piece.Small, piece.Sound},
		"12 is unworkable and no sliver":           {base, 0, -288, 10, 50, true, false, piece.Hopeless, piece.Sound},
		"25 of 100 is none":                        {base, -75, 0, 50, 10, false, false, piece.Sound, piece.Sound},
		"24 of 100 is one":                         {base, -76, 0, 50, 10, false, true, piece.Small, piece.Sound},
		"24 over the floor, out of sight":          {base + " leg=150", -276, 0, 50, -190, false, true, piece.Sound, piece.Small},
		"12 over the floor":                        {base + " leg=150", -288, 0, 50, -190, true, false, piece.Sound, piece.Hopeless},
		"12 wide there, at the end in plain sight": {base + " leg=150", -240, -288, 10, -190, true, false, piece.Hopeless, piece.Sound},
		"in both directions":                       {base + " leg=150", -276, -251, 10, -190, false, true, piece.Small, piece.Small},
		"90 of a tile is small in no way":          {base, -10, -210, 50, 50, false, false, piece.Sound, piece.Sound},
		"in columns 24 of 100":                     {base + " columns", -76, 0, 50, 10, false, true, piece.Small, piece.Sound},
		"in columns 24 over the floor":             {base + " columns leg=150", -276, 0, 50, -190, false, true, piece.Sound, piece.Small},
	} {
		p := sketch(c.sketch, c.line, c.edge).at(t, c.x, c.y)
		require.Equal(t, []bool{c.unworkable, c.sliver}, []bool{p.Unworkable, p.Sliver}, name)
		require.Equal(t, []piece.Grade{c.seen, c.hidden}, []piece.Grade{p.Grade(false), p.Grade(true)}, name)
	}
}

// Shares compare as fractions, whatever they are written as.
func TestShares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) piece.Share {
			full := rapid.IntRange(1, 3000).Draw(t, name+" full")
			return piece.Part(length.Length(rapid.IntRange(0, full).Draw(t, name)), length.Length(full))
		}
		a, b := draw("a"), draw("b")
		less := a.Num*b.Den < b.Num*a.Den
		require.Equal(t, less, a.Less(b))
		require.Equal(t, a.Less(b) && a.Float() < b.Float() || !a.Less(b) && a.Float() >= b.Float(), true)
		require.False(t, a.Less(a))
		low, high := a.Min(b), a.Max(b)
		require.False(t, a.Less(low) || b.Less(low) || high.Less(a) || high.Less(b))
		require.True(t, low == a && high == b || low == b && high == a || low == high)
		k := int64(rapid.IntRange(1, 9).Draw(t, "k"))
		require.Equal(t, a.Less(b), piece.Share{Num: k * a.Num, Den: k * a.Den}.Less(b), "a share is what it is, not how it is written")
	})
	require.True(t, piece.Part(149, 300).Less(piece.Half))
	require.False(t, piece.Part(150, 300).Less(piece.Half))
	require.Zero(t, piece.Share{}.Float(), "nothing")
	require.Equal(t, 0.25, piece.Part(75, 300).Float())
}

// The share of a piece is that of whichever direction has least of the tile, with the size
// that gives it.
func TestTheShareIsThatOfTheWorseDirection(t *testing.T) {
	for name, c := range map[string]struct {
		line, edge, x, y length.Length
		least            length.Length
		num, den         int64
	}{
		"180 of 300 across":                   {0, -120, 50, 50, 180, 3, 5},
		"70 of 100 up":                        {-30, 0, 350, 30, 70, 7, 10},
		"94 of 300 and 90 of 100 in a corner": {0, 0, 950, 550, 94, 94, 300},
		"240 of 300 and 70 of 100":            {-30, -60, 50, 30, 70, 7, 10},
		"a whole tile":                        {0, 0, 350, 50, 300, 1, 1},
	} {
		p := sketch("1000x600 300x100+2", c.line, c.edge).at(t, c.x, c.y)
		require.Equal(t, c.least, p.Least/mm, name)
		require.Equal(t, c.num*p.Share.Den, p.Share.Num*c.den, name)
	}
}
