package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// By hand: a niche of 100 that may begin from 200 to 400, its sill from 150 to 250, 80 to 120
// high, may take the wall from 200 to 500 and from 150 to 370. In columns it is turned.
func TestTheHullOfAFreeOpening(t *testing.T) {
	w := drawWall("1000x600 300x100+2 niche=200..400,100,150..250,80..120")
	hull := plane.Rect{Left: 200 * mm, Right: 500 * mm, Bottom: 150 * mm, Top: 370 * mm}
	require.Equal(t, []int{0}, w.Free())
	require.Equal(t, hull, w.facts.hull(0))
	for _, c := range []struct {
		low, high length.Length
		touched   bool
	}{{0, 150, false}, {149, 151, true}, {200, 300, true}, {369, 371, true}, {370, 400, false}} {
		require.Equal(t, c.touched, w.facts.touched(c.low*mm, c.high*mm), "from %d to %d", c.low, c.high)
	}
	require.True(t, w.facts.freeIn(plane.Rect{Left: 499 * mm, Right: 600 * mm, Bottom: 0, Top: 151 * mm}))
	require.False(t, w.facts.freeIn(plane.Rect{Left: 500 * mm, Right: 600 * mm, Bottom: 0, Top: 600 * mm}), "beside it")
	columns := drawWall("1000x600 300x100+2 columns niche=200..400,100,150..250,80..120")
	require.Equal(t, hull.Transposed(), columns.facts.hull(0))
}

// A window that is measured is not free, and takes what it was measured to take; a pipe takes
// its hole with what must be left round it.
func TestWhatAMeasuredOpeningTakes(t *testing.T) {
	w := drawWall("1000x600 300x100+2 window=400,100,200,150 pipe=700,300,40")
	require.Empty(t, w.Free())
	require.False(t, w.facts.touched(0, 600*mm))
	require.Equal(t, plane.Rect{Left: 400 * mm, Right: 500 * mm, Bottom: 200 * mm, Top: 350 * mm}, w.facts.boxOf(0, w.Found.Openings[0], w.Outer()))
	hole := w.facts.boxOf(1, w.Found.Openings[1], w.Outer())
	require.Equal(t, hole.Width(), hole.Height())
	require.Greater(t, hole.Width(), 40*mm)
	require.Equal(t, [2]length.Length{1400 * mm, 600 * mm}, [2]length.Length{hole.Left + hole.Right, hole.Bottom + hole.Top})
}

// Without its free openings a wall has those that are measured, and the setting it was made
// from is not touched.
func TestWithoutFreeOpenings(t *testing.T) {
	w := drawWall("1000x600 300x100+2 niche=200..300,100,150..250,80 window=600,100,200,150")
	p := w.Outer()
	before := p.Openings[0]
	out := w.facts.without(p)
	require.Equal(t, Away, out.Openings[0])
	require.Equal(t, p.Openings[1], out.Openings[1])
	require.Equal(t, before, p.Openings[0])
	require.False(t, w.Places.Overlap(out), "one that is away runs into nothing")
	bare := drawWall("1000x600 300x100+2 window=600,100,200,150")
	s := Setting{Placed: out}
	a, b := w.Count(s).Merit, bare.Count(Setting{Placed: bare.Outer()}).Merit
	order, term := w.facts.order.Until(&a, &b, merit.Openings)
	require.Zero(t, order, "it gives what the wall without it gives, but in %s", term)
}

// Options come in the order of merit; those that are equal stay as they were.
func TestOptionsAreSorted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		order := merit.OrderFor(survey.Prefer{})
		var options []Option
		for i, n := range rapid.SliceOfN(rapid.IntRange(0, 4), 0, 12).Draw(t, "slivers") {
			options = append(options, Option{Pair{Low: length.Length(i)}, merit.Merit{Sight: merit.Sight{Slivers: n}}})
		}
		before := append([]Option(nil), options...)
		Sort(order, options)
		require.ElementsMatch(t, before, options)
		for i := 1; i < len(options); i++ {
			a, b := &options[i-1], &options[i]
			require.True(t, a.Merit.Slivers < b.Merit.Slivers || a.Merit.Slivers == b.Merit.Slivers && a.Low < b.Low)
		}
	})
}

// What was worked out once is the same when it is asked again, and costs no more work.
func TestOptionsAreWorkedOutOnce(t *testing.T) {
	w := drawWall("1000x600 300x100+2 niche=200..400,100,150..250,80..120")
	first := w.Places.Level(0, 40*mm)
	work := w.Work()
	require.Positive(t, work)
	again := w.Places.Level(0, 40*mm)
	require.Equal(t, first, again)
	require.Equal(t, work, w.Work())
	other := w.Places.Upright(0, 40*mm)
	require.Greater(t, w.Work(), work, "its level edges are asked by themselves")
	require.NotEqual(t, first, other)
	w.Spend(17)
	spent := w.Work()
	w.Places.Level(0, 40*mm)
	require.Equal(t, spent, w.Work())
}
