package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"

	"github.com/stretchr/testify/require"
)

// Walls counted by hand. Limits by formats.md for tile 8 thick in millimetres: a sliver is
// under a quarter of the tile, at most 50; unworkable is under 13 (common practice, no
// source). Work: a straight cut across the short way 1, along the long way 2.
func TestWallsCountedByHand(t *testing.T) {
	type want struct {
		left, right        []length.Length // least widths at the ends, by class
		unworkable, sliver int
		fifths, thirds     int
		runs               []piece.Share
		rim, head          []piece.Share
		mirror, bare       length.Length
		work, built        int
	}
	share := func(n, of int64) piece.Share { return piece.Share{Num: n, Den: of} }
	for name, c := range map[string]struct {
		sketch     string
		line, edge length.Length
		want       want
	}{
		// 0–300, 302–602, 604–904 and 94 of the last; six courses of 98 and 2 make up 600, less a joint.
		"full tile at the left": {"1000x598 300x98+2", 0, 0,
			want{left: []length.Length{300}, right: []length.Length{94}, thirds: 1, runs: []piece.Share{share(94, 300)}, mirror: 206, work: 6}},
		// 149 of the first, whole ones from 151 and 453, 247 of the last.
		"a joint in the middle of the first tile": {"1002x598 300x98+2", 0, -151,
			want{left: []length.Length{149}, right: []length.Length{247}, runs: []piece.Share{share(149, 300)}, mirror: 98, work: 12}},
		"tile on the middle": {"1000x598 300x98+2", 0, 350,
			want{left: []length.Length{46}, right: []length.Length{46}, sliver: 12, fifths: 2, thirds: 2,
				runs: []piece.Share{share(46, 300), share(46, 300)}, work: 12}},
		"joint on the middle": {"1000x598 300x98+2", 0, 501,
			want{left: []length.Length{197}, right: []length.Length{197}, work: 12}},
		// Courses 0, 2 and 4 as with a full tile at the left, 1, 3 and 5 half a pitch on: 149 and 245.
		"half bond": {"1000x598 300x98+2 1/2", 0, 0,
			want{left: []length.Length{149, 300}, right: []length.Length{94, 245}, thirds: 1,
				runs: []piece.Share{share(94, 300), share(149, 300)}, mirror: 55 + 55, work: 9}},
		// 8 of each tile are left at the right: nobody cuts that.
		"an unworkable strip": {"914x598 300x98+2", 0, 0,
			want{left: []length.Length{300}, right: []length.Length{8}, unworkable: 6, fifths: 1, thirds: 1,
				runs: []piece.Share{share(8, 300)}, mirror: 292, work: 6}},
		// The strip of 6 is sealed; nothing is cut.
		"a strip for sealant": {"910x598 300x98+2", 0, 2,
			want{left: []length.Length{300}, right: []length.Length{300}}},
		// 49 of the first course stands over the base, 49 of the last under the ceiling.
		"courses cut at base and ceiling": {"904x600 300x98+2", -49, 0,
			want{left: []length.Length{300}, right: []length.Length{300}, head: []piece.Share{share(49, 98)}, rim: []piece.Share{share(49, 98)}, work: 12}},
		// A window that takes whole tiles from two courses, and the joints round them, leaves
		// nothing to cut; one that takes the tiles alone has its edges in the joints.
		"a window on the joint lines": {"904x598 300x98+2 window=300,304,198,202", 0, 0,
			want{left: []length.Length{300}, right: []length.Length{300}}},
		"a window on the edges of tiles": {"904x598 300x98+2 window=302,300,200,198", 0, 0,
			want{left: []length.Length{300}, right: []length.Length{300}, built: 4}},
		// 302–452 and 754–904 are left beside it, half a tile each, in two courses.
		"a window half a tile off": {"904x598 300x98+2 window=452,302,200,198", 0, 0,
			want{left: []length.Length{300}, right: []length.Length{300}, work: 4, built: 4}},
		// 302–342 and 864–904 are left beside it: four slivers in two runs.
		"a window that leaves slivers": {"904x598 300x98+2 window=342,522,200,198", 0, 0,
			want{left: []length.Length{300}, right: []length.Length{300}, sliver: 4, fifths: 2, thirds: 2,
				runs: []piece.Share{share(40, 300), share(40, 300)}, work: 4, built: 4}},
		// Every third course begins 100 on: 98 and 198 are left of its tiles, at either end.
		"third bond": {"898x598 298x98+2 1/3", 0, 0,
			want{left: []length.Length{98, 198, 298}, right: []length.Length{98, 198, 298}, thirds: 2,
				runs: []piece.Share{share(98, 298), share(98, 298)}, work: 8}},
		// Nothing is left between the two, 300 wide, and the courses under and over are whole. Their outer edges have none beyond them.
		"two windows side by side": {"904x598 300x98+2 window=0,300,200,198 window=604,300,200,198", 0, 0,
			want{left: []length.Length{300}, right: []length.Length{300}, built: 6}},
		// Columns with a joint in the middle of the first tile: 149 and 247 as with courses.
		"columns cut at the ends": {"1002x598 300x98+2 columns", 0, -151,
			want{left: []length.Length{149}, right: []length.Length{247}, runs: []piece.Share{share(149, 300)}, mirror: 98, work: 12}},
		// Nothing is cut, in columns too.
		"columns": {"904x598 300x98+2 columns", 0, 0,
			want{left: []length.Length{300}, right: []length.Length{300}}},
	} {
		w := drawWall(c.sketch)
		s := Setting{Line: c.line * mm, Edge: c.edge * mm, Placed: w.Outer()}
		got := w.Count(s)
		m := merit.Merit{Mirror: c.want.mirror * mm, Rim: c.want.rim, Head: c.want.head, Work: c.want.work, Built: c.want.built, Find: got.Merit.Find, Part: true,
			Sight: merit.Sight{Bare: c.want.bare * mm, Unworkable: c.want.unworkable, Slivers: c.want.sliver, Fifths: c.want.fifths, Thirds: c.want.thirds}}
		require.True(t, sameShares(c.want.runs, got.Merit.Runs), "%s: runs %v", name, got.Merit.Runs)
		require.True(t, sameShares(c.want.rim, got.Merit.Rim), "%s: rim %v", name, got.Merit.Rim)
		require.True(t, sameShares(c.want.head, got.Merit.Head), "%s: head %v", name, got.Merit.Head)
		m.Runs, m.Rim, m.Head = got.Merit.Runs, got.Merit.Rim, got.Merit.Head
		require.Equal(t, m, got.Merit, name)
		require.Equal(t, millimetres(c.want.left), got.LeftCuts, name)
		require.Equal(t, millimetres(c.want.right), got.RightCuts, name)
	}
}

func sameShares(a, b []piece.Share) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].Less(b[i]) || b[i].Less(a[i]) {
			return false
		}
	}
	return true
}

func millimetres(list []length.Length) []length.Length {
	out := make([]length.Length, len(list))
	for i, l := range list {
		out[i] = l * mm
	}
	return out
}

// A run at an end of the wall that is under a third of the tile is small there; one at an
// opening is not.
func TestSmallRunsAtTheEnds(t *testing.T) {
	for name, c := range map[string]struct {
		sketch      string
		edge        length.Length
		left, right bool
	}{
		"94 of 300 at the right":   {"1000x598 300x98+2", 0, false, true},
		"46 at both":               {"1000x598 300x98+2", 350, true, true},
		"197 at both":              {"1000x598 300x98+2", 501, false, false},
		"94 in one course of two":  {"1000x598 300x98+2 1/2", 0, false, true},
		"just a third":             {"1004x598 300x98+2", 0, false, true}, // 98
		"a third":                  {"1006x598 300x98+2", 0, false, false},
		"50 beside a window alone": {"2000x598 300x98+2 window=654,300,100,98", -51, false, false},
	} {
		w := drawWall(c.sketch)
		got := w.Count(Setting{Edge: c.edge * mm, Placed: w.Outer()})
		require.Equal(t, c.left, got.SmallLeft, "%s: left", name)
		require.Equal(t, c.right, got.SmallRight, "%s: right", name)
	}
}

// What two walls that face each other differ by is in whole marks.
func TestFacingWallsDiffer(t *testing.T) {
	room, _ := sketch("1000x600 300x100+2")
	require.Equal(t, 30*mm, Differ(&room, millimetres([]length.Length{100, 200}), millimetres([]length.Length{110, 180})))
	require.Equal(t, length.Length(0), Differ(&room, []length.Length{100 * mm}, []length.Length{100*mm + 959}), "less than a mark")
	require.Equal(t, 10*mm, Differ(&room, millimetres([]length.Length{100, 200}), millimetres([]length.Length{110})), "of unlike bonds, class by class as far as both go")
}

// Widths by course, for what neighbouring walls show at a corner.
func TestWidthsAtTheEndsByCourse(t *testing.T) {
	w := drawWall("1000x198 300x98+2 1/2")
	left, right := w.EndWidths(Setting{Placed: w.Outer()})
	require.Equal(t, map[int]length.Length{0: 300 * mm, 1: 149 * mm}, left)
	require.Equal(t, map[int]length.Length{0: 94 * mm, 1: 245 * mm}, right)
	c := w.Count(Setting{Placed: w.Outer()})
	again, _ := w.Widths(&c)
	require.Equal(t, left, again)
}
