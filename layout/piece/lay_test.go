package piece_test

import (
	"math"
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// layRandom lays a random pattern on a random wall.
func layRandom(t *rapid.T, sealant length.Length) (survey.Shape, bond.Pattern, plane.Point, []piece.Piece) {
	r := chance.Pattern(t, 90_000)
	_, w, placed := room(t)
	s := w.Shape(r.Units, placed)
	r.Sealant, r.Bond.Plumb = sealant, false
	rule := piece.RuleFor(r, w, s.Sides)
	p := bond.For(r, survey.Left)
	origin := plane.Point{X: length.Length(rapid.IntRange(0, 400_000).Draw(t, "u")), Y: length.Length(rapid.IntRange(0, 400_000).Draw(t, "v"))}
	pieces, _ := piece.Lay(s, p, origin, rule)
	return s, p, origin, pieces
}

// geometryOf is a region for the geometry library.
func geometryOf(t require.TestingT, r plane.Region) geom.Geometry {
	var all geom.Geometry
	for i, ring := range r {
		var xy []float64
		for k := range len(ring) + 1 {
			c := ring[k%len(ring)]
			xy = append(xy, float64(c.X), float64(c.Y))
		}
		poly := geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
		var err error
		switch {
		case i == 0:
			all = poly
		case ring.Area2() < 0:
			all, err = geom.Difference(all, poly)
		default:
			all, err = geom.Union(all, poly)
		}
		require.NoError(t, err)
	}
	return all
}

// Laws 1 to 3 of patterns, by a general geometry library (simplefeatures): what is
// set of every tile is the tile's part of the wall, to within a unit and a half along
// its edges.
func TestPiecesOfPatternsAreTileAndWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, p, origin, pieces := layRandom(t, 0)
		wall := geometryOf(t, s.Region)
		faces := map[plane.Point]length.Area{}
		edges := map[plane.Point]float64{}
		for i := range pieces {
			at := pieces[i].Outline[0].Point
			faces[at] += pieces[i].Face.Area2()
			require.Positive(t, pieces[i].Face.Area2())
			for _, ring := range pieces[i].Face {
				for k, c := range ring {
					d := ring[(k+1)%len(ring)]
					edges[at] += math.Hypot(float64(c.X-d.X), float64(c.Y-d.Y))
				}
			}
		}
		require.NotEmpty(t, pieces)
		for n, set := range p.Over(origin, s.Solid.Bounds()) {
			if n%7 != 0 && len(pieces) > 60 { // the library is slow
				continue
			}
			part, err := geom.Intersection(geometryOf(t, plane.Region{set.Outline}), wall)
			require.NoError(t, err)
			at := set.Outline[0].Point
			require.InDelta(t, part.Area(), float64(faces[at])/2, 1.5*edges[at]+2000, "tile at %v", set.Outline)
		}
	})
}

// Pieces of different tiles do not overlap but for what crossings are rounded by, and of none is more seen than there is.
func TestNoTwoPiecesOfPatternsOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, _, _, pieces := layRandom(t, 6*mm)
		for i := range pieces {
			p := &pieces[i]
			box := p.Face.Bounds()
			require.True(t, box.Left >= p.Tile.Left-1 && box.Right <= p.Tile.Right+1 && box.Bottom >= p.Tile.Bottom-1 && box.Top <= p.Tile.Top+1)
			require.LessOrEqual(t, p.Face.Area2(), p.Outline.Area2()+8*length.Area(p.Tile.Width()+p.Tile.Height()))
			require.LessOrEqual(t, p.Visible.Area2(), p.Solid().Area2()+8*length.Area(p.Tile.Width()+p.Tile.Height()), "no more is seen of it than there is")
			require.Equal(t, p.Whole, p.Kind == 0)
		}
		for n := range 40 {
			i := n * len(pieces) / 40
			for k := range pieces {
				a, b := &pieces[i], &pieces[k]
				if a.Outline[0].Point == b.Outline[0].Point || !a.Face.Bounds().Overlaps(b.Face.Bounds()) {
					continue
				}
				both, err := geom.Intersection(geometryOf(t, a.Face), geometryOf(t, b.Face))
				require.NoError(t, err)
				require.LessOrEqual(t, both.Area(), 2*float64(a.Tile.Width()+a.Tile.Height()))
			}
		}
	})
}

// The least width of a piece without a notch is the smallest of its widths in all
// directions, here in 720 of them.
func TestLeastWidthIsTheSmallestOfAllDirections(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, _, _, pieces := layRandom(t, 6*mm)
		for i := range pieces {
			p := &pieces[i]
			require.LessOrEqual(t, p.Least, 2*length.Length(math.Hypot(float64(p.Tile.Width()), float64(p.Tile.Height()))))
			if p.Kind&piece.Notch != 0 || len(p.Visible) != 1 || p.Whole {
				continue
			}
			least := math.Inf(1)
			for a := range 720 {
				sin, cos := math.Sincos(float64(a) * math.Pi / 720)
				low, high := math.Inf(1), math.Inf(-1)
				for _, c := range p.Visible[0] {
					v := cos*float64(c.X) + sin*float64(c.Y)
					low, high = min(low, v), max(high, v)
				}
				least = min(least, high-low)
			}
			size := math.Hypot(float64(p.Tile.Width()), float64(p.Tile.Height()))
			require.LessOrEqual(t, float64(p.Least), least+3)
			if float64(p.Least) < least-size*math.Pi/1440-3 {
				// A corner that turns inwards by more than a leaning wall does.
				hull := plane.Region{p.Visible[0]}.Bounds()
				require.False(t, p.Visible.Area2() == 2*hull.Width().Times(hull.Height()), "%v", p.Visible)
			}
		}
	})
}

// Where no strip is left to the sealant, a boundary is bare nowhere: the mouths of
// slanted joints, up to 60° from the boundary's square, are within its reach.
func TestMouthsOfSlantedJointsAreNotBare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := chance.Pattern(t, 90_000)
		_, w, placed := room(t)
		w.Openings, placed.Openings = nil, nil
		s := w.Shape(r.Units, placed)
		r.Bond.Plumb = false
		if r.Joint > 3*mm {
			return // a joint that wide along a boundary is bare
		}
		p := bond.For(r, survey.Left)
		rule := piece.RuleFor(r, w, s.Sides)
		rule.Sealant = 8 * mm
		pieces, bare := piece.Lay(s, p, plane.Point{}, rule)
		rule.Sealant = 3 * mm // nothing is a strip: the gaps take it all
		all, _ := piece.Lay(s, p, plane.Point{}, rule)
		if len(pieces) == len(all) {
			require.Empty(t, bare)
		}
	})
}

// A piece of sealant's reach is covered; farther is bare. By hand: a square tile on
// its point, 2 mm short of a base with a gap of 3 mm.
func TestCoverageByNearness(t *testing.T) {
	base := plane.Region{plane.Rect{Left: 0, Bottom: 0, Right: 200 * mm, Top: 300 * mm}.Ring(1)}
	shape := survey.Shape{Region: base, Solid: base, Visible: base, Sides: []survey.Boundary{{}, {Name: "base", Part: survey.Part{Is: survey.BaseSegment}, Meets: true, Gap: 3 * mm}}}
	c := piece.NewCover(shape, piece.Rule{Joint: mm, Sealant: 6 * mm, Sides: shape.Sides})
	point := func(x, y length.Length) plane.Corner { return plane.Corner{Point: plane.Point{X: x * mm, Y: y * mm}} }
	c.Near(plane.Region{{point(100, 2), point(150, 52), point(100, 102), point(50, 52)}})
	var left length.Length
	for _, g := range c.Gaps() {
		if g.From.Y == 0 && g.To.Y == 0 {
			left += g.Length
		}
	}
	// 6 mm from the base, which is 5 mm under the tip, reach √(36 − 25) to each side of it; and a joint more.
	require.InDelta(t, 200-2*math.Sqrt(36-25)-2, float64(left)/float64(mm), 0.05)
}
