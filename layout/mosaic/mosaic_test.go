package mosaic

import (
	"fmt"
	"slices"
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const mm = length.Millimetre

// drawn is a room with one wall laid at random, in any bond, in tile that comes on sheets.
func drawn(t *rapid.T) (survey.Room, []plan.Wall) {
	r := chance.Room(t, 1)
	n := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low, high).Draw(t, name))
	}
	of := chance.Pattern(t, 20_000)
	r.Tile, r.Joint, r.Bond = of.Tile, of.Joint, of.Bond
	if rapid.IntRange(0, 3).Draw(t, "small") == 0 {
		r.Joint = n("mosaic joint", 960, 4000)
		r.Tile = survey.TileSize{Width: n("mosaic width", 30_000, 90_000), Height: n("mosaic height", 30_000, 90_000), Thickness: 6 * mm}
		r.Bond = survey.BondRule{Kind: survey.Stack, Den: 1}
		if rapid.Bool().Draw(t, "hexagons") {
			r.Tile.Height = r.Tile.Width
			r.Bond = survey.BondRule{Kind: survey.Hexagon, Den: 1, Swapped: rapid.Bool().Draw(t, "flat")}
		}
	}
	across, up := r.Bond.SheetRepeat()
	r.Tile.Sheet = survey.SheetSize{Across: across * int(n("across", 1, 7)), Up: up * int(n("up", 1, 7))}
	if r.Tile.Sheet.Tiles() == 1 {
		r.Tile.Sheet.Up = 2
	}
	found := r.Walls[0]
	for i := range found.Base {
		found.Base[i].Leg = 0
	}
	p := bond.For(r, survey.Left)
	line := n("line", -300_000, 300_000)
	start := plan.Start{Edge: n("edge", 0, 300_000), Placed: placedOf(found)}
	shape := found.Shape(r.Units, start.Placed)
	if rapid.Bool().Draw(t, "large") {
		all := plane.Region{plane.Rect{Right: 900 * mm, Top: 700 * mm}.Ring(1)}
		shape.Region, shape.Solid, shape.Visible = all, all, all
	}
	pieces, _ := piece.Lay(shape, p, p.Origin(line, start.Edge), piece.RuleFor(r, found, found.Sides()))
	for i := range pieces {
		pieces[i].ID = fmt.Sprint("P", i)
	}
	return r, []plan.Wall{{Found: found, Shape: shape, Start: start, Pieces: pieces}}
}

// placedOf is a wall with its marks where they leave most wall.
func placedOf(w survey.WallFound) survey.Placed {
	p := survey.Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.To, Head: w.Head.Stops.To, Openings: make([]survey.Edges, len(w.Openings))}
	for i, o := range w.Openings {
		if o.Kind != survey.Pipe {
			p.Openings[i] = survey.Edges{Left: o.Left.From, Bottom: o.Bottom.From, Right: o.Left.From + o.Width.From, Top: o.Bottom.From + o.Height.From}
		}
	}
	return p
}

// Law 1, and law 2 for sheets with all their tiles.
func TestEveryTileIsOnOneSheet(t *testing.T) {
	full, kinds := 0, map[survey.BondKind]int{}
	rapid.Check(t, func(t *rapid.T) {
		room, walls := drawn(t)
		pieces := map[string]*piece.Piece{}
		for i := range walls[0].Pieces {
			pieces[walls[0].Pieces[i].ID] = &walls[0].Pieces[i]
		}
		seen, ids := map[string]bool{}, map[string]bool{}
		var outline []plane.Point
		for _, f := range Of(room, walls) {
			for _, sheet := range f.Sheets {
				require.False(t, ids[sheet.ID], sheet.ID)
				ids[sheet.ID] = true
				require.Equal(t, len(sheet.Pieces), sheet.Whole+sheet.Cut)
				require.LessOrEqual(t, sheet.Wide, f.Tile.Sheet.Across)
				require.LessOrEqual(t, sheet.High, f.Tile.Sheet.Up)
				var at []plane.Point
				for _, id := range sheet.Pieces {
					require.False(t, seen[id], id)
					seen[id] = true
					p := plane.Point{X: pieces[id].Tile.Left - sheet.Box.Left, Y: pieces[id].Tile.Bottom - sheet.Box.Bottom}
					if !slices.Contains(at, p) { // a tile may be in two pieces
						at = append(at, p)
					}
				}
				require.LessOrEqual(t, len(at), f.Size.Tiles())
				if len(at) < f.Size.Tiles() {
					continue
				}
				full++
				kinds[room.Bond.Kind]++
				slices.SortFunc(at, func(a, b plane.Point) int { return int(a.Y-b.Y)*1_000_000 + int(a.X-b.X) })
				if outline == nil {
					outline = at
				}
				for i := range at { // a third or a quarter of a pitch may be rounded
					require.LessOrEqual(t, (at[i].X-outline[i].X).Abs()+(at[i].Y-outline[i].Y).Abs(), 2*length.Length(min(1, room.Bond.Num)), "%v %v", outline, at)
				}
			}
		}
		require.Len(t, seen, len(pieces))
	})
	require.Greater(t, full, 100)
	require.Len(t, kinds, len(survey.Bonds), "%v", kinds)
}

// Law 3.
func TestLinesRunInJoints(t *testing.T) {
	lines := 0
	rapid.Check(t, func(t *rapid.T) {
		room, walls := drawn(t)
		if room.Joint < 960 {
			t.SkipNow() // lines are rounded to the unit
		}
		for _, f := range Of(room, walls) {
			for _, l := range f.Lines {
				lines++
				for k := range length.Length(9) {
					p := plane.Point{X: l[0].X + (l[1].X-l[0].X)*k/8, Y: l[0].Y + (l[1].Y-l[0].Y)*k/8}
					for _, q := range walls[0].Pieces {
						if b := q.Tile; p.X < b.Left || p.X > b.Right || p.Y < b.Bottom || p.Y > b.Top {
							continue
						}
						require.True(t, apart(q, p), "line %v touches %v", l, q.Tile)
					}
				}
			}
		}
	})
	require.Greater(t, lines, 1000)
}

// apart tells whether a place is outside a tile or on its edge.
func apart(p piece.Piece, at plane.Point) bool {
	ring := p.Outline
	for i, c := range ring {
		if plane.Through(c.Point, ring[(i+1)%len(ring)].Point).Side(at) <= 0 {
			return true
		}
	}
	return false
}

// Law 4, and never more sheets than parts nor fewer than their tiles fill.
func TestPartsFitTheSheetsBought(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := survey.SheetSize{Across: rapid.IntRange(1, 9).Draw(t, "across"), Up: rapid.IntRange(1, 9).Draw(t, "up")}
		var parts []part
		tiles := 0
		for range rapid.IntRange(0, 30).Draw(t, "parts") {
			p := part{rapid.IntRange(1, size.Across).Draw(t, "wide"), rapid.IntRange(1, size.Up).Draw(t, "high")}
			parts, tiles = append(parts, p), tiles+p.wide*p.high
		}
		sheets := fit(parts, size)
		n := 0
		for _, s := range sheets {
			taken := map[cell]bool{}
			for _, p := range s {
				n++
				for x := range p.wide {
					for y := range p.high {
						at := cell{p.at.x + x, p.at.y + y}
						require.False(t, taken[at] || at.x >= size.Across || at.y >= size.Up)
						taken[at] = true
					}
				}
			}
		}
		require.Equal(t, len(parts), n)
		require.LessOrEqual(t, len(sheets), len(parts))
		require.GreaterOrEqual(t, len(sheets)*size.Tiles(), tiles)
	})
}

// The strips of facts.md: a sheet of 18 rows gives 6 strips of 3, or 3 of 6.
func TestASheetGivesItsStrips(t *testing.T) {
	size := survey.SheetSize{Across: 18, Up: 18}
	require.Len(t, fit(slices.Repeat([]part{{18, 3}}, 6), size), 1)
	require.Len(t, fit(slices.Repeat([]part{{18, 6}}, 3), size), 1)
	require.Len(t, fit(slices.Repeat([]part{{18, 6}}, 4), size), 2)
}
