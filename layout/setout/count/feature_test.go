package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

func point(x, y length.Length) plane.Point { return plane.Point{X: x * mm, Y: y * mm} }

// Seen from an edge, u runs along it and v away from it into the tile, whichever way it faces.
func TestSeenFromAnEdge(t *testing.T) {
	r := plane.Rect{Left: 10, Right: 30, Bottom: 200, Top: 500}
	for f, want := range map[piece.Facing][4]length.Length{
		piece.OnLeft:  {200, 500, 10, 30},
		piece.OnRight: {200, 500, -30, -10},
		piece.Under:   {10, 30, 200, 500},
		piece.Over:    {10, 30, -500, -200},
	} {
		u0, u1, v0, v1 := rectUV(f, r)
		require.Equal(t, want, [4]length.Length{u0, u1, v0, v1})
		low, near := uv(f, plane.Point{X: 10, Y: 200})
		high, far := uv(f, plane.Point{X: 30, Y: 500})
		require.Equal(t, [2]length.Length{min(low, high), max(low, high)}, [2]length.Length{u0, u1}, "a box is that of its corners")
		require.Equal(t, [2]length.Length{min(near, far), max(near, far)}, [2]length.Length{v0, v1})
	}
	at := func(x, y length.Length) plane.Corner { return plane.Corner{Point: plane.Point{X: x, Y: y}} }
	// Round a region against the clock: down its left, along its base, up its right, back along its head.
	for _, c := range []struct {
		a, b plane.Corner
		f    piece.Facing
	}{
		{at(0, 9), at(0, 0), piece.OnLeft}, {at(0, 0), at(9, 0), piece.Under}, {at(9, 0), at(9, 9), piece.OnRight}, {at(9, 9), at(0, 9), piece.Over},
		{at(1, 9), at(0, 0), piece.OnLeft}, {at(0, 0), at(9, 1), piece.Under}, {at(9, 1), at(8, 9), piece.OnRight}, {at(8, 9), at(1, 8), piece.Over},
	} {
		require.Equal(t, c.f, facingOf(c.a, c.b), "%v", c)
		require.Equal(t, piece.EdgeBetween(c.a, c.b).Facing(), facingOf(c.a, c.b), "as the cutter sees it")
	}
	require.Equal(t, plane.Rect{Left: 3, Right: 7, Bottom: 1, Top: 5}, edgeBox(plane.Point{X: 7, Y: 1}, plane.Point{X: 3, Y: 5}))
}

// A corner read at three heights leans one way and then the other: its drift is that of all of
// it, from whichever end it is drawn.
func TestTheDriftOfAnEdgeIsThatOfAllOfIt(t *testing.T) {
	bends := []plane.Point{point(2, 0), point(9, 300), point(-4, 600), point(1, 900)}
	for name, c := range map[string]struct {
		facing    piece.Facing
		low, high length.Length
	}{
		"on the left":  {piece.OnLeft, -4, 9},
		"on the right": {piece.OnRight, -9, 4},
	} {
		for _, back := range []bool{false, true} {
			f := &feature{facing: c.facing}
			for i := range bends[1:] {
				a, b := bends[i], bends[i+1]
				if back {
					a, b = bends[len(bends)-1-i], bends[len(bends)-2-i]
				}
				f.sway(a, b)
			}
			require.Equal(t, []length.Length{c.low * mm, c.high * mm, 13 * mm}, []length.Length{f.low, f.high, f.drift()}, name)
		}
	}
	room, found := sketch("1000x900 300x100+2")
	found.Left.Lean = []survey.Reading{{At: 0, Value: 2 * mm}, {At: 300 * mm, Value: 9 * mm}, {At: 600 * mm, Value: -4 * mm}, {At: 900 * mm, Value: mm}}
	w := NewWall(&room, found, survey.Left)
	left := edgeOf(t, w, int(survey.SideLeft), piece.OnLeft)
	require.Equal(t, []length.Length{-4 * mm, 9 * mm}, []length.Length{left.low, left.high})
	require.Len(t, left.edges, 3)
	for _, e := range left.edges {
		for _, p := range left.spans[e.first:e.last] {
			require.True(t, e.from <= p.from && p.to <= e.to, "a span is of the edge that it is listed under")
		}
	}
}

// Straight edges from their low end, clean where no obstacle comes between them and a distance.
func TestCleanSpansByHand(t *testing.T) {
	f := &feature{facing: piece.OnLeft, deep: 100 * mm, joint: 2 * mm}
	box := func(left, right, bottom, top length.Length) obstacle {
		return obstacle{plane.Rect{Left: left * mm, Right: right * mm, Bottom: bottom * mm, Top: top * mm}, pipe}
	}
	for name, c := range map[string]struct {
		obstacles []obstacle
		want      [][2]length.Length
	}{
		"nothing":                       {nil, [][2]length.Length{{0, 600}}},
		"near":                          {[]obstacle{box(50, 90, 200, 300)}, [][2]length.Length{{0, 200}, {300, 600}}},
		"as far as a tile and a joint":  {[]obstacle{box(102, 150, 200, 300)}, [][2]length.Length{{0, 600}}},
		"a unit nearer":                 {[]obstacle{{plane.Rect{Left: 102*mm - 1, Right: 150 * mm, Bottom: 200 * mm, Top: 300 * mm}, pipe}}, [][2]length.Length{{0, 200}, {300, 600}}},
		"on the other side of it":       {[]obstacle{box(-50, 0, 200, 300)}, [][2]length.Length{{0, 600}}},
		"two that overlap":              {[]obstacle{box(50, 90, 250, 400), box(10, 20, 200, 300)}, [][2]length.Length{{0, 200}, {400, 600}}},
		"one within another":            {[]obstacle{box(50, 90, 100, 500), box(10, 20, 200, 300)}, [][2]length.Length{{0, 100}, {500, 600}}},
		"at the low end":                {[]obstacle{box(50, 90, -100, 50)}, [][2]length.Length{{50, 600}}},
		"beyond the high end":           {[]obstacle{box(50, 90, 550, 900)}, [][2]length.Length{{0, 550}}},
		"over all of it":                {[]obstacle{box(50, 90, -100, 700)}, nil},
		"one that stands at its corner": {[]obstacle{box(0, 90, 600, 600)}, [][2]length.Length{{0, 600}}},
	} {
		e := straight{span: spanOf(piece.OnLeft, point(0, 600), point(0, 0)), mine: -1}
		require.Equal(t, span{0, 600 * mm, 0, 0}, e.span)
		var got [][2]length.Length
		for _, s := range f.clean(&e, c.obstacles, f.pitch()) {
			got = append(got, [2]length.Length{s.from / mm, s.to / mm})
		}
		require.Equal(t, c.want, got, name)
	}
}

// Crests where a pipe may eat the tile: a hole smaller than a tile leaves some of it, a larger
// one may leave none; a window or another edge that crosses nearby makes it unsure.
func TestWhereATileIsCutByTheEdgeAlone(t *testing.T) {
	for name, c := range map[string]struct {
		sketch string
		clear  bool
	}{
		"nothing near":                          {"1000x600 100x60+2", true},
		"a pipe smaller than a tile":            {"1000x600 100x60+2 pipe=520,20,40", true},
		"a pipe larger than a tile":             {"1000x600 100x60+2 pipe=520,20,70", false},
		"a window over it":                      {"1000x600 100x60+2 window=480,100,40,100", false},
		"a window higher than a tile":           {"1000x600 100x60+2 window=480,100,63,100", true},
		"a niche that may come near":            {"1000x600 100x60+2 niche=480..490,100,40..300,100", false},
		"a window's plumb edges at the place":   {"1000x600 100x60+2 window=503,100,40,100", false},
		"a window a tile and two joints beside": {"1000x600 100x60+2 window=605,100,40,100", true},
	} {
		w := drawWall(c.sketch)
		base := edgeOf(t, w, int(survey.SideBase), piece.Under)
		near, clear := w.Bounds.boundary.clearAt(&base, 500*mm, 0)
		require.Equal(t, c.clear, clear && len(near) == 0, name)
	}
}

// Crests stand on the edge: also of one that is shorter than what sealant and a joint take there.
func TestCrestsStandOnTheirEdge(t *testing.T) {
	room, found := sketch("1000x900 100x60+2")
	found.Left.Lean = []survey.Reading{{At: 0, Value: 0}, {At: 300 * mm, Value: 0}, {At: 305 * mm, Value: 2 * mm}, {At: 900 * mm, Value: 0}}
	w := NewWall(&room, found, survey.Left)
	left := edgeOf(t, w, int(survey.SideLeft), piece.OnLeft)
	require.NotEmpty(t, left.crests)
	for _, c := range left.crests {
		require.True(t, left.low <= c.v && c.v <= left.high, "%v is not between %v and %v", c.v, left.low, left.high)
	}
}

// What is known of an end in some of the classes is not known of the end.
func TestAnEndIsKnownInEveryClass(t *testing.T) {
	for certain, known := range map[int]int{0: 0, 1: 0, 2: 2} {
		s := sureOf("1000x600 300x100+2 1/2")
		s.know(&feature{edge: atLeft, low: 2, high: 7}, certain, 2)
		require.Equal(t, known, s.known[0])
		require.Equal(t, length.Length(5*boolean(known > 0)), s.drift[0])
		s.know(&feature{edge: atRight, low: 1, high: 4}, certain, 2)
		require.Equal(t, [2]int{known, known}, s.known)
		s.know(&feature{edge: atBase}, 9, 2)
		require.Equal(t, [2]int{known, known}, s.known, "a base is no end")
	}
}

// How much a rake rises at most over a joint, rounded up: 20 in 1000 over 2, and a few units.
func TestTheSteepestOfAnEdge(t *testing.T) {
	f := &feature{joint: 2 * mm}
	require.Zero(t, f.steepest())
	f.edges = []straight{{span: span{0, 1000 * mm, 0, 20 * mm}}, {span: span{0, 500 * mm, 20 * mm, 20 * mm}}}
	require.Equal(t, 2*mm*20/1000+3, f.steepest())
	f.edges = append(f.edges, straight{span: span{0, 100 * mm, 20 * mm, 0}})
	require.Equal(t, 2*mm*20/100+3, f.steepest(), "the steeper, falling")
}
