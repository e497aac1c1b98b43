package plane

import (
	"math"
	"slices"
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func number(t *rapid.T, name string, low, high int) length.Length {
	return length.Length(rapid.IntRange(low, high).Draw(t, name))
}

// randomRegion is a polygon with level, plumb and raked edges: a raked base and
// head between plumb ends, with a step at times, and at times a hole in it.
func randomRegion(t *rapid.T) Region {
	base := Ring{{Point{0, number(t, "y0", -9000, 0)}, 4}}
	x := length.Length(0)
	for range rapid.IntRange(1, 4).Draw(t, "readings") {
		x += number(t, "run", 500, 9000)
		base = append(base, Corner{Point{x, number(t, "y", -9000, 0)}, 4})
		if rapid.Bool().Draw(t, "step") {
			base = append(base, Corner{Point{x, number(t, "step y", -9000, 0)}, 4})
		}
	}
	x += 700
	base = append(base, Corner{Point{x, -100}, 2})
	ring := append(base, Corner{Point{x, number(t, "right top", 20000, 30000)}, 3}, Corner{Point{0, number(t, "left top", 20000, 30000)}, 1})
	r := Region{ring.tidy()}
	if rapid.Bool().Draw(t, "hole") {
		left, bottom := number(t, "left", 50, 200), number(t, "bottom", 100, 9000)
		r = r.Less(Rect{left, bottom, left + number(t, "wide", 10, 900), bottom + number(t, "tall", 10, 9000)}.Ring(0), 5)
	}
	return r
}

// line is level, plumb, or through two places whose coordinates may coincide
// with the region's corners.
func randomLine(t *rapid.T, r Region) Line {
	corner := func(name string) Point {
		ring := r[rapid.IntRange(0, len(r)-1).Draw(t, name+" ring")]
		return ring[rapid.IntRange(0, len(ring)-1).Draw(t, name)].Point
	}
	x, y := number(t, "x", -10, 9000), number(t, "y", -9000, 30000)
	if rapid.Bool().Draw(t, "at a corner") {
		c := corner("corner")
		x, y = c.X, c.Y
	}
	switch rapid.IntRange(0, 4).Draw(t, "kind") {
	case 0:
		return Above(y)
	case 1:
		return Below(y)
	case 2:
		return RightOf(x)
	case 3:
		return LeftOf(x)
	}
	to := Point{number(t, "to x", -10, 9000), number(t, "to y", -9000, 30000)}
	if to == (Point{x, y}) {
		to.X++
	}
	return Through(Point{x, y}, to)
}

func reversed(l Line) Line { return Line{l.P, Point{-l.D.X, -l.D.Y}} }

// What is left of a line and what is right of it make the whole, exactly; each
// lies on its side.
func TestBothSidesOfALineMakeTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := randomRegion(t)
		l := randomLine(t, r)
		l.halve(t, r.Bend(l), l.upright())
	})
}

func (l Line) upright() bool { return l.D.X == 0 || l.D.Y == 0 }

// halve checks the halves. A corner that Bend rounds onto a line that is not
// upright may stand beside it; then the halves are exact to the rounding only.
func (l Line) halve(t *rapid.T, bent Region, exact bool) {
	left, right := bent.Keep(l), bent.Keep(reversed(l))
	if exact {
		require.Equal(t, bent.Area2(), left.Area2()+right.Area2())
		onSide(t, l, left)
		onSide(t, reversed(l), right)
		return
	}
	box := bent.Bounds()
	require.InDelta(t, float64(bent.Area2()), float64(left.Area2()+right.Area2()), 8*float64(box.Width()+box.Height()))
}

func onSide(t *rapid.T, l Line, r Region) {
	for _, ring := range r {
		require.GreaterOrEqual(t, len(ring), 3)
		for _, c := range ring {
			require.GreaterOrEqual(t, l.Side(c.Point), int64(0))
		}
	}
}

// Bend moves an edge by less than a unit, so the area by less than a unit times
// the outline.
func TestBendMovesNoEdgeByAUnit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := randomRegion(t)
		bent := r.Bend(randomLine(t, r))
		around := 0.0
		for _, ring := range r {
			for i, a := range ring {
				b := ring[(i+1)%len(ring)]
				around += math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y))
			}
		}
		require.LessOrEqual(t, math.Abs(float64(bent.Area2()-r.Area2())), 2*around)
	})
}

// A region less a rectangle has the region's area but for what both have.
func TestLessTakesExactlyWhatBothHave(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := randomRegion(t)
		left, bottom := number(t, "left", -500, 9000), number(t, "bottom", -9500, 30000)
		hole := Rect{left, bottom, left + number(t, "wide", 1, 9000), bottom + number(t, "tall", 1, 15000)}
		ring := hole.Ring(0)
		bent := r
		for i, c := range ring {
			bent = bent.bendIn(Through(c.Point, ring[(i+1)%4].Point), hole)
		}
		less := r.Less(ring, 7)
		both := bent.KeepAll(Above(hole.Bottom), Below(hole.Top), RightOf(hole.Left), LeftOf(hole.Right))
		require.Equal(t, bent.Area2(), less.Area2()+both.Area2())
		require.Zero(t, less.KeepAll(Above(hole.Bottom), Below(hole.Top), RightOf(hole.Left), LeftOf(hole.Right)).Area2())
	})
}

// A rectangle that touches nothing is taken out at once as it is edge by edge.
func TestAHoleThatTouchesNothing(t *testing.T) {
	pierced := 0
	rapid.Check(t, func(t *rapid.T) {
		r := randomRegion(t)
		left, bottom := number(t, "hole left", 0, 9000), number(t, "hole bottom", -9000, 20000)
		ring := Rect{left, bottom, left + number(t, "hole wide", 1, 9000), bottom + number(t, "hole tall", 1, 9000)}.Ring(0)
		box := Region{ring}.Bounds()
		taken := r.KeepAll(Above(box.Bottom), LeftOf(box.Right), Below(box.Top), RightOf(box.Left))
		if len(taken) == 1 && r.clearOf(box) {
			require.Equal(t, r.without(taken, 7, false), r.pierced(taken[0], 7))
			pierced++
		}
	})
	require.Positive(t, pierced)
}

// A ring that takes part of a rectangle away: areas by hand.
func TestLessOfARectangle(t *testing.T) {
	whole := Region{Rect{0, 0, 100, 60}.Ring(1)}
	for _, c := range []struct {
		name  string
		hole  Rect
		left  length.Area
		rings int
	}{
		{"a hole in the middle", Rect{40, 20, 60, 40}, 6000 - 400, 2},
		{"a notch at the base", Rect{40, -5, 60, 20}, 6000 - 400, 1},
		{"a corner", Rect{90, 50, 120, 80}, 6000 - 100, 1},
		{"a strip through it", Rect{40, -5, 60, 70}, 6000 - 1200, 2},
		{"touching from outside", Rect{100, 0, 120, 60}, 6000, 1},
		{"all of it", Rect{-1, -1, 101, 61}, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := whole.Less(c.hole.Ring(0), 2)
			require.Equal(t, 2*c.left, got.Area2())
			require.Len(t, got, c.rings)
		})
	}
}

// The ring round a circle holds all of it, and little more. Under a millimetre
// across, rounding to the unit may cut into it; a pipe with its clearance is 6 mm.
func TestACircleRingStandsOutsideTheCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := Point{number(t, "x", -99999, 99999), number(t, "y", -99999, 99999)}
		diameter := number(t, "diameter", 960, 960_000)
		ring := Circle(at, diameter, 9)
		require.Len(t, ring, 64)
		require.Positive(t, ring.Area2())
		r := float64(diameter) / 2
		for i, a := range ring {
			require.EqualValues(t, 9, a.On)
			b := ring[(i+1)%len(ring)]
			ax, ay, bx, by := float64(a.X-at.X), float64(a.Y-at.Y), float64(b.X-at.X), float64(b.Y-at.Y)
			require.GreaterOrEqual(t, (ax*by-bx*ay)+1e-3, r*math.Hypot(bx-ax, by-ay), "an edge cuts the circle")
			require.LessOrEqual(t, math.Hypot(ax, ay), r*1.0013+1.5)
		}
	})
}

// Twice transposed is the same; once keeps the area and the edges' sides.
func TestTransposedTwiceIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := randomRegion(t)
		once := r.Transposed()
		require.Equal(t, r, once.Transposed())
		require.Equal(t, r.Area2(), once.Area2())
		require.Equal(t, r.Bounds().Transposed(), once.Bounds())
		require.Equal(t, sides(r), sides(once))
	})
}

// sides counts the length of edges in each direction by side.
func sides(r Region) map[Side]length.Length {
	out := map[Side]length.Length{}
	for _, ring := range r {
		for i, c := range ring {
			b := ring[(i+1)%len(ring)]
			out[c.On] += (b.X - c.X).Abs() + (b.Y - c.Y).Abs()
		}
	}
	return out
}

// Parts are the whole, each an outer ring with its holes.
func TestPartsMakeTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := randomRegion(t)
		y := number(t, "y", -9000, 0)
		r = r.Bend(Above(y)).Keep(Below(y))
		var sum length.Area
		for _, p := range r.Parts() {
			require.Positive(t, p[0].Area2())
			for _, hole := range p[1:] {
				require.Negative(t, hole.Area2())
			}
			sum += p.Area2()
		}
		require.Equal(t, r.Area2(), sum)
	})
}

// Slices of shapes worked out by hand.
func TestAcross(t *testing.T) {
	for _, c := range []struct {
		name        string
		shape       Region
		least, most length.Length
		found       bool
	}{
		{"a rectangle", Region{Rect{0, 0, 40, 10}.Ring(0)}, 40, 40, true},
		{"an L: its thin leg", Region{{{Point{0, 0}, 0}, {Point{40, 0}, 0}, {Point{40, 10}, 0}, {Point{6, 10}, 0}, {Point{6, 30}, 0}, {Point{0, 30}, 0}}}, 6, 40, true},
		{"a taper: its short side", Region{{{Point{0, 0}, 0}, {Point{40, 0}, 0}, {Point{36, 30}, 0}, {Point{0, 30}, 0}}}, 36, 40, true},
		{"a raked wedge has no facing plumb edges", Region{{{Point{0, 0}, 0}, {Point{40, 0}, 0}, {Point{40, 9}, 0}}}, 0, 40, false},
		{"a hole makes two legs", Region{Rect{0, 0, 40, 10}.Ring(0)}.Less(Rect{5, 2, 10, 8}.Ring(0), 1), 5, 40, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := c.shape.Across()
			require.Equal(t, Slices{c.least, c.most, c.found}, got)
		})
	}
}

// At 45° an edge is a level one: it is measured to plumb, and not level.
func TestAnEdgeAt45DegreesIsMeasuredPlumb(t *testing.T) {
	taper := Region{{{Point{0, 0}, 0}, {Point{40, 0}, 0}, {Point{40, 10}, 0}, {Point{20, 30}, 0}, {Point{0, 30}, 0}}}
	require.Equal(t, Slices{10, 30, true}, taper.Upward())
	require.Equal(t, Slices{40, 40, true}, taper.Across())
}

// Bent at many lines at once, cutting along any of them is exact.
func TestBendYMakesEveryCutExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := randomRegion(t)
		var ys []length.Length
		for range rapid.IntRange(1, 6).Draw(t, "lines") {
			ys = append(ys, number(t, "y", -9000, 30000))
		}
		slices.Sort(ys)
		bent := r.BendY(slices.Compact(ys))
		for _, y := range ys {
			Above(y).halve(t, bent, true)
		}
	})
}

// FuzzKeep cuts a raked quadrilateral along any upright line.
func FuzzKeep(f *testing.F) {
	f.Add(int32(0), int32(5), int32(100), int32(3), int32(90), int32(60), int32(2), int32(70), int32(30), true)
	f.Add(int32(0), int32(0), int32(100), int32(0), int32(100), int32(60), int32(0), int32(60), int32(0), false)
	f.Add(int32(0), int32(0), int32(100), int32(10), int32(50), int32(5), int32(0), int32(60), int32(5), false)
	f.Fuzz(func(t *testing.T, ax, ay, bx, by, cx, cy, dx, dy, at int32, level bool) {
		p := func(x, y int32) Corner { return Corner{Point{length.Length(x), length.Length(y)}, 1} }
		ring := Ring{p(ax, ay), p(bx, by), p(cx, cy), p(dx, dy)}
		if !convex(ring) {
			t.Skip("not a convex wall")
		}
		l := LeftOf(length.Length(at))
		if level {
			l = Above(length.Length(at))
		}
		bent := Region{ring}.Bend(l)
		left, right := bent.Keep(l), bent.Keep(reversed(l))
		if left.Area2()+right.Area2() != bent.Area2() {
			t.Fatalf("%d and %d do not make %d", left.Area2(), right.Area2(), bent.Area2())
		}
		if len(left) > 1 || len(right) > 1 {
			t.Fatal("a convex wall falls into parts")
		}
	})
}

func convex(r Ring) bool {
	for i, a := range r {
		b := r[(i+1)%len(r)].Point
		if Through(a.Point, b).Side(r[(i+2)%len(r)].Point) <= 0 {
			return false
		}
	}
	return r.Area2() > 0
}

// Found by a law of the pieces: where a pipe's hole runs
// into a leaning edge, crossings rounded one way for the wall and another way for
// the hole left a strip of negative area, and a piece was made of it.
func TestAPipeOnALeaningEdgeLeavesNoStripBehind(t *testing.T) {
	lean := Region{{
		{Point: Point{X: 18230, Y: -672000}}, {Point: Point{X: 477120, Y: -672000}},
		{Point: Point{X: 477120, Y: 861120}}, {Point: Point{X: 7362, Y: 576000}, On: 1},
	}}
	circle := Circle(Point{X: 48398, Y: 58}, 121084+2*3*960, 0)
	left := lean.Less(circle, 7)
	require.Len(t, left, 1, "the hole is a notch in the edge")
	require.Positive(t, left[0].Area2())
	require.InDelta(t, float64(lean.Area2()-lean.KeepAll(linesOf(circle)...).Area2()), float64(left.Area2()), 2*1_000_000)
}

// linesOf are the lines along a ring's edges, keeping its inside.
func linesOf(r Ring) []Line {
	var lines []Line
	for i, c := range r {
		lines = append(lines, Through(c.Point, r[(i+1)%len(r)].Point))
	}
	return lines
}

// What is kept to the left of several lines is what is kept line by line, in room that was used before too.
func TestKeepAllIsKeepAfterKeep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := randomRegion(t)
		var lines []Line
		want := r
		for range rapid.IntRange(1, 8).Draw(t, "lines") {
			l := randomLine(t, r)
			lines = append(lines, l)
			want = want.Keep(l)
		}
		room := new(Room)
		randomRegion(t).KeepAllIn(room, lines...)
		for _, got := range []Region{r.KeepAll(lines...), r.KeepAllIn(room, lines...)} {
			require.Equal(t, len(want), len(got))
			for i := range want {
				require.Equal(t, want[i], got[i])
			}
		}
	})
}
