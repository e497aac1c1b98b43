package count

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestEndsStandOnTileEdgesAndWhereARunTurns(t *testing.T) {
	for name, c := range map[string]struct {
		sketch string
		edge   length.Length
		right  bool
		want   []length.Length
	}{
		"meets a corner":                {"1000x600 300x100+2", 0, false, []length.Length{0}},
		"stops where it was measured":   {"1000x600 300x100+2 left=30", 0, false, []length.Length{30}},
		"on the edge of a tile":         {"1000x600 300x100+2 left=0..80", 40, false, []length.Length{0, 38, 40, 80}},
		"none in its range":             {"1000x600 300x100+2 left=0..80", 100, false, []length.Length{0, 80}},
		"of either course":              {"1000x600 300x100+2 1/2 left=0..200", 10, false, []length.Length{0, 8, 10, 159, 161, 200}},
		"at the right where one ends":   {"1000x600 300x100+2 right=880..1000", 0, true, []length.Length{880, 904, 906, 1000}},
		"in front of a step":            {"1000x600 300x100+2 left=0..200 leg=150", 40, false, []length.Length{0, 38, 40, 150, 200}},
		"with 60 left as at the other":  {"250x300 100x100+2 left=0 right=130..250", -40, true, []length.Length{130, 162, 164, 224, 250}},
		"and so at the left":            {"250x300 100x100+2 left=0..120 right=250", 86, false, []length.Length{0, 22, 84, 86, 120}},
		"with half where that has less": {"250x300 100x100+2 left=0 right=130..250", -70, true, []length.Length{130, 132, 134, 164, 184, 234, 236, 250}},
		"half a tile behind a step":     {"600x600 300x100+2 left=0..200 leg=180 right=600", 40, false, []length.Length{0, 30, 38, 40, 82, 180, 200}},
		"as the other at its limits":    {"700x600 300x100+2 left=0..40 right=620..660", 20, true, []length.Length{620, 622, 624, 642, 660}},
	} {
		var want []length.Length
		for _, x := range c.want {
			want = append(want, x*mm)
		}
		require.Equal(t, want, drawWall(c.sketch).Places.Ends(c.edge*mm, c.right), name)
	}
}

// Sizes count in whole marks of the tape: merit.md.
func TestAnEndLeavesWholeMarks(t *testing.T) {
	w := drawWall("1000x600 300x100+2 left=0 right=700..1000")
	w.facts.room.Tape = 25 * mm
	for other, want := range map[length.Length][]length.Length{
		250: {250, 250},
		251: {251, 275},
		290: {290, 300},
		300: {300, 300},
		150: {150, 150},
		149: {149, 150, 150},
		60:  {60, 75, 150},
	} {
		for i := range want {
			want[i] *= mm
		}
		require.Equal(t, want, w.Places.alike(other*mm))
	}
}

func TestHeadsStandOnCourses(t *testing.T) {
	for name, c := range map[string]struct {
		sketch string
		line   length.Length
		want   []length.Length
	}{
		"meets a ceiling":         {"1000x600 300x100+2", 0, []length.Length{0}},
		"stops at a measured one": {"1000x600 300x100+2 head=555", 0, []length.Length{555}},
		"on the top of courses":   {"1000x600 300x100+2 head=400..620", 0, []length.Length{406, 508, 610}},
		"no top in its range":     {"1000x600 300x100+2 head=410..500", 0, []length.Length{410, 500}},
		"at a niche":              {"1000x600 300x100+2 head=420..520 niche=300,200,450,120", 0, []length.Length{450, 508}},
		"in columns of stack":     {"1000x600 300x100+2 columns head=400..510", 0, []length.Length{400, 406, 508, 510}},
		"in columns of half bond": {"1000x600 300x100+2 1/2 columns head=400..470", 0, []length.Length{400, 406, 408, 457, 459, 470}},
	} {
		var want []length.Length
		for _, x := range c.want {
			want = append(want, x*mm)
		}
		require.Equal(t, want, drawWall(c.sketch).Places.Heads(c.line*mm), name)
	}
}

// Columns that do not step give no more under a head on the far side of a joint than under one at the tiles' ends, but beside
// a corner that leans: it is bent elsewhere, by one unit, and what is bare along it measured otherwise by tens of them.
func TestAHeadStandsBeforeAJointOfColumnsInStackBond(t *testing.T) {
	apart := 0
	rapid.Check(t, func(t *rapid.T) {
		room := chance.House(t, 1)
		room.Bond = survey.BondRule{Kind: survey.Stack, Den: 1, Plumb: true}
		found := room.Walls[0]
		found.Left.Lean, found.Right.Lean = nil, nil
		found.Head = survey.HeadFound{Stops: survey.Span{From: 400 * mm, To: 600 * mm}}
		w := NewWall(&room, found, survey.Left)
		s := setting(t, w)
		tiles := w.facts.upright(s.Line)
		for _, y := range tiles.within(w.Found.Head.Stops, 0) {
			before := s
			if before.Placed.Head = y - w.facts.room.Joint; before.Placed.Head < w.Found.Head.Stops.From {
				continue
			}
			apart++
			s.Placed.Head = y
			end, far := w.Count(before), w.Count(s)
			order, term := w.facts.order.Compare(&end.Merit, &far.Merit)
			require.LessOrEqual(t, order, 0, "the head at %v is better by %s than at %v", y, term, before.Placed.Head)
		}
	})
	require.Greater(t, apart, 10, "heads on the far side of a joint were drawn")
}

// By hand: courses begin at -40 and every 102 on, so the base at 0 leaves 60; a head at 428 leaves 60 of the course
// that begins at 368.
func TestAHeadMayLeaveWhatTheBaseLeaves(t *testing.T) {
	room, found := sketch("1000x600 300x100+2 head=400..470")
	heads := func() []length.Length { return NewWall(&room, found, survey.Left).Places.Heads(-40 * mm) }
	require.Equal(t, []length.Length{468 * mm}, heads())
	room.Prefer.Shared = true
	require.Equal(t, []length.Length{428 * mm, 468 * mm}, heads())
}

// A free opening may stand where its middle is wished, along the wall and up it.
func TestPlacesHoldTheOneThatIsWished(t *testing.T) {
	room, found := sketch("1000x600 300x100+2 niche=200..400,100,150..350,120")
	x, y := 370*mm, 270*mm
	found.Openings[0].Near = survey.Near{X: &x, Y: &y}
	w := NewWall(&room, found, survey.Left)
	require.Contains(t, w.Places.LevelPairs(0, 17*mm), Pair{320 * mm, 420 * mm})
	require.Contains(t, w.Places.UprightPairs(0, 17*mm), Pair{210 * mm, 330 * mm})
	require.NotContains(t, drawWall("1000x600 300x100+2 niche=200..400,100,150..350,120").Places.UprightPairs(0, 17*mm), Pair{210 * mm, 330 * mm}, "in height nothing is wished by itself")
}

// Random places of ends and heads: within their ranges, ascending, and every tile edge of
// the range among them.
func TestEndsAndHeadsAreAllThereAre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		for _, right := range []bool{false, true} {
			end := w.Found.Left
			if right {
				end = w.Found.Right
			}
			if end.Meets {
				continue
			}
			got := w.Places.Ends(s.Edge, right)
			require.True(t, slices.IsSorted(got))
			require.GreaterOrEqual(t, got[0], end.Stops.From)
			require.LessOrEqual(t, got[len(got)-1], end.Stops.To)
			if end.Stops.Free() {
				require.Subset(t, got, w.facts.level(s.Edge).edges(end.Stops))
			}
		}
		if h := w.Found.Head; !h.Meets {
			for _, y := range w.Places.Heads(s.Line) {
				require.True(t, h.Stops.From <= y && y <= h.Stops.To)
			}
		}
	})
}

// Places that promise the most come first, what was worked out once is kept, and what an
// option promises is not more than what the whole wall gives with it.
func TestOptionsPromiseNoMoreThanTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		if len(w.Free()) == 0 || w.Places.Overlap(s.Placed) {
			t.Skip("nothing to place, or openings that overlap")
		}
		got := w.Count(s).Merit
		order := w.facts.order
		for _, i := range w.Free() {
			for name, options := range map[string][]Option{"level": w.Places.Level(i, s.Edge), "upright": w.Places.Upright(i, s.Line)} {
				require.True(t, slices.IsSortedFunc(options, func(a, b Option) int {
					n, _ := order.Compare(&a.Merit, &b.Merit)
					return n
				}), name)
				at := s.Placed.Openings[i]
				p := Pair{at.Left, at.Right}
				if name == "upright" {
					p = Pair{at.Bottom, at.Top}
				}
				k := slices.IndexFunc(options, func(o Option) bool { return o.Pair == p })
				require.GreaterOrEqual(t, k, 0, "the place drawn is an option")
				n, term := order.Until(&got, &options[k].Merit, merit.Find)
				require.GreaterOrEqual(t, n, 0, "%s promises too much in %s:\n%+v\n%+v", name, term, options[k].Merit, got)
			}
			work := w.Work()
			again := w.Places.Level(i, s.Edge)
			require.Equal(t, work, w.Work(), "worked out once")
			require.Len(t, again, len(w.Places.LevelPairs(i, s.Edge)))
		}
	})
}

// A stretch beside tiles touches so many at least, wherever it lies.
func TestHowManyTilesAStretchTouches(t *testing.T) {
	for stretch := length.Length(1); stretch <= 60; stretch++ {
		for _, joint := range []length.Length{0, 3} {
			const tile = 17
			least := 1000
			for at := range tile + joint {
				n := 0
				for first := -(tile + joint); first <= at+stretch; first += tile + joint {
					if first < at+stretch && first+tile > at {
						n++
					}
				}
				least = min(least, n)
			}
			require.Equal(t, least, touchedBy(stretch, tile, joint), "%d beside tiles of 17 and %d", stretch, joint)
		}
	}
}

func TestWhatOverlaps(t *testing.T) {
	w := drawWall("2000x600 300x100+2 niche=300..700,200,100,100 niche=900,200,100,100 pipe=1500,150,40")
	for name, c := range map[string]struct {
		left, right length.Length
		overlaps    bool
	}{
		"clear of all":         {400, 600, false},
		"into the next niche":  {750, 950, true},
		"touching it":          {700, 900, false},
		"into the pipe's hole": {1300, 1500, true},
	} {
		p := w.Outer()
		p.Openings = slices.Clone(p.Openings)
		p.Openings[0] = survey.Edges{Left: c.left * mm, Right: c.right * mm, Bottom: 100 * mm, Top: 200 * mm}
		require.Equal(t, c.overlaps, w.Places.Overlap(p), name)
	}
	all := drawWall("2000x600 300x100+2 niche=300..700,200,100,100 niche=300..700,200,100,100 niche=300..700,200,100,100")
	p := all.Outer()
	p.Openings = []survey.Edges{Away, Away, p.Openings[2]}
	require.False(t, all.Places.Overlap(p), "two that are away")
	for line, alone := range map[string]bool{
		"3000x2000 300x100+2 niche=1200..1300,300,800,300":                            true,
		"3000x2000 300x100+2 niche=200..1300,300,800,300":                             true,
		"3000x2000 300x100+2 niche=1200..1300,300,800,300 pipe=1700,900,40":           false,
		"3000x2000 300x100+2 niche=1200..1300,300,800,300 left=0..20":                 true,
		"3000x2000 300x100+2 niche=1200..1300,300,800,300 left=0..900":                false, // a free end may come near
		"3000x2000 300x100+2 niche=1200..1300,300,800,300 head=1200..2000":            false,
		"3000x2000 300x100+2 niche=1200..1300,300,800,300 niche=1850..2000,300,800,9": true,
		"3000x2000 300x100+2 niche=1200..1300,300,800,300 niche=1700..2000,300,800,9": false, // another may
	} {
		_, is := drawWall(line).Alone(0, Pair{1200 * mm, 1500 * mm}, Pair{800 * mm, 1100 * mm}, 0, 0)
		require.Equal(t, alone, is, line)
	}

}
