package survey_test

import (
	"math"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// cornered is the front of a bench 30 in wide in a square corner, 18 and 24 in along the
// walls.
func cornered(spoil func(*survey.Job, *survey.Wall)) survey.Job {
	return topped(func(j *survey.Job, w *survey.Wall) {
		w.Width, w.Base[0].Readings = "30", drops("0", "30")
		w.Top.Behind, w.Top.Depth, w.Top.Right = "corner", "18", "24"
		if spoil != nil {
			spoil(j, w)
		}
	})
}

// By hand, on sides of 3 : 4 : 5. The corner of the boards is 18 · 18 / 30 = 10.8 in along
// the front and 18 · 24 / 30 = 14.4 in behind it. At the left end the cosine is 3/5 and the
// sine 4/5, so tan α/2 = (1 − 3/5) / (4/5) = 1/2 and 1/2 in of tile and bed takes 1/4 in of the
// front; at the right end tan β/2 = (1 − 4/5) / (3/5) = 1/3, which is 1/6 in. That leaves
// 29 7/12 in of 30, and of the depth as much: 14.4 · 29 7/12 / 30 = 14.2 in.
func TestATopInACorner(t *testing.T) {
	room, faults := cornered(nil).Resolve()
	require.Empty(t, faults)
	w := room.Walls[0]
	c := w.Head.Top.Corner
	require.NotNil(t, c)
	assert.Equal(t, plane.Point{X: 108 * in / 10, Y: 144 * in / 10}, c.Apex)
	assert.Equal(t, [2]length.Length{in / 4, in / 6}, c.Takes)
	assert.Equal(t, 30*in-in/4-in/6, c.Wide)
	assert.Equal(t, plane.Point{X: 1065 * in / 100, Y: 142 * in / 10}, c.Peak)
	assert.Equal(t, c.Peak.Y, w.Head.Top.Deepest())

	// The front keeps clear of the tile on both walls, and the gap of 1/8.
	box := w.Shape(length.Imperial, survey.Placed{Head: -18 * in}).Region.Bounds()
	assert.Equal(t, [2]length.Length{3 * in / 8, 30*in - in/6 - in/8}, [2]length.Length{box.Left, box.Right})

	// Left out, the right wall is as the left one: in a square corner 18 in times √2.
	room, faults = cornered(func(_ *survey.Job, w *survey.Wall) {
		w.Top.Right, w.Width, w.Base[0].Readings = "", "25 7/16", drops("0", "25 7/16")
	}).Resolve()
	require.Empty(t, faults)
	c = room.Walls[0].Head.Top.Corner
	assert.Equal(t, c.Takes[0], c.Takes[1])
	assert.InDelta(t, 0.5*math.Tan(math.Pi/8)*960*25.4, float64(c.Takes[0]), 960*25.4/500)
}

// With any three sides, by trigonometry in floating point: the finished front lies so deep
// before that of the boards, and the finished corner so deep before the boards of both
// walls; what is inset keeps its distance from all three.
func TestTileStandsBeforeAllThreeSidesOfACorner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		left, right := length.Length(rapid.IntRange(200, 1200).Draw(t, "left"))*mm, length.Length(rapid.IntRange(200, 1200).Draw(t, "right"))*mm
		angle := float64(rapid.IntRange(50, 150).Draw(t, "angle")) * math.Pi / 180
		a, b := float64(left), float64(right)
		front := length.Length(math.Round(math.Sqrt(a*a + b*b - 2*a*b*math.Cos(angle))))
		deep := length.Length(rapid.IntRange(5, 25).Draw(t, "deep")) * mm
		c := survey.CornerTopOf(front, left, right, deep)
		if c == nil {
			f := float64(front)
			require.True(t, math.Abs(a*a-b*b) >= f*f*0.999, "sharp at both ends, so a triangle")
			return
		}
		// Signed distances from the lines of the walls' boards, to the inside.
		alpha := math.Atan2(float64(c.Apex.Y), float64(c.Apex.X))
		beta := math.Atan2(float64(c.Apex.Y), float64(front-c.Apex.X))
		fromLeft := func(x, y float64) float64 { return x*math.Sin(alpha) - y*math.Cos(alpha) }
		fromRight := func(x, y float64) float64 { return (float64(front)-x)*math.Sin(beta) - y*math.Cos(beta) }
		d := float64(deep)
		at := func(x, y length.Length) (float64, float64) { return float64(c.Takes[0] + x), float64(y) - d } // finished into boards
		x, y := at(0, 0)
		require.InDelta(t, d, fromLeft(x, y), 4)
		x, y = at(c.Wide, 0)
		require.InDelta(t, d, fromRight(x, y), 4)
		x, y = at(c.Peak.X, c.Peak.Y)
		require.InDelta(t, d, fromLeft(x, y), 4)
		require.InDelta(t, d, fromRight(x, y), 4)

		edge, gap := length.Length(rapid.IntRange(0, 60).Draw(t, "edge"))*mm, length.Length(rapid.IntRange(0, 6).Draw(t, "gap"))*mm
		ring := c.Inset(edge, gap)
		if ring == nil {
			require.Less(t, float64(c.Wide), float64(20*(edge+gap)+20*mm), "something is left")
			return
		}
		for i, p := range ring {
			x, y := at(p.X, p.Y)
			require.GreaterOrEqual(t, float64(p.Y), float64(edge)-0.5)
			if i != 1 {
				require.InDelta(t, d+float64(gap), fromLeft(x, y), 6, "corner %d", i)
			}
			if i != 0 {
				require.InDelta(t, d+float64(gap), fromRight(x, y), 6, "corner %d", i)
			}
		}
	})
}

func TestTopsInCornersThatAreRefused(t *testing.T) {
	for _, c := range []struct {
		spoil func(*survey.Job, *survey.Wall)
		fault string
	}{
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Behind = "niche" }, "walls[0].top.behind: found “niche”; write one of wall, corner"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Kind = "curb" }, "walls[0].top.behind: found a corner behind a curb; write a seat or a ledge"},
		{func(_ *survey.Job, w *survey.Wall) { w.Left = survey.End{Stops: mark("0")} },
			`walls[0].top.behind: found a corner behind a wall that does not meet a wall at both ends; write "meets": "wall" at both ends`},
		{func(_ *survey.Job, w *survey.Wall) {
			w.Right.Lean = []survey.Lean{{Height: "-40", Off: "0"}, {Height: "0", Off: "1/2"}}
		}, "walls[0].top.behind: found a corner behind a wall whose ends lean"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Depth = "5" }, "walls[0].top.depth: found 5 and 24 along the walls behind a front of 30; write three sides of a triangle that is sharp at both ends of its front: in a square corner the front is 24 1/2"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Depth = "40" }, "walls[0].top.depth: found 40 and 24 along the walls"},
		{func(_ *survey.Job, w *survey.Wall) { // 2 in of bullnose and a joint along the front
			w.Top.Depth, w.Top.Right, w.Top.Corner, w.Top.Trim = "15 1/8", "15 1/8", "bullnose", "nose"
		}, "walls[0].top.depth: found 15 1/8 and 15 1/8 along the walls; write lengths of which tile, edge and soft joints leave something"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Depth = "60" }, "walls[0].top.depth: found “60”"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Right = "x" }, "walls[0].top.right: found “x”"},
	} {
		_, faults := cornered(c.spoil).Resolve()
		if assert.NotEmpty(t, faults, c.fault) {
			assert.Contains(t, faults[0].String(), c.fault)
		}
	}
}
