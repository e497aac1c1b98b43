package piece_test

import (
	"slices"
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

// straight is a random wall whose edges are all level or plumb, with a set-out.
func straight(t *rapid.T) wall {
	w := wall{room: chance.Room(t, 1)}
	w.found = w.room.Walls[0]
	w.found.Left.Lean, w.found.Right.Lean = nil, nil
	for i := range w.found.Base {
		w.found.Base[i].Readings[1].Value = w.found.Base[i].Readings[0].Value
	}
	if w.found.Head.Meets {
		w.found.Head.Readings[1].Value = w.found.Head.Readings[0].Value
	}
	w.found.Right.Cover = rapid.SampledFrom([]length.Length{0, 13 * mm}).Draw(t, "cover")
	if !w.found.Right.Meets {
		w.found.Right.Cover = 0
	}
	line, edge := length.Length(rapid.IntRange(-400, 0).Draw(t, "line"))*mm, length.Length(rapid.IntRange(-400, 0).Draw(t, "edge"))*mm
	w.lay(line, edge)
	return w
}

// lay lays the wall from a line and an edge.
func (w *wall) lay(line, edge length.Length) {
	w.shape = w.found.Shape(w.room.Units, measured(w.found))
	b, box := bond.Of(w.room, survey.Left), w.shape.Solid.Bounds()
	if w.room.Bond.Plumb {
		box, line, edge = box.Transposed(), edge, line
	}
	w.rows = b.Rows(line, edge, box.Bottom-b.Across(), box.Top+b.Across())
	w.rule = piece.RuleFor(w.room, w.found, w.shape.Sides)
}

// Whole tiles are those that no boundary runs through and that stand on the wall, by brute force
// over all tiles of the bond and all edges of what is there and what is seen.
func TestWholeTilesAreThoseThatNothingCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := straight(t)
		pieces, _ := w.cut()
		whole := map[plane.Rect]bool{}
		for _, p := range pieces {
			if p.Whole && p.Visible.Area2() == p.Face.Area2() {
				whole[p.Tile] = true
			}
			require.Equal(t, p.Whole, p.Kind == 0, "%v", p.Face)
			require.Equal(t, p.Whole, len(p.Cuts) == 0)
		}
		n := 0
		for _, row := range w.rows {
			box := w.shape.Solid.Bounds()
			if w.rule.Plumb {
				box = box.Transposed()
			}
			for x := row.First - ((row.First-box.Left)/row.Pitch+2)*row.Pitch; x < box.Right; x += row.Pitch {
				tile := plane.Rect{Left: x, Right: x + row.Width, Bottom: row.Low, Top: row.High}
				if w.rule.Plumb {
					tile = tile.Transposed()
				}
				if stands := w.shape.Region.Contains(plane.Point{X: (tile.Left + tile.Right).Half(), Y: (tile.Bottom + tile.Top).Half()}) &&
					!crosses(w.shape.Region, tile) && !crosses(w.shape.Visible, tile); stands {
					n++
					require.True(t, whole[tile], "%v stands whole", tile)
				}
			}
		}
		require.Len(t, whole, n)
	})
}

// crosses tells whether an edge of a region has a point inside a box. Rims of pipes are short
// straight edges, so that it is enough to try the edge in parts.
func crosses(r plane.Region, box plane.Rect) bool {
	for _, ring := range r {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.X == b.X || a.Y == b.Y {
				if max(a.X, b.X) > box.Left && min(a.X, b.X) < box.Right && max(a.Y, b.Y) > box.Bottom && min(a.Y, b.Y) < box.Top {
					return true
				}
				continue
			}
			for k := length.Length(0); k <= 64; k++ {
				x, y := a.X+(b.X-a.X)*k/64, a.Y+(b.Y-a.Y)*k/64
				if x > box.Left && x < box.Right && y > box.Bottom && y < box.Top {
					return true
				}
			}
		}
	}
	return false
}

// A wall laid on its side, with courses for columns, gives the same pieces on their side.
func TestPiecesOnTheirSide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := straight(t)
		turn := func(r plane.Region) plane.Region { return r.Transposed() }
		side := w.shape
		side.Region = turn(w.shape.Region)
		side.Solid, side.Visible = side.Region, side.Region
		w.shape.Solid, w.shape.Visible = w.shape.Region, w.shape.Region // no pipes and nothing hidden: regions are one by identity
		rule := w.rule
		rule.Plumb = !rule.Plumb
		a, bareA := piece.Cut(w.shape, w.rows, w.rule)
		b, bareB := piece.Cut(side, w.rows, rule)
		require.Len(t, b, len(a))
		require.Len(t, bareB, len(bareA))
		for i, p := range a {
			q := b[i]
			require.Equal(t, p.Tile, q.Tile.Transposed())
			require.Equal(t, p.Face.Area2(), q.Face.Area2())
			require.Equal(t, []length.Length{p.Wide, p.High}, []length.Length{q.High, q.Wide})
			require.Equal(t, []any{p.Kind, p.Cuts, p.Unworkable, p.Sliver, p.Least}, []any{q.Kind, q.Cuts, q.Unworkable, q.Sliver, q.Least}, "a cut is across or along as the rows run")
			for _, e := range p.Across {
				require.Contains(t, q.Up, e.Transposed())
			}
		}
	})
}

// One tile on a wall where several may be laid is the wall's own.
func TestOneTileLaidIsTheWallCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := straight(t)
		if w.room.Bond.Plumb {
			t.Skip("rows must run level")
		}
		want, bareWant := w.cut()
		got, bare := piece.CutLaid(w.shape, []piece.Laid{{Rows: w.rows, Rule: w.rule, Shape: w.shape}})
		require.Equal(t, want, got)
		require.Equal(t, bareWant, bare)
	})
}

// Pieces come row by row and from the left, their numbers are each one's own, and what a piece
// shows is of what stands of it, holes aside.
func TestPiecesComeInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, rows, rule := ruled(t)
		pieces, _ := piece.Cut(s, rows, rule)
		require.True(t, slices.IsSortedFunc(pieces, func(a, b piece.Piece) int {
			x, y := a.Tile.Left-b.Tile.Left, length.Length(a.Row-b.Row)
			if rule.Plumb {
				x = a.Tile.Bottom - b.Tile.Bottom
			}
			if y != 0 {
				return int(y)
			}
			return int(max(-1, min(1, x)))
		}))
		walls := [][]piece.Piece{pieces, slices.Clone(pieces)}
		piece.Number(walls, []string{"A", "B"}, rule.Plumb)
		ids := map[string]bool{}
		for _, list := range walls {
			for _, p := range list {
				require.False(t, ids[p.ID], p.ID)
				ids[p.ID] = true
				require.GreaterOrEqual(t, p.Course, 1)
				require.LessOrEqual(t, p.Visible.Area2(), p.Solid().Area2()+4*length.Area(p.Tile.Width()+p.Tile.Height()), "to a unit along its edges")
			}
		}
	})
}

// Each piece is judged by what is said of it: its share is the less of its two, its grade follows
// from the directions in which it is cut and their limits, read anew here.
func TestAPieceIsJudgedByItsSizes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := straight(t)
		pieces, _ := w.cut()
		for _, p := range pieces {
			wide, high := piece.Part(p.Wide, w.room.Tile.Width), piece.Part(p.High, w.room.Tile.Height)
			require.False(t, wide.Less(p.Share) || high.Less(p.Share), "its share is the less of the two")
			require.True(t, p.Least == p.Wide && !p.Share.Less(wide) || p.Least == p.High && !p.Share.Less(high), "with the size that gives it")
			worst, hopeless := false, false
			for _, way := range []struct {
				edges      []piece.Edge
				size, full length.Length
			}{{p.Across, p.Wide, w.room.Tile.Width}, {p.Up, p.High, w.room.Tile.Height}} {
				if len(way.edges) > 0 {
					worst = worst || way.size < piece.SliverLimit(w.room, way.full)
					hopeless = hopeless || way.size < piece.UnworkableLimit(w.room, way.full)
				}
			}
			require.Equal(t, hopeless, p.Unworkable, "%v", p.Face)
			require.Equal(t, worst && !hopeless, p.Sliver, "%v", p.Face)
			for _, low := range []bool{false, true} {
				cut := slices.ContainsFunc(append(slices.Clone(p.Across), p.Up...), func(e piece.Edge) bool { return e.Low(w.shape.Sides) == low })
				require.False(t, !cut && p.Grade(low) != piece.Sound, "nothing of that sight cuts it")
			}
			hole := slices.ContainsFunc(p.Cuts, func(s plane.Side) bool { return w.shape.Sides[s].Kind == survey.Pipe })
			require.Equal(t, hole, p.Kind&piece.Hole != 0)
			require.Zero(t, p.Kind&piece.Taper, "nothing slants here")
			require.False(t, p.Awkward && !hole, "only a hole is awkward")
		}
	})
}

// A hole is hard to make where its rim comes within 13 mm (1/2 in) of an edge: merit.md, term 12.
// The hole of a pipe of 30 is 36 across, so its rim stands 18 from its middle.
func TestHolesNearAnEdge(t *testing.T) {
	for name, c := range map[string]struct {
		sketch  string
		awkward bool
	}{
		"32 from the lower edge":        {"1000x600 300x100+2 pipe=450,50,30", false},
		"14 from it":                    {"1000x600 300x100+2 pipe=450,32,30", false},
		"13 from it":                    {"1000x600 300x100+2 pipe=450,31,30", true},
		"12 from the end of the tile":   {"1000x600 300x100+2 pipe=332,50,30", true},
		"14 from the end of the tile":   {"1000x600 300x100+2 pipe=334,50,30", false},
		"12 from where it is cut":       {"1000x600 300x100+2 pipe=970,50,30", true}, // 906 to 1000
		"through the edge":              {"1000x600 300x100+2 pipe=450,5,30", true},
		"near the edge of another tile": {"1000x600 300x100+2 pipe=450,80,10", true}, // 8 of radius, 100 - 88
		"in columns, 12 from an end":    {"1000x600 300x100+2 columns pipe=332,50,30", true},
		"in columns, 14":                {"1000x600 300x100+2 columns pipe=334,50,30", false},
	} {
		p := sketch(c.sketch, 0, 0)
		pieces, _ := p.cut()
		got := slices.ContainsFunc(pieces, func(q piece.Piece) bool { return q.Awkward })
		require.Equal(t, c.awkward, got, name)
	}
	inch := chance.Sketch("1000x600 300x100+2")
	inch.Units = length.Imperial
	require.Equal(t, length.Inch/2, piece.RuleFor(inch, inch.Walls[0], inch.Walls[0].Sides()).NearEdge)
}
