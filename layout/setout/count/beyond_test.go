package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// By hand: one course of tile 300 by 100 with joints of 2, cut to 40 at the left, a sliver. A
// niche 100 wide may come so near that the tile beside the cut one is its neighbour's; nearer
// still, and only how small the piece is stays sure; over the end, and nothing does.
func TestWhatIsCountedBesideAFreeNiche(t *testing.T) {
	type counted struct{ small, runs, work int }
	for name, c := range map[string]struct {
		niche string
		want  counted
	}{
		"none":                                 {"", counted{1, 2, 2}}, // 40 at the left, 50 at the right: 1000 - 950
		"farther than the next tile":           {" niche=341..400,100,20,60", counted{1, 2, 2}},
		"as far as its end: 40 + 300":          {" niche=339..400,100,20,60", counted{1, 1, 1}},
		"in the cut tile, and not at the edge": {" niche=20..400,100,20,60", counted{1, 1, 1}},
		"at the right too":                     {" niche=341..700,100,20,60", counted{1, 1, 1}}, // 800 is in the tile 648 to 948
		"anywhere but at the ends":             {" niche=20..880,100,20,60", counted{1, 0, 0}},
		"so near the edge that sealant fills":  {" niche=6..880,100,20,60", counted{0, 0, 0}},
	} {
		w := drawWall("1000x100 300x100+2" + c.niche)
		s := Setting{Edge: -260 * mm, Placed: w.Outer()}
		m := w.Bounds.Beyond(s)
		require.Equal(t, c.want, counted{m.Slivers + m.Unworkable, len(m.Runs), m.Work}, name)
	}
}

// Where the niche is away, as with none, the rows beyond it are all rows.
func TestWithoutFreeOpeningsBeyondIsTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		if len(w.Free()) > 0 || w.Found.SingleLegs() {
			t.Skip("something is free, or a leg is by itself")
		}
		got, beyond := w.Count(s).Merit, w.Bounds.Beyond(s)
		beyond.Exposed, beyond.Openings = got.Exposed, got.Openings // what hangs on marks that are pinned is left to them
		order, term := w.facts.order.Until(&got, &beyond, merit.Near)
		require.Zero(t, order, "it differs in %s:\n%+v\n%+v", term, got, beyond)
	})
}

// Patterns by hand: how many rows of each class lie between the clean spans of both ends, and
// whether a rake leaves a wedge.
func TestPatternsByHand(t *testing.T) {
	for name, c := range map[string]struct {
		sketch       string
		across       length.Length
		fine, coarse pattern
	}{
		"six courses of 598":            {"1000x598 300x98+2", 0, pattern{6, 6, 0, 0}, pattern{5, 5, 0, 0}},
		"five where they begin at 50":   {"1000x598 300x98+2", 50, pattern{5, 5, 0, 0}, pattern{5, 5, 0, 0}},
		"of half bond three of each":    {"1000x598 300x98+2 1/2", 0, pattern{3, 3, 3, 3, 0, 0}, pattern{2, 2, 2, 2, 0, 0}},
		"two and three":                 {"1000x598 300x98+2 1/2", 50, pattern{3, 2, 3, 2, 0, 0}, pattern{2, 2, 2, 2, 0, 0}}, // 50, 250, 450 and 150, 350
		"one course in a span of few":   {"1000x120 300x98+2", 10, pattern{1, 1, 0, 0}, pattern{1, 1, 0, 0}},
		"none that lies in it":          {"1000x120 300x98+2", 30, pattern{0, 0, 0, 0}, pattern{0, 0, 0, 0}},
		"a rake that turns at the left": {"1000x598 300x98+2 base=0,-50", 0, pattern{6, 6, 1, 0}, pattern{5, 6, 1, 0}},
	} {
		r := drawWall(c.sketch).Bounds.rows
		require.Equal(t, c.fine, r.at(c.across*mm), name)
		if name != "a rake that turns at the left" {
			require.Equal(t, c.coarse, r.coarse(c.across*mm), name)
		}
	}
	require.NotEqual(t, pattern{1, 300}.bytes(), pattern{1, 44}.bytes(), "counts over a byte are told apart")
}

// Under the next wall's tile a crossing stands where it does, and what is seen ends before it.
func TestWhatIsSeenOfACrossing(t *testing.T) {
	w := drawWall("1000x600 300x100+2 gap=3 cover=13")
	in, ok := profileOf(w.facts, w.facts.field).row(100*mm, 200*mm, nil)
	require.True(t, ok)
	require.Equal(t, []length.Length{3 * mm, 3 * mm}, []length.Length{in[0].x0, in[0].v0})
	require.Equal(t, []length.Length{997 * mm, 987 * mm}, []length.Length{in[1].x0, in[1].v0}, "3 off the corner, and 13 of it hidden")
	leans := drawWall("1000x600 300x100+2 gap=3 cover=13 leanright=0,6")
	in, ok = profileOf(leans.facts, leans.facts.field).row(100*mm, 200*mm, nil)
	require.True(t, ok)
	require.Equal(t, []length.Length{998 * mm, 999 * mm, 988 * mm, 989 * mm}, []length.Length{in[1].x0, in[1].x1, in[1].v0, in[1].v1})
}

// Of two ways to cut a leg that with fewer unworkable pieces is better, then with fewer slivers.
func TestTheBetterWayToCutALeg(t *testing.T) {
	pieces := func(unworkable, slivers int) (out []piece.Piece) {
		for range unworkable {
			out = append(out, piece.Piece{Unworkable: true})
		}
		for range slivers {
			out = append(out, piece.Piece{Sliver: true})
		}
		return append(out, piece.Piece{})
	}
	l := &legged{}
	for _, c := range []struct {
		a, b   [2]int
		better bool
	}{
		{[2]int{0, 0}, [2]int{0, 0}, false}, {[2]int{0, 0}, [2]int{0, 1}, true}, {[2]int{0, 1}, [2]int{0, 0}, false},
		{[2]int{0, 5}, [2]int{1, 0}, true}, {[2]int{1, 0}, [2]int{0, 5}, false}, {[2]int{1, 1}, [2]int{1, 2}, true}, {[2]int{1, 2}, [2]int{1, 2}, false},
	} {
		require.Equal(t, c.better, l.better(pieces(c.a[0], c.a[1]), pieces(c.b[0], c.b[1])), "%v", c)
	}
}

// Widths at the ends by course, by hand: what a neighbour shows at the corner.
func TestWidthsOfCoursesByHand(t *testing.T) {
	type widths map[int]length.Length
	for name, c := range map[string]struct {
		sketch      string
		line, edge  length.Length
		left, right widths
	}{
		"half bond":                         {"1000x198 300x98+2 1/2", 0, 0, widths{0: 300, 1: 149}, widths{0: 94, 1: 245}},
		"of which 13 are hidden":            {"1000x198 300x98+2 1/2 cover=13", 0, 0, widths{0: 300, 1: 149}, widths{0: 81, 1: 232}},
		"a corner that leans":               {"1000x198 300x98+2 leanleft=0,99", 0, 0, widths{0: 251, 1: 201}, widths{0: 94, 1: 94}}, // at the top of each course
		"a strip for sealant, and the next": {"1000x198 300x98+2", 0, -296, widths{0: 300, 1: 300}, widths{0: 88, 1: 88}},            // 4 left, tile from 6 on; 912 to 1000
		"a leg and over it":                 {"1000x300 300x98+2 leg=150", -200, 0, widths{0: 150, 1: 150, 2: 300, 3: 300, 4: 300}, widths{2: 94, 3: 94, 4: 94}},
		"from end to end":                   {"250x98 300x98+2", 0, -20, widths{0: 250}, widths{0: 250}},
		"beside a window at the end":        {"1000x198 300x98+2 window=20,100,100,98", 0, 0, widths{0: 300, 1: 20}, widths{0: 94, 1: 94}},
		"an end and a tile a joint off it":  {"1000x98 300x98+2 left=20", 0, 22, widths{0: 300}, widths{0: 72}},
	} {
		w := drawWall(c.sketch)
		left, right := w.EndWidths(Setting{Line: c.line * mm, Edge: c.edge * mm, Placed: w.Outer()})
		for _, pair := range []struct {
			want widths
			got  map[int]length.Length
		}{{c.left, left}, {c.right, right}} {
			got := widths{}
			for course, wide := range pair.got {
				if wide > 0 {
					got[course] = wide / mm
				}
			}
			require.Equal(t, pair.want, got, name)
		}
	}
}

// The starts that are tried lie in one period round the middle, and any other stands for one of
// them a whole number of periods away.
func TestStartsStandForThoseOfTheirPeriod(t *testing.T) {
	for line, period := range map[string]length.Length{"1000x600 300x100+2": 302, "1000x600 300x100+2 1/2": 302, "1000x600 300x100+2 1/3 columns": 906} {
		w := drawWall(line)
		from, every := w.Starts.period()
		require.Equal(t, period*mm, every, line)
		require.Equal(t, 500*mm-every/2, from, line)
		for _, edge := range w.Starts.Tried()[:5] {
			for _, n := range []length.Length{-2, 0, 3} {
				require.True(t, w.Starts.Has(edge+n*every), line)
			}
			require.False(t, w.Starts.Has(edge+7), line)
		}
	}
	pinned, found := sketch("1000x600 300x100+2")
	found.Pin = &survey.StartPin{X: 40 * mm, Is: survey.OnEdge}
	w := NewWall(&pinned, found, survey.Left)
	require.Equal(t, []length.Length{40 * mm}, w.Starts.Tried())
}
