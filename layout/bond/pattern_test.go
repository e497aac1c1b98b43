package bond

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// around are the tiles about the origin, those of the cell among them.
func around(p Pattern) []Set {
	var box plane.Rect
	for _, t := range p.Tiles {
		b := plane.Region{t.Outline}.Bounds()
		box = plane.Rect{Left: min(box.Left, b.Left), Bottom: min(box.Bottom, b.Bottom), Right: max(box.Right, b.Right), Top: max(box.Top, b.Top)}
	}
	for _, v := range []plane.Point{p.U, p.V} {
		box.Left, box.Right = box.Left-v.X.Abs(), box.Right+v.X.Abs()
		box.Bottom, box.Top = box.Bottom-v.Y.Abs(), box.Top+v.Y.Abs()
	}
	return p.Over(plane.Point{}, box)
}

// apart tells whether some edge of either convex ring parts them. Exact.
func apart(a, b plane.Ring) bool {
	parts := func(r, s plane.Ring) bool {
		for i, c := range r {
			line, outside := plane.Through(c.Point, r[(i+1)%len(r)].Point), true
			for _, d := range s {
				outside = outside && line.Side(d.Point) <= 0
			}
			if outside {
				return true
			}
		}
		return false
	}
	return parts(a, b) || parts(b, a)
}

// Law 1, and what Over lists is all there is: no tile twice, none left out.
func TestTilesNeverOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := For(chance.Pattern(t, 20_000), survey.Right)
		sets := around(p)
		for i, a := range sets {
			for _, b := range sets[:i] {
				require.True(t, apart(a.Outline, b.Outline), "%v over %v", a, b)
			}
		}
	})
}

// Law 3. Without joints the tiles take all of the cell, to what their corners are
// rounded by: a unit along each edge. With joints, each tile's every edge has a
// neighbour as far away as the joint, and none is nearer.
func TestACellIsItsTilesAndJoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := chance.Pattern(t, 20_000)
		p := For(r, survey.Right)
		var area, edges length.Area
		for _, place := range p.Places {
			ring := p.Tiles[place.Tile].Outline
			require.Positive(t, ring.Area2(), "counter-clockwise")
			area += ring.Area2()
			for i, c := range ring {
				d := ring[(i+1)%len(ring)]
				edges += length.Area((c.X - d.X).Abs() + (c.Y - d.Y).Abs())
			}
		}
		require.Positive(t, p.Area2(), "U to V turns left")
		lost := p.Area2() - area
		require.GreaterOrEqual(t, lost, length.Area(0))
		most := edges*length.Area(r.Joint+4)*5/4 + 40*length.Area(r.Joint+4)*length.Area(r.Joint+4)*length.Area(len(p.Places))
		require.LessOrEqual(t, lost, most)
		if r.Joint == 0 {
			require.LessOrEqual(t, lost, 12*edges)
		}
	})
}

func TestJointsAreAsWideAsTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := chance.Pattern(t, 20_000)
		if r.Joint < 100 {
			return
		}
		p := For(r, survey.Right)
		sets := around(p)
		for n := range p.Places {
			at := plane.Point{X: p.Places[n].At.X, Y: p.Places[n].At.Y}
			ring := Moved(p.Tiles[p.Places[n].Tile].Outline, at)
			for i, c := range ring {
				d := ring[(i+1)%len(ring)]
				near := length.Length(1) << 40
				for _, s := range sets {
					if s.Place == n && s.At == at {
						continue
					}
					if gap, facing := across(c.Point, d.Point, s.Outline); facing {
						near = min(near, gap)
					}
				}
				require.InDelta(t, float64(r.Joint), float64(near), 16, "edge %v–%v of place %d", c, d, n)
			}
		}
	})
}

// across is how far a ring that lies right of the line a–b is from it, where its
// nearest edge lies over some of the edge.
func across(a, b plane.Point, ring plane.Ring) (length.Length, bool) {
	line := plane.Through(a, b)
	near := length.Length(1) << 40
	along := func(p plane.Point) int64 { return int64(b.X-a.X)*int64(p.X-a.X) + int64(b.Y-a.Y)*int64(p.Y-a.Y) }
	from, to := int64(1)<<62, -int64(1)<<62
	for _, c := range ring {
		if line.Side(c.Point) > 0 {
			return 0, false
		}
		near = min(near, plane.Apart(c.Point, a, b))
	}
	for _, c := range ring {
		if plane.Apart(c.Point, a, b) <= near+8 {
			from, to = min(from, along(c.Point)), max(to, along(c.Point))
		}
	}
	tenth := along(b) / 10
	return near, from < along(b)-tenth && to > tenth
}

// Law 4: rows and pattern are the same tiles.
func TestACoursedBondIsAPattern(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := chance.Pattern(t, 20_000)
		if !r.Bond.Coursed() {
			return
		}
		c := Of(r, survey.Right)
		box := plane.Rect{Left: -800_000, Bottom: -700_000, Right: 900_000, Top: 600_000}
		want := map[plane.Rect]int{}
		edge, line := length.Length(12_345), length.Length(-54_321)
		along, across := edge, line
		frame := box
		if r.Bond.Plumb {
			along, across, frame = line, edge, box.Transposed()
		}
		for _, row := range c.Rows(across, along, frame.Bottom, frame.Top) {
			for i := length.DivFloor(frame.Left-row.First, row.Pitch); ; i++ {
				left := row.First + length.Length(i)*row.Pitch
				tile := plane.Rect{Left: left, Bottom: row.Low, Right: left + row.Width, Top: row.High}
				if left >= frame.Right {
					break
				}
				if !tile.Overlaps(frame) {
					continue
				}
				if r.Bond.Plumb {
					tile = tile.Transposed()
				}
				want[tile]++
			}
		}
		got := map[plane.Rect]int{}
		for _, s := range For(r, survey.Right).Over(plane.Point{X: edge, Y: line}, box) {
			got[plane.Region{s.Outline}.Bounds()]++
		}
		require.Equal(t, want, got)
	})
}

// Law 5: wherever the lattice stands, one of its points lies in the box of phases.
func TestEveryPhaseLiesInTheBox(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := For(chance.Pattern(t, 20_000), survey.Right)
		x := length.Length(rapid.IntRange(-2_000_000, 2_000_000).Draw(t, "x"))
		y := length.Length(rapid.IntRange(-2_000_000, 2_000_000).Draw(t, "y"))
		found := 0
		p.lattice(plane.Rect{Left: -x, Right: p.Reach - x, Bottom: -y, Top: p.Rise - 1 - y}, func(plane.Point) { found++ })
		require.Positive(t, found)
	})
}

// Published arithmetic: facts.md, section 8.
func TestPublishedModules(t *testing.T) {
	const in = length.Inch
	pattern := func(kind survey.BondKind, w, h, j length.Length, with ...func(*survey.BondRule)) Pattern {
		r := survey.Room{Tile: survey.TileSize{Width: w, Height: h}, Joint: j, Bond: survey.BondRule{Kind: kind, Den: 1}}
		for _, f := range with {
			f(&r.Bond)
		}
		return For(r, survey.Right)
	}
	angle := func(a int) func(*survey.BondRule) { return func(b *survey.BondRule) { b.Angle = a } }
	near := func(want float64, unit, got length.Length, digits float64) {
		t.Helper()
		assert.InDelta(t, want, float64(got)/float64(unit), digits)
	}
	// Hexagon 2 in, joint 1/8: pitch 2.125, rows 1.8403; 36.8 in a square foot.
	hex := pattern(survey.Hexagon, 2*in, 2*in, in/8)
	near(2.125, in, hex.U.X, 0.0001)
	near(1.8403, in, hex.V.Y, 0.0001)
	assert.InDelta(t, 36.8, 2*float64((12*in).Times(12*in))/float64(hex.Area2()), 0.05)
	// The area of a hexagon is 3√3/2·a², here with a = flats/√3: geometry.
	assert.InDelta(t, 3.4641016, float64(hex.Tiles[0].Outline.Area2())/2/float64(in)/float64(in), 0.0001)
	// Point to point 2·flats/√3. A maker's box of 16 covers 4.94 sq ft: flats of 182.0 mm are
	// 210.1 from point to point; the label "8×7" is points by flats, and not the other way round.
	box := pattern(survey.Hexagon, 182*length.Millimetre, 182*length.Millimetre, 0)
	near(210.1, length.Millimetre, plane.Region{box.Tiles[0].Outline}.Bounds().Height(), 0.06)
	assert.InDelta(t, 4.94, 16*float64(box.Tiles[0].Outline.Area2())/2/float64((12*in).Times(12*in)), 0.005)
	// Picket 3 × 12, joint 1/8: across 3.125, rows 10.6143; cell 33.170, tile 31.5.
	picket := pattern(survey.Picket, 3*in, 12*in, in/8)
	near(3.125, in, picket.U.X, 0.0001)
	near(10.6143, in, picket.V.Y, 0.0001)
	assert.InDelta(t, 33.170, float64(picket.Area2())/2/float64(in*in), 0.001)
	assert.InDelta(t, 31.5, float64(picket.Tiles[0].Outline.Area2())/2/float64(in*in), 0.001)
	// Chevron, 75 mm wide, joint 3: plumb repeat 110.31 at 45°, 90.07 at 30°.
	near(110.31, length.Millimetre, pattern(survey.Chevron, 400*length.Millimetre, 75*length.Millimetre, 3*length.Millimetre, angle(45)).V.Y, 0.005)
	near(90.07, length.Millimetre, pattern(survey.Chevron, 400*length.Millimetre, 75*length.Millimetre, 3*length.Millimetre, angle(30)).V.Y, 0.005)
	// Diagonal, 4 1/4 with 1/16: crossings every 6.099. A 12 in tile is 16.97 point to point.
	diagonal := pattern(survey.Diagonal, 17*in/4, 17*in/4, in/16)
	near(6.099, in, diagonal.U.X-diagonal.V.X, 0.0005)
	near(16.97, in, plane.Region{pattern(survey.Diagonal, 12*in, 12*in, 0).Tiles[0].Outline}.Bounds().Width(), 0.005)
	// Pinwheel 12 + 6: four fifths and one fifth; 18 + 12: 69.2 and 30.8 % (no joints).
	for _, c := range []struct{ large, small, share float64 }{{12, 6, 0.8}, {18, 12, 0.692}} {
		p := pattern(survey.Pinwheel, length.Length(c.large)*in, length.Length(c.large)*in, 0, func(b *survey.BondRule) {
			b.Others = []survey.TileSize{{Width: length.Length(c.small) * in, Height: length.Length(c.small) * in}}
		})
		assert.InDelta(t, c.share, float64(p.Tiles[0].Outline.Area2())/float64(p.Area2()), 0.0005)
	}
	// Four tiles, modules of 8 in: 8 sq ft a cell; 11.1, 11.1, 44.4 and 33.3 %.
	four := pattern(survey.Modular, 8*in, 8*in, 0, func(b *survey.BondRule) {
		b.Others = []survey.TileSize{{Width: 16 * in, Height: 8 * in}, {Width: 16 * in, Height: 16 * in}, {Width: 24 * in, Height: 16 * in}}
	})
	assert.Equal(t, 8*(12*in).Times(12*in), four.Area2()/2)
	shares := make([]float64, 4)
	for _, p := range four.Places {
		shares[four.Tiles[p.Tile].Kind] += 100 * float64(four.Tiles[p.Tile].Outline.Area2()) / float64(four.Area2())
	}
	assert.InDeltaSlice(t, []float64{11.1, 11.1, 44.4, 33.3}, shares, 0.05)
	// Herringbone of any rectangle, cells of two tiles: 2·P·Q.
	assert.Equal(t, 2*(3*in+in/8).Times(7*in+in/8), pattern(survey.Herringbone, 7*in, 3*in, in/8).Area2()/2)
}
