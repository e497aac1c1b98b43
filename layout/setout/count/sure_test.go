package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func sureOf(line string) sure {
	w := drawWall(line)
	return sure{w: w.facts, meter: w.meter}
}

// Alike runs are one, with the least of both; those of another class or edge stay apart.
func TestAlikeRunsAreMerged(t *testing.T) {
	s := sureOf("1000x600 300x100+2")
	one := func(class int, least length.Length, edges ...piece.Edge) Run {
		return Run{Edges: edges, Class: class, Least: least * mm}
	}
	s.runs = []Run{one(0, 90, atLeft), one(1, 50, atLeft), one(0, 70, atLeft), one(0, 80, atRight), one(0, 10, atLeft, atRight), one(0, 75, atLeft)}
	s.merge()
	require.Equal(t, []Run{one(0, 70, atLeft), one(1, 50, atLeft), one(0, 80, atRight), one(0, 10, atLeft, atRight)}, s.runs)
}

// Each piece is graded by the limit of its direction: of tile 300 by 100 that is 50 and 25 for
// a sliver, 13 for what nobody can work (formats.md).
func TestPiecesThatAreSureAreGraded(t *testing.T) {
	for name, c := range map[string]struct {
		sketch             string
		facing             piece.Facing
		size               length.Length
		low                bool
		unworkable, sliver int
	}{
		"50 wide":                       {"1000x600 300x100+2", piece.OnLeft, 50, false, 0, 0},
		"49 wide":                       {"1000x600 300x100+2", piece.OnRight, 49, false, 0, 3},
		"13 wide":                       {"1000x600 300x100+2", piece.OnRight, 13, false, 0, 3},
		"12 wide":                       {"1000x600 300x100+2", piece.OnLeft, 12, false, 3, 0},
		"25 high":                       {"1000x600 300x100+2", piece.Under, 25, false, 0, 0},
		"24 high":                       {"1000x600 300x100+2", piece.Over, 24, false, 0, 3},
		"24 high, out of sight":         {"1000x600 300x100+2", piece.Under, 24, true, 0, 3},
		"24 up in columns, from an end": {"1000x600 300x100+2 columns", piece.OnLeft, 24, false, 0, 3},
		"49 wide in columns":            {"1000x600 300x100+2 columns", piece.Under, 49, false, 0, 3},
	} {
		s := sureOf(c.sketch)
		s.grade(c.low, c.facing, c.size*mm, 3)
		got, other := &s.m.Sight, &s.m.OutOfSight
		if c.low {
			got, other = other, got
		}
		require.Equal(t, merit.Sight{Unworkable: c.unworkable, Slivers: c.sliver}, *got, name)
		require.Zero(t, *other, name)
	}
}

// A cut costs 1 across the tile, 2 along it, a taper 2 either way: merit.md, term 12.
func TestWhatACutAlongAnEdgeCosts(t *testing.T) {
	for name, c := range map[string]struct {
		sketch string
		facing piece.Facing
		taper  bool
		cost   int
	}{
		"the end of a tile that lies":       {"1000x600 300x100+2", piece.OnLeft, false, 1},
		"its underside":                     {"1000x600 300x100+2", piece.Under, false, 2},
		"its end, aslant":                   {"1000x600 300x100+2", piece.OnRight, true, 2},
		"the side of a tile that stands":    {"1000x600 100x300+2", piece.OnRight, false, 2},
		"its head":                          {"1000x600 100x300+2", piece.Over, false, 1},
		"a square tile":                     {"1000x600 100x100+2", piece.Over, false, 1},
		"columns run up: the side of one":   {"1000x600 300x100+2 columns", piece.Under, false, 1},
		"columns run up: the foot of one":   {"1000x600 300x100+2 columns", piece.OnLeft, false, 2},
		"columns of tile that stands, foot": {"1000x600 100x300+2 columns", piece.OnLeft, false, 1},
	} {
		require.Equal(t, c.cost, drawWall(c.sketch).facts.effort(c.facing, c.taper), name)
	}
}

// Bare slots: each as long as its tile with the joints beside it, less what the tiles on either
// side cover, a joint of it or as far as sealant reaches.
func TestHowMuchOfASlotIsBare(t *testing.T) {
	for name, c := range map[string]struct {
		joint, reach length.Length
		low          bool
		bare         length.Length // of one slot, the tile 100 broad
	}{
		"a joint of 2, sealant reaches 6": {2, 6, false, 100 + 4 - 12},
		"a joint of 10":                   {10, 6, false, 100},
		"no reach left":                   {3, 0, false, 100},
		"out of sight":                    {3, 0, true, 100},
	} {
		s := sureOf("1000x600 300x100+2 leg=150")
		edge := atLeft
		if c.low {
			edge = atBase
		}
		s.bare(&feature{edge: edge, broad: 100 * mm, joint: c.joint * mm, reach: c.reach * mm}, 3)
		got := [2]length.Length{s.m.Bare, s.m.OutOfSight.Bare}
		require.Equal(t, 3*c.bare*mm, got[boolean(c.low)], name)
		require.Zero(t, got[1-boolean(c.low)], name)
	}
}

// Rows that were added up once are added again as often as they stand in a pattern.
func TestRowsAreAddedAsOftenAsTheyStand(t *testing.T) {
	s := sureOf("1000x600 300x100+2")
	s.m = merit.Merit{Work: 3, Sight: merit.Sight{Bare: 7, Unworkable: 1, Slivers: 2}, OutOfSight: merit.Sight{Bare: 5, Unworkable: 4, Slivers: 6}}
	s.runs = []Run{{Edges: []piece.Edge{atLeft}, Least: 9}}
	row := s.rows(17)
	require.Equal(t, 17, row.pattern)
	sum := sureOf("1000x600 300x100+2")
	sum.add(&row, 2)
	sum.add(&row, 1)
	require.Equal(t, merit.Merit{Work: 9, Sight: merit.Sight{Bare: 21, Unworkable: 3, Slivers: 6}, OutOfSight: merit.Sight{Bare: 15, Unworkable: 12, Slivers: 18}}, sum.m)
	require.Len(t, sum.runs, 2)
}

// Slots by hand: five of them along a left end that cuts tile 100 deep to 40.
func TestSlotsOfAnEnd(t *testing.T) {
	for name, c := range map[string]struct {
		first  length.Length
		v0, v1 length.Length
		meets  bool
		least  length.Length // and a few units
		small  int
		work   int
		bare   bool
	}{
		"cut to 40":                        {-60, 0, 0, true, 40, 0, 5, false},
		"cut to 20, a sliver":              {-80, 0, 0, true, 20, 5, 5, false},
		"leaning to between 40 and 46":     {-60, 0, 6, true, 41, 0, 10, false}, // 34 at least, and 6 of 600 in a period of 102
		"on a tile's edge":                 {0, 0, 0, true, -1, 0, 0, false},
		"a strip for sealant":              {-95, 0, 0, true, -1, 0, 0, true}, // 5 left, and 7 to the next tile
		"leaning from a tile into a joint": {-97, 0, 6, true, -1, 0, 0, false},
	} {
		s := sureOf("1000x600 100x100+2")
		f := corner(c.meets, 0)
		f.edge, f.broad = atLeft, 100*mm
		tl := f.tiled(c.first * mm)
		s.slots(&tl, span{0, 600 * mm, c.v0 * mm, c.v1 * mm}, 5, 102*mm)
		if c.least < 0 {
			require.Equal(t, absent, tl.least, name)
		} else {
			require.InDelta(t, float64(c.least*mm), float64(tl.least), float64(7*mm)*float64(boolean(c.v0 != c.v1))+1, name)
		}
		require.Equal(t, []any{c.small, c.work, c.bare}, []any{s.m.Slivers + s.m.Unworkable, s.m.Work, s.m.Bare > 0}, name)
	}
	s, f := sureOf("1000x600 100x100+2"), corner(true, 0)
	tl := f.tiled(-60 * mm)
	s.slots(&tl, span{0, 600 * mm, 0, 0}, 0, 102*mm)
	require.Zero(t, s.m)
	require.Equal(t, absent, tl.least, "of no rows nothing is known")
}

// What a leaning edge claims of its least slot is never less than some slot of it has: for every
// place of rows in the span, by brute force, one of them is as narrow.
func TestALeaningEdgeClaimsASlotThatIsThere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) length.Length {
			return length.Length(rapid.IntRange(low, high).Draw(t, name))
		}
		s, f := sureOf("1000x600 100x100+2"), &feature{edge: atLeft, facing: piece.OnLeft, deep: 1000, broad: n("broad", 20, 100), joint: n("joint", 0, 10)}
		period := f.broad + f.joint
		p := span{from: 0, to: period*n("rows", 1, 6) + n("more", 0, 60), v0: n("v0", 100, 300), v1: n("v1", 100, 300)}
		at := n("at", 0, int(period)-1)
		rows := 0
		narrowest := length.Length(1 << 40)
		for y := at; y+f.broad <= p.to; y += period {
			rows++
			narrowest = min(narrowest, f.deep-max(p.at(y), p.at(y+f.broad)))
		}
		if rows == 0 {
			t.Skip("no row lies in it")
		}
		tl := f.tiled(0)
		s.slots(&tl, p, rows, period)
		require.GreaterOrEqual(t, tl.least, narrowest, "it claims a piece narrower than any")
	})
}

// Law 2 whatever a job prefers: bounds take the best place of an end by the job's own order.
func TestBoundsHoldWhateverTheJobPrefers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := chance.House(t, 2)
		yes := func(name string) bool { return rapid.Bool().Draw(t, name) }
		room.Prefer = survey.Prefer{LargeCuts: yes("large cuts"), Openings: yes("openings"), FullHead: yes("full head"), Shared: yes("shared")}
		w := NewWall(&room, room.Walls[rapid.IntRange(0, len(room.Walls)-1).Draw(t, "wall")], survey.Left)
		s := setting(t, w)
		if w.Places.Overlap(s.Placed) {
			t.Skip("openings overlap")
		}
		got := w.Count(s).Merit
		claims(t, w, w.Bounds.OfBoth(s.Line, s.Edge), got)
		claims(t, w, w.Bounds.Plainly(s.Line, s.Edge), got)
		claims(t, w, w.Bounds.Beyond(s), got)
		claims(t, w, w.promise(s), got)
	})
}
