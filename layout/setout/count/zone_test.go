package count

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What is sure beside a free end where it stands is no more than the count with it there.
func TestBesideAFreeEndNoMoreIsClaimedThanTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s, got := countedRoom(t)
		z := w.Bounds.zones
		along, across := w.facts.frame.phases(s.Line, s.Edge)
		_, bands := w.Bounds.standingEnds(along, w.Bounds.rows.at(across))
		for _, right := range []bool{false, true} {
			if !z.zoned(right) {
				continue
			}
			at := w.freeEnd(s, right)
			bound := z.at(right, at, along, bands, nil)
			claims(t, w, bound, got)
			claimsNoTerm(t, bound, got)
			best := w.Bounds.movable(right, along, bands, nil)
			order, term := w.facts.order.Compare(&bound, &best)
			if !w.facts.frame.plumb {
				bound.Exposed = w.Marks.ExposedAt(s.Edge, at, right)
				order, term = w.facts.order.Compare(&bound, &best)
			}
			require.GreaterOrEqual(t, order, 0, "the best place of all gives no less than this one in %s", term)
		}
	})
}

// freeEnd is where a free end of the rows stands in a setting.
func (w *Wall) freeEnd(s Setting, right bool) length.Length {
	switch {
	case w.facts.frame.plumb:
		return s.Placed.Head
	case right:
		return s.Placed.Right
	}
	return s.Placed.Left
}

// By hand: 300 by 100 with joints of 2 from 0, the right end free between 700 and 800. At
// 720 each of the five plain courses loses its tile 604–904 to 116.
func TestAFreeEndByHand(t *testing.T) {
	w := drawWall("800x508 300x100+2 right=700..800")
	b := w.Bounds
	_, bands := b.standingEnds(0, b.rows.at(0))
	at := func(x length.Length) (work, slivers, runs int) {
		m := b.zones.at(true, x*mm, 0, bands, nil)
		return m.Work, m.Slivers + m.Unworkable, len(m.Runs)
	}
	work, slivers, runs := at(720)
	require.Equal(t, []int{5, 0, 1}, []int{work, slivers, runs}, "116 of 300 in five courses")
	work, slivers, runs = at(800)
	require.Equal(t, []int{5, 0, 0}, []int{work, slivers, runs}, "196 is more than half")
	thin := drawWall("800x508 300x100+2 right=610..800")
	_, bands = thin.Bounds.standingEnds(0, thin.Bounds.rows.at(0))
	m := thin.Bounds.zones.at(true, 610*mm, 0, bands, nil)
	require.Equal(t, 5, m.Unworkable, "6 of each")
	low := drawWall("800x100 300x100+2 right=700..800")
	_, bands = low.Bounds.standingEnds(0, low.Bounds.rows.at(0))
	require.Equal(t, 1, low.Bounds.zones.at(true, 720*mm, 0, bands, nil).Work, "of a wall one course high that course")
}

// Beside a free end nothing is claimed of courses into which a free opening or a pipe may
// come within two tiles of it: of the five, those that are clear.
func TestWhatComesNearAFreeEnd(t *testing.T) {
	for name, c := range map[string]struct {
		beside  string
		courses int
	}{
		"nothing":                         {"", 5},
		"a niche that may move":           {" niche=300..320,200,110,80", 0}, // all of the band from base to ceiling
		"a niche far enough":              {" niche=20..40,40,110,80", 5},    // 700 - 604 = 96
		"a window is an edge that stands": {" window=300,200,110,80", 4},     // course 1 is none of the plain ones
		"a pipe":                          {" pipe=400,150,20", 4},           // in course 1
		"a pipe in a joint":               {" pipe=400,202,20", 3},           // in courses 1 and 2
		"a pipe partly beyond the base":   {" pipe=400,0,20", 4},
	} {
		w := drawWall("800x508 300x100+2 right=700..800" + c.beside)
		b := w.Bounds
		_, bands := b.standingEnds(0, b.rows.at(0))
		m := b.zones.at(true, 720*mm, 0, bands, nil)
		require.Equal(t, c.courses, m.Work, name)
		heights := b.zones.outline.heights
		require.Equal(t, []length.Length{0, 508 * mm}, []length.Length{heights[0], heights[len(heights)-1]}, "%s: no band lies off the wall", name)
	}
}

// Which side of the rows moves, and where it may stand.
func TestWhatTheRowsRunInto(t *testing.T) {
	for name, c := range map[string]struct {
		sketch      string
		left, right bool
	}{
		"corners":                   {"1000x600 300x100+2", false, false},
		"a free end at the left":    {"1000x600 300x100+2 left=0..80", true, false},
		"a free end at the right":   {"1000x600 300x100+2 right=900..1000", false, true},
		"a free head over courses":  {"1000x600 300x100+2 head=500..600", false, false},
		"a free head over columns":  {"1000x600 300x100+2 columns head=500..600", false, true},
		"a free end beside columns": {"1000x600 300x100+2 columns left=0..80", false, false},
		"a stop that was measured":  {"1000x600 300x100+2 left=80", false, false},
	} {
		z := drawWall(c.sketch).Bounds.zones
		require.Equal(t, []bool{c.left, c.right}, []bool{z.zoned(false), z.zoned(true)}, name)
	}
	z := drawWall("1000x600 300x100+2 columns head=500..600").Bounds.zones
	require.Equal(t, survey.Span{From: 500 * mm, To: 600 * mm}, z.stops(true))
}

// Where tile runs from a free end to what next crosses the rows, by hand.
func TestWhereTileRunsFromAFreeEnd(t *testing.T) {
	for name, c := range map[string]struct {
		sketch       string
		right        bool
		x, low, high length.Length
		from, to     length.Length // both 0 where nothing is sure
	}{
		"to the other corner":                            {"1000x600 300x100+2 left=0..200", false, 40, 100, 200, 40, 1000},
		"from the other corner":                          {"1000x600 300x100+2 right=800..1000", true, 960, 100, 200, 0, 960},
		"to a window":                                    {"1000x600 300x100+2 left=0..80 window=300,100,200,100", false, 50, 200, 300, 50, 300},
		"from a window":                                  {"1000x600 300x100+2 right=900..1000 window=300,100,200,100", true, 950, 200, 300, 400, 950},
		"past a window over it":                          {"1000x600 300x100+2 left=0..80 window=300,100,200,100", false, 50, 100, 200, 50, 1000},
		"of a leg, to the front of the tub":              {"1000x600 300x100+2 left=0..200 leg=150", false, 100, -150, -50, 100, 150},
		"of a leg that ends before it":                   {"1000x600 300x100+2 left=0..200 leg=150", false, 180, -150, -50, 0, 0},
		"over that leg":                                  {"1000x600 300x100+2 left=0..200 leg=150", false, 180, 50, 150, 180, 1000},
		"to an end that leans, a tile and a joint off":   {"390x600 300x100+2 left=0..80 leanright=0,-8", false, 80, 100, 200, 80, 6080},
		"to one that leans, less off":                    {"389x600 300x100+2 left=0..80 leanright=0,-8", false, 80, 100, 200, 0, 0},
		"to one that leans away, a tile and a joint off": {"382x600 300x100+2 left=0..80 leanright=0,30", false, 80, 100, 200, 80, 6080},
		"to one that leans away, less off":               {"381x600 300x100+2 left=0..80 leanright=0,30", false, 80, 100, 200, 0, 0},
		"from one that leans, a tile and a joint off":    {"1000x600 300x100+2 right=310..1000 leanleft=0,8", true, 920, 100, 200, -5080, 920},
		"from one that leans, less off":                  {"1000x600 300x100+2 right=309..1000 leanleft=0,8", true, 920, 100, 200, 0, 0},
		"columns, from the base to a free head":          {"1000x600 100x300+2 columns head=500..600", true, 550, 100, 200, 0, 550},
		"columns over a window":                          {"1000x600 100x300+2 columns head=500..600 window=80,150,200,100", true, 550, 100, 200, 300, 550},
		"columns in which a window is":                   {"1000x600 100x300+2 columns head=500..600 window=120,50,450,100", true, 520, 125, 165, 0, 0}, // its head stands over the free head
	} {
		z := drawWall(c.sketch).Bounds.zones
		var pair [2]crossing
		ok := z.interval(c.right, c.x*mm, c.low*mm, c.high*mm, &pair)
		require.Equal(t, c.from != c.to, ok, name)
		if ok {
			require.Equal(t, []length.Length{c.from, c.to}, []length.Length{pair[0].x0 / mm, pair[1].x0 / mm}, name)
			require.Equal(t, []bool{true, false}, []bool{pair[0].onLeft, pair[1].onLeft}, name)
		}
	}
}

// Bands end where a free head may come down to, and with columns where the free ends may.
func TestBandsEndWhereFreeMarksMayCome(t *testing.T) {
	bands := func(line string) (out [][2]length.Length) {
		z := drawWall(line).Bounds.zones
		for i := range z.outline.heights[1:] {
			low, high := z.band(i)
			out = append(out, [2]length.Length{low / mm, high / mm})
		}
		return out
	}
	require.Equal(t, [][2]length.Length{{0, 600}}, bands("1000x600 300x100+2 left=0..80"))
	require.Equal(t, [][2]length.Length{{0, 500}}, bands("1000x600 300x100+2 left=0..80 head=500..600"))
	require.Equal(t, [][2]length.Length{{0, 200}, {200, 500}, {550, 550}}, bands("1000x600 300x100+2 left=0..80 head=500..600 window=300,100,200,350"), "what is over it is none")
	require.Equal(t, [][2]length.Length{{80, 920}}, bands("1000x600 300x100+2 columns left=0..80 right=920..1000 head=500..600"))
}

// How near an edge is to a free end that no clean span of it is counted: within a tile and a
// joint of where the end may stand.
func TestWhatIsTooNearAFreeEnd(t *testing.T) {
	z := drawWall("1000x600 300x100+2 left=0..80 right=900..1000").Bounds.zones
	for x, short := range map[length.Length]bool{381: true, 382: false, 500: false} { // 80 + 302
		require.Equal(t, short, z.short(false, x*mm), "from the left, at %d", x)
	}
	for x, short := range map[length.Length]bool{599: true, 598: false, 500: false} { // 900 - 302
		require.Equal(t, short, z.short(true, x*mm), "from the right, at %d", x)
	}
	row := z.w.rows(Setting{}, z.w.box())[2]
	for tile, comes := range map[int64]bool{-1: false, 0: true, 1: false, 2: true, 3: true} { // tile -1 ends at -2, tile 2 reaches to 904
		require.Equal(t, comes, z.mayCome(&stub{tile: tile}, row), "tile %d", tile)
	}
}

// How much of the edge that a row runs into across from a free end is bare where its tile is too
// far off: the course, less what the tile over it and under it covers beyond a joint.
func TestWhatAFrontLeavesBare(t *testing.T) {
	z := drawWall("1000x600 300x100+2 left=0..80 leg=150").Bounds.zones
	step := piece.EdgeOf(survey.SideBase+1, piece.OnRight)
	row := bond.Row{First: 0, Width: 300 * mm, Pitch: 302 * mm, High: 100 * mm}
	for name, c := range map[string]struct {
		edge        piece.Edge
		x, reach    length.Length
		meets, tile bool
		bare, low   length.Length
	}{
		"no tile in the row":            {step, 301, 6, true, false, 100 - 2*(6-2), 0},
		"sealant reaches no joint":      {step, 301, 1, true, false, 100, 0},
		"no reach left":                 {step, 301, -2, true, false, 100, 0},
		"it meets nothing":              {step, 301, 6, false, false, 0, 0},
		"tile that is near enough":      {step, 250, 6, true, true, 0, 0},
		"tile that ends a strip before": {step, 306, 6, true, true, 0, 0}, // 4 of the next one is a strip, and the one before it ends 6 off
		"tile that is farther off":      {step, 309, 6, true, true, 0, 0}, // 7 of the next are left: a piece
		"beside what is out of sight":   {atBase, 301, 6, true, false, 0, 92},
	} {
		s := sureOf("1000x600 300x100+2 leg=150")
		e := at(c.x*mm, &steep{edge: c.edge, meets: c.meets, reach: c.reach * mm})
		var found []stub
		if c.tile {
			found = []stub{{}}
		}
		z.front(&s, &e, found, row)
		require.Equal(t, []length.Length{c.bare * mm, c.low * mm}, []length.Length{s.m.Bare, s.m.OutOfSight.Bare}, name)
	}
	far := at(310*mm, &steep{edge: step, meets: true, reach: 6 * mm})
	wide := bond.Row{First: 0, Width: 300 * mm, Pitch: 320 * mm, High: 100 * mm}
	s := sureOf("1000x600 300x100+2 leg=150")
	z.front(&s, &far, []stub{{}}, wide)
	require.Equal(t, 92*mm, s.m.Bare, "10 off, in a joint of 20")
}
