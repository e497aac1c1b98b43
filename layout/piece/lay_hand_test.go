package piece_test

import (
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A bond in courses laid as a pattern of tiles on a lattice gives the pieces that rows give:
// the same tiles, of the same size, cut by the same edges. What slants is rounded otherwise.
func TestCoursesLaidAsAPatternGiveTheSamePieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := chance.Room(t, 1)
		r.Bond.Plumb = false
		f := r.Walls[0]
		f.Left.Lean, f.Right.Lean = nil, nil
		for i := range f.Base {
			f.Base[i].Readings[1].Value = f.Base[i].Readings[0].Value
		}
		if f.Head.Meets {
			f.Head.Readings[1].Value = f.Head.Readings[0].Value
		}
		s := f.Shape(r.Units, measured(f))
		line, edge := length.Length(rapid.IntRange(-400, 0).Draw(t, "line"))*mm, length.Length(rapid.IntRange(-400, 0).Draw(t, "edge"))*mm
		rule, rows, box := piece.RuleFor(r, f, s.Sides), bond.Of(r, survey.Left), s.Solid.Bounds()
		want, _ := piece.Cut(s, rows.Rows(line, edge, box.Bottom-rows.Across(), box.Top+rows.Across()), rule)
		p := bond.For(r, survey.Left)
		got, _ := piece.Lay(s, p, p.Origin(line, edge), rule)
		tiles := map[plane.Rect][]piece.Piece{}
		for _, q := range got {
			tiles[q.Tile] = append(tiles[q.Tile], q)
		}
		require.Len(t, got, len(want))
		for _, q := range want {
			i := -1
			for k, o := range tiles[q.Tile] {
				if o.Face.Bounds() == q.Face.Bounds() {
					i = k
				}
			}
			require.GreaterOrEqual(t, i, 0, "no piece of %v", q.Tile)
			o := tiles[q.Tile][i]
			require.Equal(t, []any{q.Face.Area2(), q.Visible.Area2(), q.Whole, q.Cuts}, []any{o.Face.Area2(), o.Visible.Area2(), o.Whole, o.Cuts}, "%v", q.Face)
			require.Equal(t, []any{q.Across, q.Up, q.Wide, q.High}, []any{o.Across, o.Up, o.Wide, o.High}, "%v", q.Face)
			require.Equal(t, q.Awkward, o.Awkward)
			if r.Tile.Width != r.Tile.Height { // of a square tile no edge is the longer one
				straight := piece.Rip | piece.Cross
				require.Equal(t, q.Kind&^straight, o.Kind&^straight, "%v", q.Face)
				if q.Kind&piece.Notch == 0 { // of a pattern the sides of a notch are cuts too
					require.Equal(t, q.Kind, o.Kind, "%v", q.Face)
				}
			}
		}
	})
}

// What one straight cut costs at least, by its direction: along the longest edge a rip, square to
// it across, within 1 in 8 of either a taper, which may come out straight; anything else is
// an angle cut. Common practice, no source.
func TestWhatCutsInADirectionCost(t *testing.T) {
	plank := bond.Tile{Outline: plane.Rect{Right: 300 * mm, Top: 100 * mm}.Ring(0), Rect: true}
	hexagon := bond.For(survey.Room{Tile: survey.TileSize{Width: 100 * mm, Height: 100 * mm}, Bond: survey.BondRule{Kind: survey.Hexagon, Den: 1}}, survey.Left).Tiles[0]
	for name, c := range map[string]struct {
		tile bond.Tile
		dx   length.Length
		dy   length.Length
		cost int
	}{
		"along a plank":                  {plank, 100, 0, 2},
		"along it, the other way":        {plank, -100, 0, 2},
		"across it":                      {plank, 0, 100, 1},
		"nearly along: a taper":          {plank, 100, 10, 1}, // it may be rounded to a straight one
		"at 1 in 8":                      {plank, 80, 10, 2},
		"at 45°":                         {plank, 100, 100, 2},
		"at 30° to it":                   {plank, 173, 100, 2},
		"level through a hexagon's tips": {hexagon, 100, 0, 2}, // square to its plumb sides is an edge of none: an angle cut
		"along a hexagon's plumb side":   {hexagon, 0, 100, 1},
		"along a hexagon's slanted side": {hexagon, 866, 500, 1},
	} {
		require.Equal(t, c.cost, piece.EffortAlong(c.tile, plane.Point{X: c.dx * mm, Y: c.dy * mm}), name)
	}
}

// hexagons lays hexagons of 100 from flat to flat with joints of 2 on a wall of 1000 by 600,
// a tip at a point of the base.
func hexagons(t *testing.T, x, y length.Length) ([]piece.Piece, []piece.Gap, survey.Shape) {
	room := chance.Sketch("1000x600 100x100+2")
	room.Bond = survey.BondRule{Kind: survey.Hexagon, Den: 1}
	w := room.Walls[0]
	s, p := w.Shape(room.Units, measured(w)), bond.For(room, survey.Left)
	pieces, bare := piece.Lay(s, p, plane.Point{X: x * mm, Y: y * mm}, piece.RuleFor(room, w, s.Sides))
	require.NotEmpty(t, pieces)
	return pieces, bare, s
}

// By hand: hexagons of 100 flat to flat are 100·2/√3 = 115.47 from tip to tip; a row of them
// cut through its middle stands 57.73 high, and the least width of what is left is that.
func TestHexagonsByHand(t *testing.T) {
	pieces, _, s := hexagons(t, 500, 0)
	var half, whole, corner int
	for _, p := range pieces {
		switch {
		case p.Whole:
			whole++
			require.InDelta(t, 100, float64(p.Least)/float64(mm), 0.01)
			require.Zero(t, p.Effort())
			require.Equal(t, piece.Sound, p.Grade(false))
		case len(p.Cuts) == 1 && p.Cuts[0] == survey.SideBase && p.Row == pieces[0].Row:
			half++
			require.InDelta(t, 57.73, float64(p.Least)/float64(mm), 0.01)
			require.InDelta(t, 0.577, p.Share.Float(), 0.001)
			require.Equal(t, piece.Angle, p.Kind, "square to its plumb sides: an edge of none")
			require.Equal(t, []piece.Edge{piece.EdgeOf(survey.SideBase, piece.Under)}, p.Up)
			require.Empty(t, p.Across)
		case len(p.Cuts) > 1:
			corner++
		}
	}
	require.Equal(t, 9, half, "of nine hexagons in the lowest row, 102 from one to the next, 4 on either side of the middle")
	require.Positive(t, whole)
	require.LessOrEqual(t, corner, 8)
	var sum length.Area
	for _, p := range pieces {
		sum += p.Face.Area2()
	}
	require.Less(t, sum, s.Region.Area2())
	require.Greater(t, sum, s.Region.Area2()*94/100, "joints of 2 about tiles of 100 take 4 in a hundred, and what is sealed at the edges")
}

// The limits of a pattern's tile are those of its least width, in every direction: of a
// hexagon of 100 a piece under 25 is a sliver, under 13 unworkable.
func TestHexagonsAreJudgedByTheirLeastWidth(t *testing.T) {
	for name, c := range map[string]struct {
		y                  length.Length
		unworkable, sliver bool
	}{
		"57 - 30 = 27 left of the lower row": {-30, false, false},
		"57 - 34 = 23":                       {-34, false, true},
		"57 - 46 = 11":                       {-46, true, false},
	} {
		pieces, _, _ := hexagons(t, 500, c.y)
		n := 0
		for _, p := range pieces {
			if p.Row == pieces[0].Row && len(p.Cuts) == 1 && p.Cuts[0] == survey.SideBase {
				n++
				require.Equal(t, []bool{c.unworkable, c.sliver}, []bool{p.Unworkable, p.Sliver}, "%s: %v", name, p.Least)
			}
		}
		require.Positive(t, n, name)
	}
}

// Two tiles on one wall, as with a band: 300 by 100 under a height of 306, 150 by 150 from 308.
// Each piece says which tile it is; one cover knows of both.
func TestTwoTilesOnOneWall(t *testing.T) {
	w := sketch("1000x460 300x100+2", 0, 0)
	other := w.rule
	other.Along, other.Across = 150*mm, 150*mm
	var low []bond.Row
	for _, r := range w.rows {
		if r.Low >= 0 && r.High <= 306*mm {
			low = append(low, r)
		}
	}
	require.Len(t, low, 3)
	band := []bond.Row{{Course: 0, Low: 308 * mm, High: 458 * mm, Width: 150 * mm, Pitch: 152 * mm}}
	pieces, bare := piece.CutLaid(w.shape, []piece.Laid{{Rows: low, Rule: w.rule, Shape: w.shape}, {Tile: 1, Lift: 3, Rows: band, Rule: other, Shape: w.shape}})
	require.Empty(t, bare, "2 under the ceiling is for sealant")
	count := map[int]int{}
	for _, p := range pieces {
		count[p.Laid]++
		require.Equal(t, 3*p.Laid, p.Lift)
	}
	require.Equal(t, map[int]int{0: 3 * 4, 1: 7}, count) // 3 whole and 94; 6 whole and 88
	piece.Number([][]piece.Piece{pieces}, []string{"A"}, false)
	require.Equal(t, "A-04-07", pieces[len(pieces)-1].ID)
	_, bare = piece.CutLaid(w.shape, []piece.Laid{{Rows: low, Rule: w.rule, Shape: w.shape}})
	var open length.Length
	for _, g := range bare {
		open += g.Length
	}
	require.Equal(t, 1000*mm+2*(460-304-6)*mm, open, "without the band its part of the ends is bare from 6 over the third course, and the ceiling")
}

// A band in a pattern beside tile in courses is cut to its own part of the wall.
func TestAPatternOnAPartOfTheWall(t *testing.T) {
	w := sketch("1000x600 300x100+2", 0, 0)
	part := w.shape
	part.Solid = part.Solid.Keep(plane.Above(306 * mm))
	part.Visible, part.Region = part.Solid, part.Solid
	room := w.room
	room.Bond = survey.BondRule{Kind: survey.Hexagon, Den: 1}
	room.Tile.Width, room.Tile.Height = 100*mm, 100*mm
	p := bond.For(room, survey.Left)
	laid := piece.Laid{Tile: 1, Rule: piece.RuleFor(room, w.found, w.shape.Sides), Pattern: &p, Origin: plane.Point{X: 500 * mm, Y: 400 * mm}, Shape: part}
	pieces, _ := piece.CutLaid(w.shape, []piece.Laid{{Rows: w.rows[:4], Rule: w.rule, Shape: w.shape}, laid})
	low, high := laid.Reach()
	n := 0
	for _, q := range pieces {
		if q.Laid == 1 {
			n++
			require.GreaterOrEqual(t, q.Face.Bounds().Bottom, 306*mm)
			require.True(t, low <= q.Row && q.Row <= high, "row %d of %d to %d", q.Row, low, high)
			require.NotNil(t, q.Outline)
			continue
		}
		require.Nil(t, q.Outline)
		require.LessOrEqual(t, q.Face.Bounds().Top, 306*mm)
	}
	require.Positive(t, n)
}
