package count

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Places for a niche 304 wide before a joint line at 300 and one at 604, worked by hand.
func TestPlacesOfANicheByHand(t *testing.T) {
	stack := grid{0, 300 * mm, 302 * mm, []length.Length{0}}
	one := func(x length.Length) survey.Span { return survey.Span{From: x * mm, To: x * mm} }
	high := 590 * mm
	wish := 2 * 440 * mm
	for name, c := range map[string]struct {
		s     sought
		holds []Pair
		lacks []Pair
	}{
		"on both lines, and at the limits of its range": {
			sought{tiles: stack, low: survey.Span{From: 250 * mm, To: 350 * mm}, size: one(304), tape: mm},
			[]Pair{{300 * mm, 604 * mm}, {250 * mm, 554 * mm}, {350 * mm, 654 * mm}}, []Pair{{310 * mm, 614 * mm}}},
		"with equal cuts": { // 298 wide: 303..601 leaves 1 and 1
			sought{tiles: stack, low: survey.Span{From: 290 * mm, To: 350 * mm}, size: one(298), tape: mm},
			[]Pair{{303 * mm, 601 * mm}}, nil},
		"from line to line, where its size is free": {
			sought{tiles: stack, low: survey.Span{From: 250 * mm, To: 350 * mm}, size: survey.Span{From: 250 * mm, To: 320 * mm}, tape: mm},
			[]Pair{{300 * mm, 604 * mm}, {300 * mm, 550 * mm}, {300 * mm, 620 * mm}}, nil},
		"with the high edge pinned": {
			sought{tiles: stack, low: survey.Span{From: 250 * mm, To: 350 * mm}, size: survey.Span{From: 250 * mm, To: 320 * mm}, high: &high, tape: mm},
			[]Pair{{300 * mm, 590 * mm}}, []Pair{{300 * mm, 604 * mm}}},
		"with its middle where it is wished": {
			sought{tiles: stack, low: survey.Span{From: 250 * mm, To: 350 * mm}, size: one(304), wish: &wish, tape: mm},
			[]Pair{{288 * mm, 592 * mm}}, nil},
		"with the far edge between studs": {
			sought{tiles: stack, low: survey.Span{From: 250 * mm, To: 350 * mm}, size: survey.Span{From: 250 * mm, To: 320 * mm}, far: survey.Span{From: 560 * mm, To: 580 * mm}, tape: mm},
			[]Pair{{300 * mm, 560 * mm}, {300 * mm, 580 * mm}, {300 * mm, 570 * mm}, {310 * mm, 560 * mm}, {260 * mm, 580 * mm}}, []Pair{{300 * mm, 604 * mm}}},
		"where it is measured": {
			sought{tiles: stack, low: one(310), size: one(200), tape: mm}, []Pair{{310 * mm, 510 * mm}}, []Pair{{300 * mm, 500 * mm}}},
		"with a far edge that cannot be reached": { // as when a pin stands beyond: kept as it is
			sought{tiles: stack, low: one(310), size: one(200), far: survey.Span{From: 900 * mm, To: 950 * mm}, tape: mm}, []Pair{{310 * mm, 510 * mm}}, nil},
	} {
		got := c.s.pairs()
		for _, p := range c.holds {
			require.Contains(t, got, p, name)
		}
		for _, p := range c.lacks {
			require.NotContains(t, got, p, name)
		}
	}
}

// Every place listed is one that the ranges allow; each once, in order. Where a place of
// the ranges has both edges on joint lines it is listed, and so are the limits.
func TestPlacesStandWhereTheyMay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) length.Length {
			return length.Length(rapid.IntRange(low, high).Draw(t, name))
		}
		g := randomGrid(t)
		s := sought{tiles: g, tape: n("tape", 1, 9)}
		s.low.From = n("low", -100, 100)
		s.low.To = s.low.From + n("low range", 0, 80)
		s.size.From = n("size", 1, 90)
		s.size.To = s.size.From + n("size range", 0, 40)
		if rapid.Bool().Draw(t, "far") {
			s.far.From = s.low.From + s.size.From + n("far", 0, 20)
			s.far.To = min(s.far.From+n("far range", 0, 60), s.low.To+s.size.To)
			s.far.From = min(s.far.From, s.far.To)
		}
		got := s.pairs()
		require.NotEmpty(t, got)
		require.True(t, slices.IsSortedFunc(got, Pair.compare))
		require.Len(t, slices.Compact(slices.Clone(got)), len(got))
		far := func(p Pair) bool { return s.far == (survey.Span{}) || s.far.From <= p.High && p.High <= s.far.To }
		reached := slices.ContainsFunc(got, far)
		for _, p := range got {
			require.True(t, s.fits(p.Low, p.High), "%v", p)
			require.True(t, far(p) || !reached, "%v", p)
		}
		for a := s.low.From; a <= s.low.To; a++ {
			for b := a + s.size.From; b <= a+s.size.To; b++ {
				p := Pair{a, b}
				if reached && far(p) && g.ends(a) && g.begins(b) {
					require.Contains(t, got, p, "from line to line")
				}
			}
		}
	})
}
