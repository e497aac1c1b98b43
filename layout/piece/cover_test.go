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

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Bare wall worked by hand, in millimetres: sealant fills 6, so that beside a gap of 3 it
// reaches 3 on, and a joint of 10 is wider than it reaches.
func TestBareWallByHand(t *testing.T) {
	type bare map[string]length.Length
	for name, c := range map[string]struct {
		sketch     string
		line, edge length.Length
		want, low  bare
	}{
		// Tile begins at 10, the corner's tile would begin at 3: 7 off along five courses and
		// the four joints between. What the sealant reaches at base and head is none of it.
		"every course too far from the left": {"996x546 100x100+10 gap=3", 3, 10, bare{"left": 540}, nil},
		"and from the right, begun at 6":     {"996x546 100x100+10 gap=3", 3, 6, bare{"right": 540}, nil},
		"3 off at either end":                {"992x546 100x100+10 gap=3", 3, 6, nil, nil}, // 6 to 986 of 3 to 989
		"4 off at the left":                  {"992x546 100x100+10 gap=3", 3, 7, bare{"left": 540}, nil},
		"a course too far from the head":     {"986x553 100x100+10 gap=3", 3, 3, bare{"head": 980}, nil},
		"at an end that stops, never":        {"993x546 100x100+10 gap=3 left=3", 3, 10, nil, nil},
		"no gap at all, a joint of 2":        {"1000x600 300x98+2", 0, -151, nil, nil},
		"a tile a joint off the corner":      {"1000x600 300x100+8", 0, 7, bare{"left": 600}, nil},
		"a tile so near that sealant fills":  {"1000x600 300x100+8", 0, 6, nil, nil},
		// The tile of the leg's courses ends 8 short of the step's front, as on the wall over it.
		"the front of a tub": {"1000x600 142x100+8 leg=150", 0, 0, bare{"step 0": 200}, nil},
		// The floor of the leg is out of sight, and so is what is bare there.
		"the floor of a leg": {"1000x600 150x100+8 leg=150", -192, 0, nil, bare{"base 0": 150}},
	} {
		w := sketch(c.sketch, c.line, c.edge)
		_, gaps := w.cut()
		got, low := bare{}, bare{}
		for _, g := range gaps {
			into := got
			if g.Low {
				into = low
			}
			into[g.Edge.Name(w.shape.Sides)] += g.Length / mm
			along := (g.From.X - g.To.X).Abs() + (g.From.Y - g.To.Y).Abs()
			require.Equal(t, g.Length, along, "%s: its ends are as far apart as it is long", name)
		}
		for _, pair := range [][2]bare{{c.want, got}, {c.low, low}} {
			if pair[0] == nil {
				pair[0] = bare{}
			}
			require.Equal(t, pair[0], pair[1], name)
		}
	}
}

// Bare wall by brute force, on walls with upright edges: from a point of the boundary no piece
// has an edge that faces it within the reach of sealant, a joint further on either side or as
// far as sealant reaches.
func TestBareWallIsWhatNoPieceComesNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := chance.Room(t, 1)
		f := r.Walls[0]
		f.Left.Lean, f.Right.Lean = nil, nil
		for i := range f.Base {
			f.Base[i].Readings[1].Value = f.Base[i].Readings[0].Value
		}
		if f.Head.Meets {
			f.Head.Readings[1].Value = f.Head.Readings[0].Value
		}
		s := f.Shape(r.Units, measured(f))
		b, box := bond.Of(r, survey.Left), s.Solid.Bounds()
		if r.Bond.Plumb {
			box = box.Transposed()
		}
		rows := b.Rows(length.Length(rapid.IntRange(-400, 0).Draw(t, "across"))*mm, length.Length(rapid.IntRange(-400, 0).Draw(t, "along"))*mm, box.Bottom-b.Across(), box.Top+b.Across())
		pieces, gaps := piece.Cut(s, rows, piece.RuleFor(r, f, s.Sides))
		for _, ring := range s.Solid {
			for i, a := range ring {
				c := ring[(i+1)%len(ring)]
				side := s.Sides[a.On]
				if a.On == 0 || !side.Meets {
					continue
				}
				e, n := piece.EdgeBetween(a, c), (a.X-c.X).Abs()+(a.Y-c.Y).Abs()
				for at := length.Length(481); at < n; at += 7*mm + 13 { // never where a stretch begins or ends
					p := between(a.Point, c.Point, at, n)
					reach := r.Sealant - side.Gap
					covered := false
					for k := range pieces {
						covered = covered || faces(pieces[k].Solid(), e.Facing(), p, reach, max(r.Joint, reach))
					}
					require.Equal(t, !covered, isBare(gaps, e, p), "%s at %v", e.Name(s.Sides), p)
				}
			}
		}
	})
}

func between(a, c plane.Point, at, n length.Length) plane.Point {
	return plane.Point{X: a.X + (c.X-a.X)/n*at, Y: a.Y + (c.Y-a.Y)/n*at}
}

// faces tells whether an edge of a face stands on the tile's side of a point of the boundary,
// no farther off than reach, and no farther along than beside.
func faces(face plane.Region, f piece.Facing, p plane.Point, reach, beside length.Length) bool {
	for _, ring := range face {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if piece.EdgeBetween(a, b).Facing() != f {
				continue
			}
			u, low, high, off := p.X, min(a.X, b.X), max(a.X, b.X), a.Y-p.Y
			if f == piece.OnLeft || f == piece.OnRight {
				u, low, high, off = p.Y, min(a.Y, b.Y), max(a.Y, b.Y), a.X-p.X
			}
			if f == piece.OnRight || f == piece.Over {
				off = -off
			}
			if off >= 0 && off <= reach && low-beside <= u && u <= high+beside {
				return true
			}
		}
	}
	return false
}

func isBare(gaps []piece.Gap, e piece.Edge, p plane.Point) bool {
	for _, g := range gaps {
		if g.Edge == e && min(g.From.X, g.To.X) <= p.X && p.X <= max(g.From.X, g.To.X) && min(g.From.Y, g.To.Y) <= p.Y && p.Y <= max(g.From.Y, g.To.Y) {
			return true
		}
	}
	return false
}

// What covers a wall does so in any order and however often; cleared, all of it is bare again.
func TestACoverKnowsNoOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, rows, rule := ruled(t)
		pieces, want := piece.Cut(s, rows, rule)
		if rule.Plumb {
			t.Skip("a cover is in the frame of the rows")
		}
		c := piece.NewCover(s, rule)
		none := c.Gaps()
		for i := len(pieces) - 1; i >= 0; i-- {
			c.Region(pieces[i].Solid())
		}
		require.Equal(t, want, c.Gaps())
		for i := range pieces {
			if pieces[i].Whole {
				c.Rect(pieces[i].Tile)
			}
		}
		require.Equal(t, want, c.Gaps(), "a tile that stands twice covers no more")
		c.Clear()
		require.Equal(t, none, c.Gaps())
		var all, round length.Length
		for _, g := range none {
			all += g.Length
		}
		for _, ring := range s.Solid {
			for i, a := range ring {
				b := ring[(i+1)%len(ring)]
				if a.On != 0 && s.Sides[a.On].Meets {
					if e := piece.EdgeBetween(a, b); e.Across() {
						round += (a.Y - b.Y).Abs()
					} else {
						round += (a.X - b.X).Abs()
					}
				}
			}
		}
		require.Equal(t, round, all, "with nothing on it all of the boundary is bare")
	})
	var none *piece.Cover
	none.Rect(plane.Rect{})
	none.Region(nil)
	none.Near(nil) // a cutter without a cover covers nothing
}

// What was covered on a wall is covered there again as it was, however often it is kept aside, and takes no more room: of a
// boundary that bends each part once took what the other had over the bend, twice as much every time, until a room of small
// tile took all memory there was.
func TestACoverThatIsTakenBackIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := chance.Sketch("1000x600 60x60+3 gap=3")
		f := r.Walls[0]
		bends := length.Length(rapid.IntRange(100, 900).Draw(t, "bends")) * mm
		f.Base[0].Readings = []survey.Reading{{At: 0}, {At: bends, Value: -6 * mm}, {At: f.Width, Value: -6 * mm}}
		s := f.Shape(r.Units, measured(f))
		c := piece.NewCover(s, piece.RuleFor(r, f, s.Sides))
		for range rapid.IntRange(1, 9).Draw(t, "tiles") {
			x, y := rapid.IntRange(-60, 1000).Draw(t, "x"), rapid.IntRange(-10, 10).Draw(t, "y")
			at := plane.Point{X: length.Length(x) * mm, Y: length.Length(y) * mm}
			c.Near(plane.Region{plane.Rect{Left: at.X, Bottom: at.Y, Right: at.X + 60*mm, Top: at.Y + 60*mm}.Ring(0)})
		}
		want, kept := c.Gaps(), c.Copy(nil)
		again := func() {
			c.Clear()
			c.Take(kept)
			kept = c.Copy(kept)
		}
		again()
		require.Equal(t, want, c.Gaps())
		for range 9 {
			again()
		}
		require.Zero(t, testing.AllocsPerRun(1, again))
	})
}

// By nearness, as patterns cover: a point of a base is covered where some edge of a piece is
// within reach in a straight line; for random triangles, by the distance to each of their edges.
func TestNearnessIsTheDistanceToAnEdge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) length.Length {
			return length.Length(rapid.IntRange(low, high).Draw(t, name)) * mm / 10
		}
		base := plane.Region{plane.Rect{Left: 0, Bottom: 0, Right: 200 * mm, Top: 300 * mm}.Ring(1)}
		gap := n("gap", 0, 60)
		shape := survey.Shape{Region: base, Solid: base, Visible: base, Sides: []survey.Boundary{{}, {Name: "base", Meets: true, Gap: gap}}}
		c := piece.NewCover(shape, piece.Rule{Joint: 0, Sealant: 6 * mm, Sides: shape.Sides})
		tri := plane.Ring{{Point: plane.Point{X: n("x", 200, 1800), Y: n("y", 0, 80)}}, {Point: plane.Point{X: n("x", 200, 1800), Y: n("y", 0, 200)}}, {Point: plane.Point{X: n("x", 200, 1800), Y: n("y", 300, 900)}}}
		c.Near(plane.Region{tri})
		gaps := c.Gaps()
		for x := 5 * mm; x < 200*mm; x += 3 * mm {
			least := math.Inf(1) // from the board's surface, the gap under the boundary
			for i, a := range tri {
				least = min(least, distance(plane.Point{X: x, Y: -gap}, a.Point, tri[(i+1)%3].Point))
			}
			bare := false
			for _, g := range gaps {
				bare = bare || g.From.Y == 0 && g.To.Y == 0 && min(g.From.X, g.To.X) <= x && x <= max(g.From.X, g.To.X)
			}
			if off := least - float64(6*mm); math.Abs(off) > 60 {
				require.Equal(t, off > 0, bare, "%v from %v", least, x)
			}
		}
	})
}

func distance(p, a, b plane.Point) float64 {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	k := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		k = max(0, min(1, (float64(p.X-a.X)*dx+float64(p.Y-a.Y)*dy)/l))
	}
	return math.Hypot(float64(a.X)+k*dx-float64(p.X), float64(a.Y)+k*dy-float64(p.Y))
}
