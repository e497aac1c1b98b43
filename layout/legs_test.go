package layout_test

import (
	"slices"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// legged is a wall with a tub between two legs, in half bond.
func legged(left, right string) survey.Job {
	level := func(drop, from, to string) []survey.Drop {
		return []survey.Drop{{At: from, Drop: drop}, {At: to, Drop: drop}}
	}
	return survey.Job{Format: survey.Format, Title: "legs", Units: "mm",
		Tile: survey.Tile{Width: "200", Height: "100"}, Joint: survey.Measure{Plain: "3"}, Bond: survey.Bond{Kind: "running"},
		Walls: []survey.Wall{{Name: "wall", Width: "1100", Left: survey.End{Stops: &survey.Mark{At: "0"}}, Right: survey.End{Stops: &survey.Mark{At: "1100"}},
			Base: []survey.Segment{{Meets: "floor", Gap: "3", Leg: left, Readings: level("950", "0", "130")},
				{Meets: "tub", Gap: "3", Readings: level("500", "130", "950")},
				{Meets: "floor", Gap: "3", Leg: right, Readings: level("950", "950", "1100")}},
			Head: survey.Head{Stops: &survey.Mark{At: "300"}}}}}
}

// beside are the pieces of a wall wholly under the rim.
func beside(p layout.Plan, rim length.Length) (left, right []piece.Piece) {
	for _, x := range p.Walls[0].Pieces {
		switch b := x.Face.Bounds(); {
		case b.Top > rim:
		case b.Right < 500*length.Millimetre:
			left = append(left, x)
		default:
			right = append(right, x)
		}
	}
	return left, right
}

// A leg of 127 mm (130 less the gap) is one piece of that width in every course; the
// other, 147 mm wide, too. In the bond they are cut as the bond falls.
func TestLegsInSingleTiles(t *testing.T) {
	p, err := layout.Now(legged("single", "single"))
	require.NoError(t, err)
	rim := -497 * length.Millimetre
	left, right := beside(p, rim)
	require.NotEmpty(t, left)
	courses := map[int]int{}
	for _, x := range left {
		courses[x.Course]++
		assert.Equal(t, 127*length.Millimetre, x.Wide, x.ID)
		assert.Equal(t, length.Length(0), x.Tile.Left, "the factory edge stands at the end of the wall")
		require.Len(t, x.Across, 1, x.ID)
		assert.Equal(t, "step 0", x.Across[0].Name(p.Walls[0].Shape.Sides), "it is cut beside the front of the tub")
	}
	for _, x := range right {
		courses[x.Course]++
		assert.Equal(t, 147*length.Millimetre, x.Wide, x.ID)
		assert.Equal(t, 1100*length.Millimetre, x.Tile.Right)
	}
	for c, n := range courses {
		assert.Equal(t, 2, n, "one piece in each leg in course %d", c)
	}
	assert.True(t, slices.IsSortedFunc(p.Walls[0].Pieces, func(a, b piece.Piece) int { return a.Course - b.Course }))

	bond, err := layout.Now(legged("", ""))
	require.NoError(t, err)
	inBond, _ := beside(bond, rim)
	assert.Greater(t, len(inBond), len(left), "in half bond every other course of a leg has two pieces")
}

func TestALegLeftOut(t *testing.T) {
	p, err := layout.Now(legged("none", "single"))
	require.NoError(t, err)
	left, right := beside(p, -497*length.Millimetre)
	assert.Empty(t, left)
	assert.NotEmpty(t, right)
	for _, x := range p.Walls[0].Pieces {
		if x.Face.Bounds().Left == 0 {
			assert.GreaterOrEqual(t, x.Face.Bounds().Bottom, -497*length.Millimetre, x.ID)
		}
	}
}

// Wherever rim, floor and fronts are, pieces lie apart from each other in the wall and
// leave nothing bare that the same wall in bond does not: no place is farther than a
// joint from a piece, but in front of sealed edges.
func TestPiecesOfLegsMakeUpTheWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := legged(rapid.SampledFrom(survey.Legs()).Draw(t, "left"), rapid.SampledFrom(survey.Legs()).Draw(t, "right"))
		mm := func(name string, low, high int) string {
			return length.Length(rapid.IntRange(low, high).Draw(t, name)*int(length.Millimetre)).Plain(length.Metric, 0)
		}
		rim, drop := mm("rim", 400, 600), mm("floor", 620, 1000)
		job.Walls[0].Base[1].Readings[0].Drop, job.Walls[0].Base[1].Readings[1].Drop = rim, rim
		for _, i := range []int{0, 2} {
			job.Walls[0].Base[i].Readings[0].Drop, job.Walls[0].Base[i].Readings[1].Drop = drop, drop
		}
		job.Pins = survey.Pins{Course: survey.CoursePin{Line: "-300"}, Walls: map[string]survey.WallPin{"wall": {Edge: mm("edge", 0, 200)}}}
		p, err := layout.Now(job)
		require.NoError(t, err)
		w := p.Walls[0]
		rest := w.Shape.Region
		for i, x := range w.Pieces {
			for _, y := range w.Pieces[i+1:] {
				both, err := geom.Intersection(outlined(x.Face), outlined(y.Face))
				require.NoError(t, err)
				require.Zero(t, both.Area(), "%s and %s lie apart, by a general geometry library", x.ID, y.ID)
			}
			for _, ring := range boxes(x.Face) {
				rest = rest.Less(ring, 1)
			}
		}
		for _, part := range rest.Parts() {
			b := part.Bounds()
			require.LessOrEqual(t, min(b.Width(), b.Height()), p.Room.Sealant, "a strip that only sealant fills")
		}
	})
}

// outlined is a face in millimetres.
func outlined(r plane.Region) geom.Geometry {
	var corners []xy
	for _, c := range r[0] {
		corners = append(corners, xy{c.X.Millimetres(), c.Y.Millimetres()})
	}
	return polygon(corners)
}

// boxes are the rectangles of which a face of level and plumb edges is made, each
// grown by a joint of 3 mm.
func boxes(r plane.Region) (all []plane.Ring) {
	var xs, ys []length.Length
	for _, c := range r[0] {
		xs, ys = append(xs, c.X), append(ys, c.Y)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	for i := 1; i < len(xs); i++ {
		for k := 1; k < len(ys); k++ {
			box := plane.Rect{Left: xs[i-1], Right: xs[i], Bottom: ys[k-1], Top: ys[k]}
			inside := r.KeepAll(plane.RightOf(box.Left), plane.LeftOf(box.Right), plane.Above(box.Bottom), plane.Below(box.Top))
			if len(inside) > 0 && !box.Empty() {
				const joint = 3 * length.Millimetre
				all = append(all, plane.Rect{Left: box.Left - joint, Right: box.Right + joint, Bottom: box.Bottom - joint, Top: box.Top + joint}.Ring(0))
			}
		}
	}
	return all
}

// Where the rim lies within the joint between a leg's highest tile and the course over it, nothing
// is bare beside the joint: found by walking through the forms. The line is pinned so that the
// rim with its gap, at -497 mm, is 1, 2 and 3 mm under a course.
func TestTheJointOverALegIsNotBare(t *testing.T) {
	for _, line := range []string{"-496", "-495", "-494"} {
		job := legged("single", "single")
		job.Pins.Course.Line = line
		p, err := layout.Now(job)
		require.NoError(t, err)
		require.NotEmpty(t, p.Walls[0].Pieces)
		assert.Empty(t, p.Walls[0].Gaps, line)
	}
}

// A free end keeps a leg in single tiles from being too narrow to cut: here bullnose of 2 in
// covers it. Found on a tub with bullnose: nine pieces 5/16 in wide stood beside it, and the plan
// said that nothing was better.
func TestAFreeEndLeavesNoScrapsInALeg(t *testing.T) {
	drops := func(from, low, to, high string) []survey.Drop {
		return []survey.Drop{{At: from, Drop: low}, {At: to, Drop: high}}
	}
	job := survey.Job{Format: survey.Format, Title: "leg", Units: "in", Tile: survey.Tile{Width: "4 1/4", Height: "4 1/4", Thickness: "5/16"},
		Joint: survey.Measure{Plain: "1/16"}, Bond: survey.Bond{Kind: "stack"}, Trims: []survey.TrimTile{{Name: "edge", Kind: "bullnose", Width: "2", Length: "4 1/4"}},
		Walls: []survey.Wall{{Name: "head", Width: "32", Left: survey.End{Stops: &survey.Mark{From: "0", To: "1"}, Trim: "edge"}, Right: survey.End{Meets: "corner", Gap: "1/8"},
			Base: []survey.Segment{{Meets: "floor", Gap: "1/8", Leg: "single", Readings: drops("0", "50", "2 1/2", "50 3/16")},
				{Meets: "tub", Gap: "1/8", Readings: drops("2 1/2", "36", "32", "36 1/8")}},
			Head: survey.Head{Stops: &survey.Mark{From: "36", To: "40"}, Trim: "edge"},
			Openings: []survey.Opening{{Kind: "pipe", Name: "spout", At: "16", Height: &survey.Measure{Plain: "-31"}, Diameter: "1 1/4"},
				{Kind: "pipe", Name: "valve", At: "16", Height: &survey.Measure{Plain: "-12"}, Diameter: "4"}}}}}
	p, err := layout.Now(job)
	require.NoError(t, err)
	w := p.Walls[0]
	assert.LessOrEqual(t, 2*length.Inch+3*length.Inch/8, w.Start.Placed.Left, "at the front of the tub or beyond it")
	assert.Empty(t, w.Gaps)
	for _, x := range w.Pieces {
		assert.False(t, x.Unworkable, x.ID)
	}
}
