package piece_test

import (
	"math"
	"slices"
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

// of are the pieces of the tile that holds a point, in millimetres.
func (w wall) of(x, y length.Length) (out []piece.Piece) {
	pieces, _ := w.cut()
	for _, p := range pieces {
		if p.Tile.Overlaps(plane.Rect{Left: x*mm - 1, Right: x*mm + 1, Bottom: y*mm - 1, Top: y*mm + 1}) {
			out = append(out, p)
		}
	}
	return out
}

// A tile that an opening parts is two pieces, from left to right, then upwards; one that a hole
// parts is one in two rings (formats.md, "Holes").
func TestATileInParts(t *testing.T) {
	boxes := func(w wall, x, y length.Length) (out [][4]length.Length) {
		for _, p := range w.of(x, y) {
			b := p.Face.Bounds()
			out = append(out, [4]length.Length{b.Left / mm, b.Right / mm, b.Bottom / mm, b.Top / mm})
		}
		return out
	}
	beside := sketch("1000x600 300x100+2 window=400,60,90,130", 0, 0)
	require.Equal(t, [][4]length.Length{{302, 400, 102, 202}, {460, 602, 102, 202}}, boxes(beside, 310, 150), "left and right of a window")
	over := sketch("1000x600 100x300+2 window=180,160,100,60", 0, 0)
	require.Equal(t, [][4]length.Length{{204, 304, 0, 100}, {204, 304, 160, 300}}, boxes(over, 250, 10), "under it and over it")
	columns := sketch("1000x600 300x100+2 columns window=400,60,90,130", 0, 0)
	require.Equal(t, boxes(beside, 310, 150), boxes(columns, 310, 150), "and so in columns")
	hole := sketch("1000x600 300x20+2 pipe=450,120,40", 0, 0)
	require.Equal(t, [][4]length.Length{{302, 602, 110, 130}}, boxes(hole, 310, 120), "a pipe of 46 goes right through a course of 20")
	parted := hole.of(310, 120)[0]
	require.Len(t, parted.Face, 2)
	require.Equal(t, piece.Hole, parted.Kind)
}

// What lies wholly inside a pipe's hole is no piece: tile of 20 with joints of 2 round a pipe of
// 100 and 3 all round.
func TestTilesWithinAHoleAreNone(t *testing.T) {
	w := sketch("1000x600 20x20+2 pipe=505,307,100", 0, 0)
	pieces, _ := w.cut()
	within, cut := 0, 0
	for x := length.Length(440); x < 580; x += 22 {
		for y := length.Length(242); y < 380; y += 22 {
			tile := plane.Rect{Left: x * mm, Right: (x + 20) * mm, Bottom: y * mm, Top: (y + 20) * mm}
			far := func(px, py length.Length) float64 {
				return math.Hypot(float64(px-505*mm), float64(py-307*mm)) / float64(mm)
			}
			most := max(far(tile.Left, tile.Bottom), far(tile.Right, tile.Bottom), far(tile.Left, tile.Top), far(tile.Right, tile.Top))
			there := slices.ContainsFunc(pieces, func(p piece.Piece) bool { return p.Tile == tile })
			if most < 52.9 {
				within++
				require.False(t, there, "%d, %d lies within 53", x, y)
			} else if most > 54 {
				cut++
				require.True(t, there, "%d, %d reaches out", x, y)
			}
		}
	}
	require.Positive(t, within)
	require.Positive(t, cut)
}

// Formats.md, "Sealed strips": only along what is met, and only nowhere wider than sealant fills
// beyond the gap.
func TestStripsThatAreNotCut(t *testing.T) {
	for name, c := range map[string]struct {
		sketch string
		edge   length.Length
		x      length.Length
		pieces int
	}{
		"5 in a corner":                     {"1000x600 300x100+2", -295, 2, 0},
		"6 in a corner":                     {"1000x600 300x100+2", -294, 2, 0},
		"7 in a corner":                     {"1000x600 300x100+2", -293, 2, 1},
		"4 in a corner with a gap of 3":     {"1000x600 300x100+2 gap=3", -293, 4, 1},
		"3 in a corner with a gap of 3":     {"1000x600 300x100+2 gap=3", -294, 4, 0},
		"5 at an end that stops":            {"1000x600 300x100+2 left=0", -295, 2, 1},
		"3 beside a window, and the rest":   {"1000x600 300x100+2 window=305,100,50,300", 0, 303, 2},
		"leaning from 3 to 9 over the wall": {"1000x600 300x600+2 leanleft=0,6", -291, 2, 1}, // 9 wide below
		"leaning from 5 to nothing":         {"1000x600 300x600+2 leanleft=0,6", -295, 2, 0},
	} {
		require.Len(t, sketch(c.sketch, 0, c.edge).of(c.x, 150), c.pieces, name)
	}
}

// A stretch in the corner with a boundary out of sight is bare because of it: at the foot of a
// leg, and here under a head that a cabinet hides.
func TestWhatIsBareInAHiddenCorner(t *testing.T) {
	for name, sight := range map[string]survey.Sight{"in sight": survey.Plain, "behind a cabinet": survey.Low} {
		w := sketch("986x553 100x100+10 gap=3", 3, 3)
		w.found.Head.Sight = sight
		w.shape = w.found.Shape(w.room.Units, measured(w.found))
		w.rule = piece.RuleFor(w.room, w.found, w.shape.Sides)
		_, gaps := w.cut()
		require.NotEmpty(t, gaps)
		for _, g := range gaps {
			require.Equal(t, sight == survey.Low, g.Low, "%s: %s", name, g.Edge.Name(w.shape.Sides))
		}
	}
}

// Bare wall along rakes and leans, by brute force in floating point: from a point of the boundary
// no piece has an edge that faces it within the reach of sealant, measured square to the frame.
func TestBareWallAlongSlantingEdges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, rows, rule := ruled(t)
		pieces, gaps := piece.Cut(s, rows, rule)
		for _, ring := range s.Solid {
			for i, a := range ring {
				c := ring[(i+1)%len(ring)]
				side := s.Sides[a.On]
				if a.On == 0 || !side.Meets || a.Point == c.Point {
					continue
				}
				e, reach := piece.EdgeBetween(a, c), float64(rule.Sealant-side.Gap)
				for k := 1; k < 40; k++ {
					p := plane.Point{X: a.X + (c.X-a.X)*length.Length(k)/40, Y: a.Y + (c.Y-a.Y)*length.Length(k)/40}
					nearest, sure := math.Inf(1), true
					for n := range pieces {
						off, far := offTo(pieces[n].Solid(), e.Facing(), p, float64(max(rule.Joint, rule.Sealant-side.Gap)))
						nearest = min(nearest, off)
						sure = sure && far > 600 // not where a stretch begins or ends
					}
					if sure && math.Abs(nearest-reach) > 600 {
						require.Equal(t, nearest > reach, isBareNear(gaps, e, p), "%s at %v, %v off", e.Name(s.Sides), p, nearest)
					}
				}
			}
		}
	})
}

// offTo is how far an edge of a face stands from a point of the boundary that faces it, if it
// lies opposite or so far beside; and how far the point is from where that changes.
func offTo(face plane.Region, f piece.Facing, p plane.Point, beside float64) (off, far float64) {
	turn := func(q plane.Point) (u, v float64) {
		switch f {
		case piece.OnLeft:
			return float64(q.Y), float64(q.X)
		case piece.OnRight:
			return float64(q.Y), -float64(q.X)
		case piece.Under:
			return float64(q.X), float64(q.Y)
		}
		return float64(q.X), -float64(q.Y)
	}
	off, far = math.Inf(1), math.Inf(1)
	u, v := turn(p)
	for _, ring := range face {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.Point == b.Point || piece.EdgeBetween(a, b).Facing() != f {
				continue
			}
			u0, v0 := turn(a.Point)
			u1, v1 := turn(b.Point)
			if u0 > u1 {
				u0, v0, u1, v1 = u1, v1, u0, v0
			}
			at := min(max(u, u0), u1)
			d := v0 + (v1-v0)*(at-u0)/(u1-u0) - v
			if d < -960 {
				continue // it stands behind the boundary, at another part of it
			}
			far = min(far, math.Abs(u-(u0-beside)), math.Abs(u-(u1+beside)))
			if u >= u0-beside && u <= u1+beside {
				off = min(off, d)
			}
		}
	}
	return off, far
}

func isBareNear(gaps []piece.Gap, e piece.Edge, p plane.Point) bool {
	for _, g := range gaps {
		across := e.Across()
		low, high, at := min(g.From.X, g.To.X), max(g.From.X, g.To.X), p.X
		v := g.From.Y - p.Y
		if across {
			low, high, at, v = min(g.From.Y, g.To.Y), max(g.From.Y, g.To.Y), p.Y, g.From.X-p.X
		}
		if g.Edge == e && low <= at && at <= high && v.Abs() < 100*mm {
			return true
		}
	}
	return false
}

// Patterns whose lattice stands so that an edge of the wall runs right through a corner of a
// tile: what is set is tile and wall all the same, by a geometry library (simplefeatures).
func TestEdgesThroughTheCornersOfTiles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := chance.Pattern(t, 90_000)
		w := chance.Sketch("1000x800 100x100+2").Walls[0]
		s := w.Shape(r.Units, measured(w))
		r.Sealant, r.Bond.Plumb = 0, false
		p := bond.For(r, survey.Left)
		place := p.Places[rapid.IntRange(0, len(p.Places)-1).Draw(t, "place")]
		outline := p.Tiles[place.Tile].Outline
		corner := outline[rapid.IntRange(0, len(outline)-1).Draw(t, "corner")]
		origin := plane.Point{X: -place.At.X - corner.X, Y: -place.At.Y - corner.Y} // in the corner of the wall
		if rapid.Bool().Draw(t, "on the base alone") {
			origin.X += 400 * mm
		}
		pieces, _ := piece.Lay(s, p, origin, piece.RuleFor(r, w, s.Sides))
		faces := map[plane.Point]length.Area{}
		for i := range pieces {
			faces[pieces[i].Outline[0].Point] += pieces[i].Face.Area2()
		}
		wall := geometryOf(t, s.Region)
		box := plane.Rect{Left: -300 * mm, Right: 300 * mm, Bottom: -300 * mm, Top: 300 * mm}
		for _, set := range p.Over(origin, box) {
			part, err := geom.Intersection(geometryOf(t, plane.Region{set.Outline}), wall)
			require.NoError(t, err)
			around := 0.0
			for i, c := range set.Outline {
				d := set.Outline[(i+1)%len(set.Outline)]
				around += math.Hypot(float64(c.X-d.X), float64(c.Y-d.Y))
			}
			require.InDelta(t, part.Area(), float64(faces[set.Outline[0].Point])/2, 2*around, "tile at %v", set.Outline)
		}
	})
}
