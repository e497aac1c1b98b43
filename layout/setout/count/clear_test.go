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

// at places the free opening of a wall, in millimetres.
func placedAt(w *Wall, left, bottom, right, top length.Length) survey.Placed {
	p := w.Outer()
	p.Openings = []survey.Edges{{Left: left * mm, Right: right * mm, Bottom: bottom * mm, Top: top * mm}}
	return p
}

// The tile round the niche is 100 by 50 and joint 2: it stands clear where it is farther
// than a tile, and what sealant and joint fill, from every end, the base and the ceiling.
func TestANicheStandsClear(t *testing.T) {
	w := drawWall("1000x600 100x50+2 niche=0..600,200..300,0..400,100..200")
	for _, c := range []struct {
		left, bottom, right, top length.Length
		clear, ofEnds            bool
	}{
		{300, 200, 550, 350, true, true},
		{50, 200, 300, 350, false, false},
		{655, 200, 895, 350, false, false},
		{300, 40, 550, 190, false, true},
		{300, 400, 550, 560, false, true},
		{1200, 200, 1400, 350, false, false}, // not on the wall at all
	} {
		p := placedAt(w, c.left, c.bottom, c.right, c.top)
		require.Equal(t, c.clear, w.Places.Clear(p), "%+v", c)
		require.Equal(t, c.ofEnds, w.Places.ClearOfEnds(p), "%+v", c)
	}
	require.False(t, drawWall("1000x600 100x50+2").Places.Clear(w.Outer()), "no opening is free")
}

// Two openings are not clear of one another when one tile may be cut by both.
func TestNichesAreNotClearOfEachOther(t *testing.T) {
	w := drawWall("2000x900 100x50+2 niche=200..900,200,200..600,100 niche=900..1600,200,200..600,100")
	p := w.Outer()
	p.Openings = []survey.Edges{{Left: 400 * mm, Right: 600 * mm, Bottom: 300 * mm, Top: 400 * mm}, {Left: 900 * mm, Right: 1100 * mm, Bottom: 300 * mm, Top: 400 * mm}}
	require.True(t, w.Places.Clear(p))
	p.Openings[1].Left, p.Openings[1].Right = 650*mm, 850*mm
	require.False(t, w.Places.Clear(p))
}

// Law 1 where openings stand clear: what they make of whole tiles, counted by
// themselves, is what cutting the whole wall gives.
func TestClearOpeningsGiveWhatCuttingGives(t *testing.T) {
	walls := []string{
		"1500x900 150x50+2 1/2 gap=3 base=0,6 niche=300..700,150..400,200..500,80..300",
		"1500x900 150x50+2 1/3 gap=3 base=4,0 niche=300..700,150..400,200..500,80..300 pipe=1300,300,40",
		"1500x900 60x150+3 1/2 columns gap=3 base=0,6 niche=300..700,150..400,200..500,80..300",
		"1500x900 100x100+0 head=800..900 left=0..60 niche=300..700,30..400,250..500,20..300",
	}
	rapid.Check(t, func(t *rapid.T) {
		w := drawWall(rapid.SampledFrom(walls).Draw(t, "wall"))
		s := setting(t, w)
		fast, slow := w.Count(s), w.slowly(s)
		require.ElementsMatch(t, slow.Runs, fast.Runs, "clear %v", w.Places.Clear(s.Placed))
		require.Equal(t, slow.Merit, fast.Merit, "clear %v", w.Places.Clear(s.Placed))
	})
}

// What an opening gives that is alone wherever all else goes is no more than what it adds to any
// set-out of the wall, and all of what it adds to runs that it alone cuts.
func TestWhatAnOpeningGivesAloneIsWhatItAdds(t *testing.T) {
	walls := []string{
		"1500x900 150x50+2 1/2 gap=3 base=0,6 niche=300..700,150..400,200..500,80..300",
		"1500x900 60x150+3 1/2 columns gap=3 base=0,6 niche=300..700,150..400,200..500,80..300",
		"1500x900 150x50+2 1/3 gap=3 head=800..900 left=0..60 niche=300..700,150..300,200..400,80..200",
		"2400x1200 150x50+2 1/2 gap=3 right=2300..2400 niche=300..700,150..300,200..400,80..200 niche=1400..1800,150..300,200..400,80..200 pipe=1200,300,40",
	}
	rapid.Check(t, func(t *rapid.T) {
		alone := 0
		w := drawWall(rapid.SampledFrom(walls).Draw(t, "wall"))
		for range 20 {
			s := setting(t, w)
			sum := w.Count(Setting{Line: s.Line, Edge: s.Edge, Placed: w.facts.without(s.Placed)}).Merit
			for _, i := range w.Free() {
				e := s.Placed.Openings[i]
				m, is := w.Alone(i, Pair{e.Left, e.Right}, Pair{e.Bottom, e.Top}, s.Line, s.Edge)
				if !is {
					sum.Part = false // not all of them are
					continue
				}
				alone++
				sum = sum.Plus(&m)
				require.True(t, w.Places.boundary.alwaysClear(i, w.facts.placed(i, s.Placed)))
			}
			if !w.Places.Clear(s.Placed) || alone%len(w.Free()) != 0 {
				continue
			}
			got := w.Count(s).Merit
			order, term := w.facts.order.Compare(&merit.Merit{Sight: sum.Sight, OutOfSight: sum.OutOfSight, Work: sum.Work},
				&merit.Merit{Sight: got.Sight, OutOfSight: got.OutOfSight, Work: got.Work})
			require.Zero(t, order, "differ in %s: %+v, %+v", term, sum, got)
		}
	})
}

// What long runs of law 3 have found: a piece cut aslant covers the joint beside it, as
// over the front of a tub, and a niche that takes the end of a wall leaves none of it bare.
func TestWhatIsBareIsBareWhenCutToo(t *testing.T) {
	slanting := drawWall("300x400 40x40+3 columns gap=3 base=0,-4 leg=150")
	for edge := range length.Length(43) {
		s := Setting{Edge: edge * mm, Placed: slanting.Outer()}
		require.Equal(t, slanting.slowly(s).Merit.Bare, slanting.Count(s).Merit.Bare, "edge at %d", edge)
	}
	atEnd := drawWall("297x997 253x40+6 niche=190..250,47..107,300..400,50")
	for line := range length.Length(46) {
		s := Setting{Line: line * mm, Edge: 38 * mm, Placed: placedAt(atEnd, 190, 300, 297, 350)}
		require.Equal(t, atEnd.slowly(s).Merit.Bare, atEnd.Count(s).Merit.Bare, "line at %d", line)
	}
}

// Beside a tub's front that stands within a tile of a free end, the bound knows the rows
// that leave the front bare: with the end at 0 a joint of 10 stands against it.
func TestTheFrontOfATubIsBoundedBesideAFreeEnd(t *testing.T) {
	w := drawWall("1000x600 100x50+10 gap=3 left=0..20 leg=110")
	bare := false
	for edge := range length.Length(110) {
		for _, x := range w.Places.Ends(edge*mm, false) {
			s := Setting{Edge: edge * mm, Placed: w.Outer()}
			s.Placed.Left = x
			got, sure := w.Count(s).Merit, w.Bounds.AtEnd(false, x, 0, edge*mm)
			require.LessOrEqual(t, sure.Bare+sure.OutOfSight.Bare, got.Bare+got.OutOfSight.Bare, "edge at %d, end at %d", edge, x/mm)
			bare = bare || sure.Bare+sure.OutOfSight.Bare > 0
		}
	}
	require.True(t, bare, "some of these starts leave the front bare, and the bound says so")
}

// A wall little wider than a tile, leaning on the left and narrowed by the next wall's
// tile on the right: no bound may take its ends for farther from alike than they are.
func TestAWallOfOneTileIsNoFartherFromAlikeThanCounted(t *testing.T) {
	room, found := sketch("321x1018 314x42+0 gap=3 head=900..1018")
	room.Tape, room.Joint = length.Inch/8, length.Inch/16
	found.Left.Lean = []survey.Reading{{At: 0, Value: 0}, {At: 1200 * mm, Value: 4 * mm}}
	found.Right.Cover = 13 * mm
	w := NewWall(&room, found, survey.Left)
	order := merit.OrderFor(room.Prefer)
	for _, edge := range w.Starts.Tried() {
		for line := length.Length(0); line < 42*mm; line += room.Tape {
			s := Setting{Line: line, Edge: edge, Placed: w.Outer()}
			heads := w.Places.Heads(line)
			s.Placed.Head = heads[len(heads)-1]
			got, sure := w.Count(s).Merit, w.Bounds.Plainly(line, edge)
			better, term := order.Compare(&got, &sure)
			require.GreaterOrEqual(t, better, 0, "edge at %d: %s", edge, term)
			require.LessOrEqual(t, sure.Mirror, got.Mirror, "edge at %d", edge)
		}
	}
}

// A niche whose range reaches beyond the end of the tile cuts nothing out there.
func TestANicheBeyondTheEndPromisesNoRunThere(t *testing.T) {
	w := drawWall("1000x600 100x50+2 right=700 niche=500..620,100,200,120")
	for _, o := range w.Places.Level(0, 30*mm) {
		if o.High > 700*mm {
			// A tile stands from 642 to 742: it would be cut at 720.
			require.NotContains(t, o.Merit.Runs, piece.Share{Num: int64(22 * mm), Den: int64(100 * mm)}, "%+v", o.Pair)
		}
	}
}

// A wall so narrow that one tile is cut by both of its free ends: it costs what one cut costs.
func TestATileBetweenTwoFreeEndsCountsOnce(t *testing.T) {
	w := drawWall("300x600 245x40+0 left=0..5 right=230..240")
	for edge := range length.Length(245) {
		s := Setting{Edge: edge * mm, Placed: w.Outer()}
		left, right := w.Bounds.AtEnd(false, s.Placed.Left, 0, s.Edge), w.Bounds.AtEnd(true, s.Placed.Right, 0, s.Edge)
		both := left.Plus(&right)
		require.LessOrEqual(t, both.Work, w.Count(s).Merit.Work, "edge at %d", edge)
	}
}
