package count

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

// Tile 300 and a joint of 2 from 0: where an edge at x falls. Tile 0 is 0–300, tile 1 is
// 302–602.
func TestWhereAnEdgeFallsAmongTiles(t *testing.T) {
	for name, c := range map[string]struct {
		x0, x1 length.Length
		onLeft bool
		tile   int64
		cut    bool
		plain  bool
	}{
		"in a tile":                           {100, 100, true, 0, true, true},
		"leaning within a tile":               {100, 120, true, 0, true, true},
		"on a tile's left edge":               {302, 302, true, 1, false, true},
		"in a joint: the next tile is whole":  {301, 301, true, 1, false, true},
		"on a tile's right edge":              {300, 300, true, 1, false, true},
		"leaning from a tile into the joint":  {299, 301, true, 0, false, false},
		"leaning from a tile into the next":   {299, 303, true, 0, false, false},
		"leaning from a left edge to a right": {302, 602, true, 0, false, false},
		"leaning on a left edge, into a tile": {302, 310, true, 0, false, false},
		"leaning within a joint":              {300, 301, true, 1, false, true},
		"on the right, in a tile":             {400, 400, false, 1, true, true},
		"on the right, in a joint":            {301, 301, false, 0, false, true},
		"on the right, on a left edge":        {302, 302, false, 0, false, true},
		"on the right, on a right edge":       {300, 300, false, 0, false, true},
		"left of it all":                      {-100, -100, true, -1, true, true},
	} {
		s := &steep{onLeft: c.onLeft}
		got, plain := crossing{x0: c.x0 * mm, x1: c.x1 * mm, steep: s}.falls(0, 300*mm, 302*mm)
		require.Equal(t, c.plain, plain, name)
		if plain {
			require.Equal(t, fall{c.tile, c.cut}, got, name)
		}
	}
}

// A row from 100 to 700: 200 of the first tile, 302–602 whole, 96 of the last.
func TestStubsOfARow(t *testing.T) {
	row := bond.Row{First: 0, Width: 300 * mm, Pitch: 302 * mm, High: 100 * mm}
	found := func(in ...crossing) (out []stub, plain bool) {
		plain = stubs(in, row, func(s stub) { out = append(out, s) })
		return out, plain
	}
	left, right := at(100*mm, &steep{edge: atLeft, onLeft: true}), at(700*mm, &steep{edge: atRight})
	got, plain := found(left, right)
	require.True(t, plain)
	require.Len(t, got, 2)
	require.Equal(t, []length.Length{200 * mm, 96 * mm}, []length.Length{got[0].wide, got[1].wide})
	require.Equal(t, []length.Length{100 * mm, 300 * mm, 604 * mm, 700 * mm}, []length.Length{got[0].left, got[0].right, got[1].left, got[1].right})
	var both [2]piece.Edge
	require.Equal(t, []piece.Edge{atLeft}, got[0].edges(&both))

	got, _ = found(left, at(250*mm, &steep{edge: atRight}))
	require.Len(t, got, 1, "from end to end in one tile")
	require.Equal(t, 150*mm, got[0].wide)
	require.Equal(t, []piece.Edge{atLeft, atRight}, got[0].edges(&both))

	got, _ = found(at(0, &steep{onLeft: true}), at(602*mm, &steep{}))
	require.True(t, got[0].whole && got[1].whole, "nothing is cut")

	leaning := crossing{x0: 100 * mm, x1: 110 * mm, v0: 113 * mm, v1: 123 * mm, steep: &steep{edge: atLeft, onLeft: true}}
	got, _ = found(leaning, right)
	require.Equal(t, 177*mm, got[0].wide, "at its narrowest, less the 13 that the next wall's tile hides")
	require.Equal(t, 100*mm, got[0].left, "and at its widest for what it covers")

	_, plain = found(right, left)
	require.False(t, plain, "tile does not begin on the right of its end")
	_, plain = found(crossing{x0: 299 * mm, x1: 303 * mm, steep: &steep{onLeft: true}}, right)
	require.False(t, plain)
}

// Sealant fills a strip no wider than it reaches, where the wall meets something.
func TestStripsThatSealantFills(t *testing.T) {
	for name, c := range map[string]struct {
		wide, reach length.Length
		meets       bool
		sealed      bool
	}{
		"as wide as it reaches": {6, 6, true, true},
		"wider":                 {7, 6, true, false},
		"at a stop":             {6, 6, false, false},
		"no reach left":         {0, 0, true, false},
	} {
		s := stub{left: 0, right: c.wide * mm, wide: c.wide * mm}
		s.cuts[1] = &crossing{steep: &steep{meets: c.meets, reach: c.reach * mm}}
		require.Equal(t, c.sealed, s.sealed(), name)
	}
	require.False(t, (&stub{}).sealed())
}

// Cuts across the short way of a tile cost less than along its long way, and tapers twice
// a straight cut: common practice, no source; merit.md fixes the points.
func TestWhatCutsCost(t *testing.T) {
	straight, taper := at(0, &steep{}), crossing{x1: 5 * mm, steep: &steep{}}
	for name, c := range map[string]struct {
		cuts          [2]*crossing
		along, across length.Length
		points        int
	}{
		"one end of a tile that lies":    {[2]*crossing{&straight}, 300, 100, 1},
		"one side of a tile that stands": {[2]*crossing{&straight}, 100, 300, 2},
		"both ends":                      {[2]*crossing{&straight, &straight}, 300, 100, 1},
		"a taper":                        {[2]*crossing{nil, &taper}, 300, 100, 2},
		"a taper and a straight cut":     {[2]*crossing{&straight, &taper}, 300, 100, 3},
		"nothing":                        {[2]*crossing{}, 300, 100, 0},
	} {
		require.Equal(t, c.points, stub{cuts: c.cuts}.effort(c.along, c.across), name)
	}
}

// A plain row is one in which nothing is but what crosses it: no corner, no rake, no pipe.
func TestWhichRowsArePlain(t *testing.T) {
	for name, c := range map[string]struct {
		sketch    string
		low, high length.Length
		plain     bool
	}{
		"between base and ceiling":       {"1000x600 300x100+2", 100, 200, true},
		"from base to ceiling":           {"1000x600 300x100+2", 0, 600, true},
		"over the ceiling":               {"1000x600 300x100+2", 550, 650, false},
		"beside a window":                {"1000x600 300x100+2 window=400,200,100,300", 150, 250, true},
		"at a window's bottom":           {"1000x600 300x100+2 window=400,200,100,300", 50, 150, false},
		"just under a window":            {"1000x600 300x100+2 window=400,200,100,300", 0, 100, true},
		"at a pipe":                      {"1000x600 300x100+2 pipe=500,300,40", 250, 350, false},
		"clear of a pipe":                {"1000x600 300x100+2 pipe=500,300,40", 400, 500, true},
		"at the rake of a base":          {"1000x600 300x100+2 base=0,8", 4, 104, false},
		"over it":                        {"1000x600 300x100+2 base=0,8", 8, 108, true},
		"within a steep rake":            {"1000x900 300x100+2 base=0,300", 100, 200, false},
		"over a steep rake":              {"1000x900 300x100+2 base=0,300", 300, 400, true},
		"in columns, from left to right": {"1000x600 300x100+2 columns", 0, 300, true},
		"in columns, past the right end": {"1000x600 300x100+2 columns", 800, 1100, false},
		"where a leg's floor is lower":   {"1000x600 300x100+2 leg=150", -100, 0, true},
		"across the rim beside the leg":  {"1000x600 300x100+2 leg=150", -50, 50, false},
	} {
		w := drawWall(c.sketch)
		f := profileOf(w.facts, w.facts.field)
		require.Equal(t, c.plain, f.band(c.low*mm, c.high*mm) >= 0, name)
	}
}

// What crosses a plain row comes in pairs, from left to right, tile between the two of each.
func TestCrossingsComeInPairs(t *testing.T) {
	w := drawWall("1000x600 300x100+2 window=600,200,100,300 niche=200,100,50,400")
	in, ok := profileOf(w.facts, w.facts.field).row(150*mm, 250*mm, nil)
	require.True(t, ok)
	var xs []length.Length
	for i, c := range in {
		require.Equal(t, i%2 == 0, c.onLeft)
		xs = append(xs, c.x0)
	}
	require.Equal(t, millimetres([]length.Length{0, 200, 300, 600, 800, 1000}), xs)
}

// Free openings put on a profile make that of the wall with the openings where they are.
func TestAProfileWithOpeningsIsThatOfTheWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		if w.Places.Overlap(s.Placed) {
			t.Skip("openings overlap")
		}
		f := w.cutter.ground(s.Placed).profile.with(s.Placed)
		want := profileOf(w.facts, w.Found.Shape(w.facts.room.Units, s.Placed))
		for _, row := range w.facts.rows(s, w.Box()) {
			if want.band(row.Low, row.High) < 0 || f.band(row.Low, row.High) < 0 {
				continue
			}
			a, okA := want.row(row.Low, row.High, nil)
			b, okB := f.row(row.Low, row.High, nil)
			require.Equal(t, okA, okB)
			if !paired(b) {
				continue // an opening reaches beyond the wall there: such a row is cut
			}
			require.Len(t, b, len(a))
			for i := range a {
				require.Equal(t, [...]any{a[i].edge, a[i].onLeft, a[i].meets}, [...]any{b[i].edge, b[i].onLeft, b[i].meets})
				for k, its := range [...][2]length.Length{{a[i].x0, b[i].x0}, {a[i].x1, b[i].x1}, {a[i].v0, b[i].v0}, {a[i].v1, b[i].v1}} {
					// A free opening that comes to a slanting edge bends it by one unit.
					require.LessOrEqual(t, (its[0] - its[1]).Abs(), length.Length(boolean(len(w.Free()) > 0)), "crossing %d: %d", i, k)
				}
			}
		}
	})
}

// The frame of the rows: turned twice, everything is as it was; level courses turn nothing.
func TestTheFrameTurnsThereAndBack(t *testing.T) {
	r := plane.Rect{Left: 1, Right: 2, Bottom: 3, Top: 5}
	p, e := plane.Point{X: 7, Y: 9}, piece.EdgeOf(survey.SideHead, piece.Over)
	for _, f := range []frame{{false}, {true}} {
		require.Equal(t, r, f.rect(f.rect(r)))
		require.Equal(t, p, f.point(f.point(p)))
		require.Equal(t, e, f.edge(f.edge(e)))
		for _, g := range []piece.Facing{piece.OnLeft, piece.OnRight, piece.Under, piece.Over} {
			require.Equal(t, g, f.facing(f.facing(g)))
			require.Equal(t, f.edge(piece.EdgeOf(survey.SideHead, g)).Facing(), f.facing(g), "an edge turns as what it faces")
		}
	}
	up := frame{true}
	require.Equal(t, plane.Rect{Left: 3, Right: 5, Bottom: 1, Top: 2}, up.rect(r))
	require.Equal(t, piece.OnRight, up.facing(piece.Over), "the head is at the right end of a column")
	along, across := up.phases(10, 20)
	require.Equal(t, [2]length.Length{10, 20}, [2]length.Length{along, across}, "columns begin at the line")
	along, across = frame{}.phases(10, 20)
	require.Equal(t, [2]length.Length{20, 10}, [2]length.Length{along, across})
}
