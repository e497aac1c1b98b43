package count

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// single is a wall with a leg of 150 in single tiles at its left, 200 deep.
func single(line string) *Wall {
	room, found := sketch(line + " leg=150")
	found.Base[0].Leg = survey.SingleTiles
	return NewWall(&room, found, survey.Left)
}

// The foot of a leg: the lowest piece over a floor at -200, of courses of 100 and 2.
func TestTheFootOfALeg(t *testing.T) {
	w := single("1000x600 300x100+2")
	for name, c := range map[string]struct{ line, high length.Length }{
		"a whole tile on the floor":         {-200, 100},
		"the lowest course is cut to 60":    {-240, 60},
		"to 10":                             {-290, 10},
		"a strip of 6 is filled by sealant": {-294, 100},
		"the floor stands in a joint":       {-301, 100}, // 1 of the joint is left, which is no piece
		"the same one course up":            {-138, 60},
	} {
		require.Equal(t, c.high*mm, foot(w.facts.room, w.Found.Base[0], c.line*mm), name)
	}
	raked := w.Found.Base[0]
	raked.Readings = []survey.Reading{{At: 0, Value: -200 * mm}, {At: 150 * mm, Value: -190 * mm}}
	require.Equal(t, 50*mm, foot(w.facts.room, raked, -240*mm), "where the floor is highest")
}

// Merit counts of a leg in single tiles its foot, out of sight, and what is too narrow.
func TestTheFootIsGraded(t *testing.T) {
	for name, c := range map[string]struct {
		line               length.Length
		unworkable, sliver int
	}{
		"60 is a good piece":                  {-240, 0, 0},
		"24 of 100 is a sliver":               {-276, 0, 1},
		"12 is under 13, nobody can cut that": {-288, 1, 0},
	} {
		w := single("1000x600 300x100+2")
		with := w.Count(Setting{Line: c.line * mm, Placed: w.Outer()}).Merit.OutOfSight
		require.Equal(t, [2]int{c.unworkable, c.sliver}, [2]int{with.Unworkable, with.Slivers}, name)
	}
}

// The pieces of a leg are as wide as it is. Over a floor at -200 with a rim at 0, two courses of 100
// and 2 end under the rim; the lower is the foot.
func TestANarrowLegIsGraded(t *testing.T) {
	room, found := sketch("1000x600 300x100+2 leg=150")
	found.Base[0].Leg, room.Sliver = survey.SingleTiles, 50*mm
	found.Left = survey.EndFound{Stops: survey.Span{From: 0, To: 150 * mm}, Beyond: -1}
	w := NewWall(&room, found, survey.Left)
	rim := found.LegsBeside()[0]
	require.Equal(t, 1, above(&room, found.Base[0], rim, -202*mm), "rim %v", rim.Rim)
	for wide, want := range map[length.Length][5]int{200: {}, 60: {0, 0, 0, 0, 0}, 30: {0, 1, 0, 1, 0}, 10: {1, 0, 1, 0, 0}, 4: {0, 0, 0, 0, 200}, 0: {}} {
		at := w.Outer()
		at.Left = rim.Front - wide*mm
		var m merit.Merit
		(&tally{w: w.facts}).addLegs(&m, Setting{Line: -202 * mm, Placed: at})
		got := [5]int{m.Sight.Unworkable, m.Sight.Slivers, m.OutOfSight.Unworkable, m.OutOfSight.Slivers, int(m.Sight.Bare / mm)}
		require.Equal(t, want, got, "%d mm", wide)
	}
}

// Which rows are a leg's: those under the rim, and where it goes higher the next.
func TestRowsOfALeg(t *testing.T) {
	rows := []bond.Row{{Low: -240 * mm, High: -140 * mm}, {Low: -138 * mm, High: -38 * mm}, {Low: -36 * mm, High: 64 * mm}, {Low: 66 * mm, High: 166 * mm}}
	leg := survey.LegBeside{Rim: 0, Front: 150 * mm}
	under, top := beneath(rows, leg, false)
	require.Len(t, under, 2)
	require.Equal(t, -36*mm, top, "up to where the next begins")
	under, top = beneath(rows, leg, true)
	require.Len(t, under, 3)
	require.Equal(t, 66*mm, top)
	leg.Rim = 64 * mm
	under, _ = beneath(rows, leg, false)
	require.Len(t, under, 3, "a row that ends at the rim is under it")
}

// The pieces of a wall with a leg by itself: those of the leg begin at the wall's end, no
// two overlap, all lie in the wall.
func TestPiecesOfAWallWithALegByItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := single("1000x300 300x100+2")
		line := length.Length(rapid.IntRange(-400, 0).Draw(t, "line")) * mm
		edge := length.Length(rapid.IntRange(0, 301).Draw(t, "edge")) * mm
		shape, pieces, _ := w.CutWithLegs(Setting{Line: line, Edge: edge, Placed: w.Outer()})
		var whole, sum length.Area
		for _, ring := range shape.Region {
			whole += ring.Area2()
		}
		for i, p := range pieces {
			box := p.Face.Bounds()
			for _, ring := range p.Face {
				sum += ring.Area2()
			}
			if box.Top <= 0 {
				require.Zero(t, p.Tile.Left, "%+v begins at the end of the wall", box)
				require.LessOrEqual(t, box.Right, 150*mm)
			}
			for _, q := range pieces[:i] {
				require.False(t, box.Overlaps(q.Face.Bounds()) && areas(p, q), "%+v and %+v", box, q.Face.Bounds())
			}
		}
		require.LessOrEqual(t, sum, whole)
		require.Greater(t, sum, whole*9/10, "joints and the strip at the rim take no more")
	})
}

// areas tells whether two pieces share more than their boxes do.
func areas(p, q piece.Piece) bool {
	for _, ring := range q.Face {
		if rest := p.Face.Less(ring, 0); len(rest) != len(p.Face) || rest.Bounds() != p.Face.Bounds() {
			return true
		}
	}
	return false
}
