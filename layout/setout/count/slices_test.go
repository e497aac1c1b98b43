package count

import (
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// By hand: tile of 300 with joints of 2, a leg of 40 beside a tub whose rim is at 0. The
// row from -250 to 50 is not plain. Under the rim it is: the tile at the left is 40
// wide there, in front of the tub, and that is a sliver wherever it goes above.
func TestWhatALegLeavesOfATileIsSure(t *testing.T) {
	slivers := func(line string) [2]int {
		w := drawWall(line)
		s := Setting{Line: -250 * mm, Placed: w.Outer()}
		return [2]int{w.Bounds.Plainly(s.Line, s.Edge).Slivers, w.Count(s).Merit.Slivers}
	}
	require.Equal(t, [2]int{1, 1}, slivers("1000x652 300x300+2 leg=40"))
	require.Equal(t, [2]int{0, 0}, slivers("1000x652 300x300+2 leg=120"))
	require.Equal(t, [2]int{1, 1}, slivers("1000x652 300x300+2 leg=40 pipe=700,-100,30"), "a pipe in the row, but in another tile")
	require.Equal(t, [2]int{0, 1}, slivers("1000x652 300x300+2 leg=40 pipe=250,20,30"), "what a pipe leaves of the tile is not known")
	require.Equal(t, [2]int{0, 1}, slivers("1000x652 300x300+2 leg=40 window=200,60,10,30"), "nor what a window leaves")
	require.Equal(t, [2]int{1, 1}, slivers("1000x652 300x300+2 leg=40 window=320,60,10,30"), "a window in another tile")
}

// By hand: the left end is free between 0 and 70 beside a leg of 100. Placed at 70 it
// leaves 30 of the leg; at 20 it leaves 80.
func TestWhatAFreeEndLeavesOfALegIsSure(t *testing.T) {
	w := drawWall("1000x652 300x300+2 leg=100 left=0..70")
	along, across := w.facts.frame.phases(-250*mm, 0)
	_, bands := w.Bounds.standingEnds(along, w.Bounds.rows.at(across))
	slow := func(w *Wall) (out []*uneven) {
		for _, row := range w.facts.rows(Setting{Line: -250 * mm}, w.Box()) {
			out = append(out, w.Bounds.zones.uneven(row))
		}
		return out
	}
	at := func(x length.Length) int { return w.Bounds.zones.at(false, x*mm, along, bands, slow(w)).Slivers }
	require.Equal(t, 1, at(70))
	require.Equal(t, 0, at(20))
	for pipe, slivers := range map[string]int{"pipe=85,-130,10": 0, "pipe=600,-150,30": 1} {
		near := drawWall("1000x652 300x300+2 leg=100 left=0..70 " + pipe)
		_, bands = near.Bounds.standingEnds(along, near.Bounds.rows.at(across))
		require.Equal(t, slivers, near.Bounds.zones.at(false, 70*mm, along, bands, slow(near)).Slivers, pipe)
	}
}

// By hand: of a wall of 15 to 30 both free ends may cut the tile from -222 to 23; what is left of it in a row that is not
// plain is counted at neither. Where the right end is measured it is counted at the left one.
func TestAPieceBetweenTwoFreeEndsIsCountedAtNeither(t *testing.T) {
	for sketch, counted := range map[string]bool{"300x600 245x40+0 left=0..5 right=20..30 ceiling=600,590": false, "300x600 245x40+0 left=0..5 right=30 ceiling=600,590": true} {
		w := drawWall(sketch)
		var slow []*uneven
		for _, row := range w.facts.rows(Setting{}, w.Box()) {
			slow = append(slow, w.Bounds.zones.uneven(row))
		}
		_, bands := w.Bounds.standingEnds(-222*mm, w.Bounds.rows.at(0))
		m := w.Bounds.zones.at(false, 0, -222*mm, make(pattern, len(bands)), slow)
		require.Equal(t, counted, m.Unworkable+m.Slivers > 0, sketch)
	}
}

// By hand: tile of 100 with joints of 10 begins at 10, the corner's gap ends at 3 and
// sealant fills 3 more: every course is 7 off there and leaves its 100 bare. At the right it
// is 3 off. Begun at 6 it is the other way round.
func TestWhatCoursesLeaveBareIsSure(t *testing.T) {
	w := drawWall("996x546 100x100+10 gap=3")
	for _, edge := range []length.Length{10 * mm, 6 * mm} {
		s := Setting{Line: 3 * mm, Edge: edge, Placed: w.Outer()}
		require.Equal(t, 500*mm, w.Bounds.Plainly(s.Line, s.Edge).Bare)
		require.GreaterOrEqual(t, w.Count(s).Merit.Bare, 500*mm)
	}
}

// An edge that leans from a tile into the joint beside it stands apart as far as it
// leaves no more than a strip of the tile. Tiles of 100 and joints of 10 begin at 0.
func TestALeaningEdgeStandsApart(t *testing.T) {
	row := drawWall("1000x600 100x100+10").facts.rows(Setting{}, drawWall("1000x600 100x100+10").Box())[0]
	for name, c := range map[string]struct {
		x0, x1 length.Length
		apart  bool
	}{
		"a strip of 2 below, in the joint above": {98, 102, true},
		"a strip of 4 below":                     {96, 102, false},
		"in the joint, 6 off":                    {102, 104, true},
		"in the joint, 2 off above":              {102, 108, false},
	} {
		left := crossing{x0: c.x0 * mm, x1: c.x1 * mm, steep: &steep{onLeft: true, meets: true, reach: 3 * mm}}
		require.Equal(t, c.apart, left.apart(row, true), name)
		right := crossing{x0: (100 - c.x0) * mm, x1: (100 - c.x1) * mm, steep: &steep{meets: true, reach: 3 * mm}}
		require.Equal(t, c.apart, right.apart(row, true), "from the right, "+name)
	}
	for unit, apart := range map[length.Length]bool{0: false, 1: true, -1: false} { // 110 less 3 and a unit: a plumb edge is not rounded
		plumb := at(107*mm-unit, &steep{onLeft: true, meets: true, reach: 3 * mm})
		require.Equal(t, apart, plumb.apart(row, true), "%d units farther than sealant reaches", unit)
		leans := crossing{x0: 107*mm - unit, x1: 107*mm - unit - 5, steep: plumb.steep}
		require.False(t, leans.apart(row, true), "one that leans may be")
	}
	strip := crossing{x0: 98 * mm, x1: 102 * mm, steep: &steep{onLeft: true, meets: true, reach: 3 * mm}}
	require.False(t, strip.apart(row, false), "what is narrow in a slice may be part of more")
}

// An edge that leans from 1 off the end of a tile of 100 to 5 into the joint of 10 behind it
// stands apart as long as it is more than 3 off the next: for nearly all of the row. One that
// leans through the whole joint does for as much of it as is farther off.
func TestALeaningEdgeStandsPartlyApart(t *testing.T) {
	row := drawWall("1000x600 100x100+10").facts.rows(Setting{}, drawWall("1000x600 100x100+10").Box())[0]
	height := row.High - row.Low
	for name, c := range map[string]struct{ x0, x1, want length.Length }{
		"all of it":                    {99, 103, height},
		"in the joint, to the next":    {100, 110, height * 7 / 10},
		"the same from above":          {110, 100, height * 7 / 10},
		"too wide below for a strip":   {90, 110, 0},
		"within reach from the bottom": {108, 110, 0},
	} {
		left := crossing{x0: c.x0 * mm, x1: c.x1 * mm, steep: &steep{onLeft: true, meets: true, reach: 3 * mm}}
		require.InDelta(t, int64(c.want), int64(left.partly(row, height, true)), 30, name)
		right := crossing{x0: (100 - c.x0) * mm, x1: (100 - c.x1) * mm, steep: &steep{meets: true, reach: 3 * mm}}
		require.InDelta(t, int64(c.want), int64(right.partly(row, height, true)), 30, "from the right, "+name)
	}
}

// By hand: columns of 100 and joints of 2 on a wall of 250: the last is cut to 46, and all of
// it is within the one stretch of wall that the row has. A row with a leg's corner in it has two.
func TestTheOneStretchOfARow(t *testing.T) {
	stretches := func(line string, n int) [3]any {
		w := drawWall(line)
		f := w.Bounds.zones.outline
		row := w.facts.rows(Setting{Placed: w.Outer()}, w.Box())[n]
		low, high, one := f.only(row)
		return [3]any{low, high, one}
	}
	rows := drawWall("250x600 100x100+2 columns").facts.rows(Setting{}, drawWall("250x600 100x100+2 columns").Box())
	for n, row := range rows {
		low, high := max(0, row.Low), min(row.High, 250*mm)
		if low >= high {
			require.False(t, stretches("250x600 100x100+2 columns", n)[2].(bool))
			continue
		}
		require.Equal(t, [3]any{low, high, true}, stretches("250x600 100x100+2 columns", n), "row %d", n)
		require.Equal(t, !(row.Low < 120*mm && row.High > 120*mm), stretches("250x600 100x100+2 columns leg=120", n)[2], "row %d", n)
	}
}

// A rim that leaves a joint little by little: bare is what is too far from the course above
// and no more than a strip of the one below, less what the tiles on either side cover.
func TestASlantingEdgeBetween(t *testing.T) {
	s := span{from: 0, to: 1000, v0: 100, v1: 0}
	require.Equal(t, span{from: 200, to: 700}, s.between(30, 80))
	require.Equal(t, span{from: 0, to: 500}, s.between(50, 500))
	require.Zero(t, s.between(120, 200).length())
	require.Zero(t, s.between(30, 80).and(span{from: 800, to: 900}).length())
}

// Law 2: slices claim of a wall nothing that is not there, wherever its rows stand, at the
// ends where they are placed.
func TestSlicesClaimNoMoreThanTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s, got := countedRoom(t)
		z := w.Bounds.zones
		along, across := w.facts.frame.phases(s.Line, s.Edge)
		_, bands := w.Bounds.standingEnds(along, w.Bounds.rows.at(across))
		for _, right := range []bool{false, true} {
			if !z.zoned(right) {
				continue
			}
			var rows []*uneven
			for _, row := range w.facts.rowsFrom(0, across, w.Box()) {
				if z.outline.band(row.Low, row.High) < 0 && !w.facts.mayEnd(row, w.Places.Heads(s.Line)[0]) && !w.facts.touched(row.Low, row.High) {
					rows = append(rows, z.uneven(row))
				}
			}
			bound := z.at(right, w.freeEnd(s, right), along, bands, rows)
			claims(t, w, bound, got)
			claimsNoTerm(t, bound, got)
		}
	})
}
