package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plane"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// By hand: columns of 100 and joints of 10 over a tub whose gap ends at 3; sealant fills 3 more.
// Where every column begins 10 over the tub all of the rim is bare, the last column's too, which
// the corner cuts.
func TestARimIsBareUnderEveryColumn(t *testing.T) {
	w := drawWall("480x546 100x100+10 columns gap=3")
	s := Setting{Line: 10 * mm, Edge: 3 * mm, Placed: w.Outer()}
	z, whole := w.Bounds.zones, 0
	var ends []bareEnd
	for _, row := range w.facts.rows(s, w.Box()) {
		if _, _, one := z.outline.only(row); one {
			ends, whole = z.bareEnds(ends, row), whole+1
		}
	}
	require.Equal(t, 5, whole, "four columns, and what the corner leaves of the fifth")
	claimed := w.cutter.tally()
	claimed.bareEnds(ends, 0)
	got := w.Count(s).Merit.Bare
	require.Equal(t, 474*mm, got, "the rim from gap to gap")
	require.Positive(t, claimed.sights[0].Bare)
	require.LessOrEqual(t, claimed.sights[0].Bare, got)
	require.GreaterOrEqual(t, claimed.sights[0].Bare, got-5*20*mm, "but what the columns beside may cover")
}

// A niche that may stand beside an end lets nothing be said of what is bare there; one that
// stays away from it does.
func TestWhatMayTakeOfABoundary(t *testing.T) {
	near := drawWall("996x546 100x100+10 gap=3 niche=5..105,100,100..300,100").Bounds.zones
	far := drawWall("996x546 100x100+10 gap=3 niche=305..405,100,100..300,100").Bounds.zones
	left := plane.Rect{Left: 3 * mm, Right: 3 * mm, Bottom: 150 * mm, Top: 250 * mm}
	require.True(t, near.mayTake(left))
	require.False(t, far.mayTake(left))
	left.Bottom, left.Top = 450*mm, 540*mm
	require.False(t, near.mayTake(left), "above all places of it")

	bare := func(line string) (claimed, got length.Length) {
		w := drawWall(line)
		s := Setting{Line: 3 * mm, Edge: 10 * mm, Placed: placedAt(w, 350, 150, 450, 250)}
		return w.Bounds.Plainly(s.Line, s.Edge).Bare, w.Count(s).Merit.Bare
	}
	claimed, got := bare("996x546 100x100+10 gap=3 niche=305..405,100,100..300,100")
	require.Equal(t, 500*mm, claimed, "five courses, though the niche may touch three of them")
	require.GreaterOrEqual(t, got, claimed)
	claimed, _ = bare("996x546 100x100+10 gap=3 niche=5..405,100,100..300,100")
	require.Less(t, claimed, 500*mm)
}

// Law 2: what rows are said to leave bare by themselves is bare in every set-out.
func TestBareEndsClaimNoMoreThanTheCount(t *testing.T) {
	claims := 0
	rapid.Check(t, func(t *rapid.T) {
		w, s, got := countedRoom(t)
		heads := w.Places.Heads(s.Line)
		var ends []bareEnd
		for _, row := range w.facts.rows(s, w.Box()) {
			low := heads[0]
			for _, y := range heads {
				low = min(low, y)
			}
			if !w.facts.mayEnd(row, low) {
				ends = w.Bounds.zones.bareEnds(ends, row)
			}
		}
		claimed := w.cutter.tally()
		claimed.bareEnds(ends, 0)
		for low, has := range [...]length.Length{got.Bare, got.OutOfSight.Bare} {
			if claimed.sights[low].Bare > 0 {
				claims++
			}
			require.LessOrEqual(t, claimed.sights[low].Bare, has+rounded(w), "out of sight: %d", low)
		}
	})
	require.Positive(t, claims, "no room had bare ends")
}

// A bound that was too high: where a leg's last course is so low that its corner with the floor, which is out of
// sight, is all of it that is bare.
func TestABareCornerWithTheFloorIsOutOfSight(t *testing.T) {
	w := drawWall("300x600 41x40+6 1/2 gap=3 leg=30")
	for line := range length.Length(46) {
		for edge := range length.Length(94) {
			s := Setting{Line: line * mm, Edge: edge * mm, Placed: w.Outer()}
			require.LessOrEqual(t, w.Bounds.Plainly(s.Line, s.Edge).Bare, w.Count(s).Merit.Bare, "line %d, start %d", line, edge)
		}
	}
}

// Another: where the tile of the next wall hides the end of a rim that falls, what is a strip for sealant of what is
// seen of the last column is a larger piece behind it.
func TestARimThatFallsOnBehindTheNextWallsTile(t *testing.T) {
	w := drawWall("338x600 40x46+2 columns gap=3 cover=13 base=0,-20")
	for line := 35 * mm; line < 38*mm; line += mm / 8 {
		s := Setting{Line: line, Placed: w.Outer()}
		require.LessOrEqual(t, w.Bounds.Plainly(s.Line, s.Edge).Bare, w.Count(s).Merit.Bare, "line %d", line)
	}
}
