package count

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// half bond of tile 300 wide with a joint of 2, a tile of course 0 beginning at 100.
var inHalves = grid{100 * mm, 300 * mm, 302 * mm, []length.Length{0, 151 * mm}}

func TestTilesBeginAndEnd(t *testing.T) {
	for _, c := range []struct {
		x            length.Length
		begins, ends bool
	}{
		{100, true, false}, // course 0
		{402, true, false}, // the next tile of it
		{-202, true, false},
		{251, true, false}, // course 1
		{400, false, true}, // where the first tile ends
		{249, false, true}, // where a tile of course 1 ends: 251 - 2
		{401, false, false},
		{101, false, false},
	} {
		require.Equal(t, c.begins, inHalves.begins(c.x*mm), "begins at %d", c.x)
		require.Equal(t, c.ends, inHalves.ends(c.x*mm), "ends at %d", c.x)
	}
}

func TestWhatAPlaceLeavesOfATile(t *testing.T) {
	for name, c := range map[string]struct {
		x             length.Length
		class         int
		before, after length.Length
	}{
		"in the middle of a tile":   {250, 0, 150, 150},
		"near its left edge":        {110, 0, 10, 290},
		"on its left edge":          {100, 0, 300, 300},
		"on its right edge":         {400, 0, 300, 300},
		"in a joint":                {401, 0, 300, 300},
		"in a tile of course 1":     {300, 1, 49, 251},
		"left of all that is shown": {-100, 0, 102, 198},
	} {
		require.Equal(t, c.before*mm, inHalves.before(c.x*mm, c.class), name)
		require.Equal(t, c.after*mm, inHalves.after(c.x*mm, c.class), name)
	}
}

// Formats.md: an opening is on the joint lines with both edges on lines, or with equal
// cuts of at least half a tile on both sides in every class.
func TestAnOpeningOnTheLines(t *testing.T) {
	stack := grid{0, 300 * mm, 302 * mm, []length.Length{0}}
	for name, c := range map[string]struct {
		g         grid
		low, high length.Length
		off       int
	}{
		"both edges on lines":                        {stack, 300, 604, 0},
		"one edge on a line":                         {stack, 300, 500, 1},
		"equal cuts of 200":                          {stack, 502, 704, 0},
		"equal cuts of 150, just half a tile":        {stack, 452, 754, 0},
		"equal cuts of 149":                          {stack, 451, 755, 1},
		"unequal cuts":                               {stack, 502, 705, 1},
		"on the line of course 0 and of course 1":    {inHalves, 400, 553, 0},
		"equal cuts in half bond":                    {inHalves, 476, 628, 1}, // 76 before it in course 0
		"on lines of the same course, two tiles off": {inHalves, 400, 704, 0},
	} {
		require.Equal(t, c.off, c.g.off(c.low*mm, c.high*mm), name)
	}
}

// randomGrid is small, so that every place of a span can be tried.
func randomGrid(t *rapid.T) grid {
	n := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low, high).Draw(t, name))
	}
	g := grid{first: n("first", -100, 100), tile: n("tile", 5, 60)}
	g.pitch = g.tile + n("joint", 0, 5)
	for k := range rapid.IntRange(1, 3).Draw(t, "classes") {
		g.shifts = append(g.shifts, length.Length(k)*g.pitch/3)
	}
	return g
}

func TestPlacesInASpanAreAllThereAre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := randomGrid(t)
		from := length.Length(rapid.IntRange(-200, 200).Draw(t, "from"))
		span := survey.Span{From: from, To: from + length.Length(rapid.IntRange(0, 150).Draw(t, "long"))}
		add := rapid.SampledFrom([]length.Length{0, g.tile}).Draw(t, "add")
		var want []length.Length
		for x := span.From; x <= span.To; x++ {
			if g.begins(x - add) {
				want = append(want, x)
			}
		}
		require.Equal(t, want, g.within(span, add))
	})
}

// Equal cuts: the tile before the opening keeps in one class what the tile after it
// keeps in another, to a unit, and no other place of the span does so exactly.
func TestEqualCutsAreEqualAndAllThereAre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := randomGrid(t)
		from := length.Length(rapid.IntRange(-200, 200).Draw(t, "from"))
		span := survey.Span{From: from, To: from + length.Length(rapid.IntRange(0, 150).Draw(t, "long"))}
		size := length.Length(rapid.IntRange(1, 200).Draw(t, "size"))
		apart := func(a length.Length) length.Length {
			least := g.pitch
			for s := range g.shifts {
				for u := range g.shifts {
					// Modulo the pitch: where an edge stands in a joint it leaves a tile whole.
					d := length.Mod((a-g.first-g.shifts[s])-(g.tile-(a+size-g.first-g.shifts[u])), g.pitch)
					least = min(least, d, g.pitch-d)
				}
			}
			return least
		}
		got := g.equalCuts(span, size)
		for _, a := range got {
			require.True(t, span.From <= a && a <= span.To)
			require.LessOrEqual(t, apart(a), length.Length(1), "at %d", a)
		}
		for a := span.From; a <= span.To; a++ {
			if apart(a) == 0 {
				require.True(t, slices.Contains(got, a), "at %d", a)
			}
		}
	})
}
