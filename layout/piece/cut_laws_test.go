package piece_test

import (
	"slices"
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// ruled cuts a random wall as cutRandom does, and gives its rule too.
func ruled(t *rapid.T) (survey.Shape, []bond.Row, piece.Rule) {
	r, w, p := room(t)
	s := w.Shape(r.Units, p)
	b := bond.Of(r, survey.Left)
	box := s.Solid.Bounds()
	if r.Bond.Plumb {
		box = box.Transposed()
	}
	along, across := length.Length(rapid.IntRange(0, 400_000).Draw(t, "along")), length.Length(rapid.IntRange(0, 400_000).Draw(t, "across"))
	return s, b.Rows(across, along, box.Bottom-b.Across(), box.Top+b.Across()), piece.RuleFor(r, w, s.Sides)
}

// Laws 1 to 3 by a general geometry library (simplefeatures): what is set of every tile, and
// what sealant takes, is the tile's part of the wall; no piece reaches beyond it.
func TestPiecesAreTileAndWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, rows, rule := ruled(t)
		rule.Sealant = 0
		pieces, _ := piece.Cut(s, rows, rule)
		wall := geometryOf(t, s.Region)
		for i := range pieces {
			p := &pieces[i]
			if p.Whole || i%5 != 0 && len(pieces) > 100 { // the library is slow
				continue
			}
			var all length.Area // a tile may be parted
			for k := range pieces {
				if pieces[k].Tile == p.Tile {
					all += pieces[k].Face.Area2()
				}
			}
			part, err := geom.Intersection(geometryOf(t, plane.Region{p.Tile.Ring(0)}), wall)
			require.NoError(t, err)
			around := float64(2 * (p.Tile.Width() + p.Tile.Height()))
			require.InDelta(t, part.Area(), float64(all)/2, 4*around, "the tile %v", p.Tile)
		}
	})
}

// Row by row a wall gives the pieces that it gives whole, in order, and bands with one key
// give the same pieces.
func TestRowsGiveThePiecesOfTheWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, rows, rule := ruled(t)
		want, _ := piece.Cut(s, rows, rule)
		var got []piece.Piece
		for _, row := range rows {
			piece.Row(piece.BandOf(s, row, rule.Plumb), row, rule, func(p *piece.Piece) { got = append(got, *p) }, func(tile plane.Rect) {
				if rule.Plumb {
					tile = tile.Transposed()
				}
				got = append(got, piece.Piece{Tile: tile, Whole: true, Row: row.Course})
			})
		}
		require.Len(t, got, len(want))
		for i := range want {
			require.Equal(t, want[i].Tile, got[i].Tile)
			require.Equal(t, want[i].Row, got[i].Row)
			if !got[i].Whole {
				require.Equal(t, []any{want[i].Face.Area2(), want[i].Wide, want[i].High, want[i].Kind, want[i].Across, want[i].Up},
					[]any{got[i].Face.Area2(), got[i].Wide, got[i].High, got[i].Kind, got[i].Across, got[i].Up})
			}
		}
	})
}

func TestKeysTellBandsApart(t *testing.T) {
	row := func(k length.Length) bond.Row {
		return bond.Row{Low: k * mm, High: (k + 100) * mm, First: 0, Width: 300 * mm, Pitch: 302 * mm}
	}
	key := func(line string, at length.Length) string {
		w := sketch(line, 0, 0)
		return piece.BandOf(w.shape, row(at), false).Key()
	}
	plain := key("1000x600 300x100+2", 100)
	require.Equal(t, plain, key("1000x700 300x100+2", 100), "what is over a band is nothing to it")
	for name, other := range map[string]string{
		"a row higher up":         key("1000x600 300x100+2", 200),
		"a wider wall":            key("1001x600 300x100+2", 100),
		"a window in it":          key("1000x600 300x100+2 window=400,200,150,200", 100),
		"a pipe in it":            key("1000x600 300x100+2 pipe=500,150,30", 100),
		"hidden under other tile": key("1000x600 300x100+2 cover=13", 100),
		"a corner that leans":     key("1000x600 300x100+2 leanleft=0,4", 100),
	} {
		require.NotEqual(t, plain, other, name)
	}
}

// Sealant only ever takes pieces away: those that stay are as they were, and of those that it
// takes every point is within its reach of the boundary that they lie along.
func TestSealantTakesStripsAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, rows, rule := ruled(t)
		s.Region, s.Visible = s.Solid, s.Solid
		with, _ := piece.Cut(s, rows, rule)
		rule.Sealant = 0
		without, _ := piece.Cut(s, rows, rule)
		rule.Sealant = 6 * mm
		i := 0
		for _, p := range without {
			if i < len(with) && with[i].Tile == p.Tile && with[i].Face.Area2() == p.Face.Area2() {
				require.Equal(t, p.Kind, with[i].Kind)
				i++
				continue
			}
			box := p.Face.Bounds()
			require.LessOrEqual(t, min(box.Width(), box.Height()), 3*mm+sway(p.Face), "6 less the gap of 3: %v", p.Face)
			require.True(t, touchesBoundary(p.Face))
		}
		require.Len(t, with, i)
	})
}

// sway is how far the edges of a face slant at most.
func sway(face plane.Region) (most length.Length) {
	for _, ring := range face {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			most = max(most, min((a.X-b.X).Abs(), (a.Y-b.Y).Abs()))
		}
	}
	return 2*most + 4
}

func touchesBoundary(face plane.Region) bool {
	for _, ring := range face {
		for _, c := range ring {
			if c.On != 0 {
				return true
			}
		}
	}
	return false
}

// Formats.md, "wide, high", of pieces with upright edges, by brute force: at every height
// between two corners the piece is cut level, and the shortest stretch between two of its
// edges is its width; and so with its height.
func TestWidthAndHeightAreTheShortestStretches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, w, p := room(t)
		w.Left.Lean, w.Right.Lean = nil, nil
		flat := func(list []survey.Reading) {
			for i := range list {
				list[i].Value = list[0].Value
			}
		}
		flat(w.Base[0].Readings)
		flat(w.Base[1].Readings)
		flat(w.Head.Readings)
		s := w.Shape(r.Units, p)
		b := bond.Of(r, survey.Left)
		box := s.Solid.Bounds()
		if r.Bond.Plumb {
			box = box.Transposed()
		}
		pieces, _ := piece.Cut(s, b.Rows(0, 0, box.Bottom-b.Across(), box.Top+b.Across()), piece.RuleFor(r, w, s.Sides))
		for _, p := range pieces {
			if len(p.Visible) == 1 {
				require.Equal(t, shortest(p.Visible[0]), p.Wide, "%v", p.Visible)
				require.Equal(t, shortest(p.Visible.Transposed()[0]), p.High, "%v", p.Visible)
			}
		}
	})
}

// shortest is the shortest level stretch across a ring of upright edges.
func shortest(ring plane.Ring) length.Length {
	var heights []length.Length
	for _, c := range ring {
		heights = append(heights, c.Y)
	}
	slices.Sort(heights)
	heights = slices.Compact(heights)
	least := length.Length(-1)
	for k := range heights[1:] {
		twice := heights[k] + heights[k+1]
		var xs []length.Length
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.X == b.X && 2*min(a.Y, b.Y) < twice && 2*max(a.Y, b.Y) > twice {
				xs = append(xs, a.X)
			}
		}
		slices.Sort(xs)
		for i := 0; i+1 < len(xs); i += 2 { // in and out again
			if d := xs[i+1] - xs[i]; least < 0 || d < least {
				least = d
			}
		}
	}
	return least
}
