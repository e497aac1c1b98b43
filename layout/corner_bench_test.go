package layout_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// The corner bench of the example by hand (common practice, no source): 606 and 660 mm along
// the walls behind a front of 896 make a square corner (606² + 660² = 802,836 = 896.0²). Tile 7 on
// a bed of 4 mm. The corner of the boards is 606 · 660 / 896 = 446.4 mm behind the front. Tile
// takes 11 · tan α/2 of the front at both ends, 4.8 and 4.3 mm, so that of 896 mm
// 886.9 are left and of the depth 441.8; it falls 21 mm to the metre.
func TestTheCornerBenchOfTheExample(t *testing.T) {
	p, err := layout.Now(shippedJob(t, "corner-bench.json"))
	require.NoError(t, err)
	seat := p.Walls[3].Top
	require.NotNil(t, seat)
	alpha, beta := math.Acos((606*606+896*896-660*660)/(2*606*896.0)), math.Acos((660*660+896*896-606*606)/(2*660*896.0))
	wide := 896 - 11*math.Tan(alpha/2) - 11*math.Tan(beta/2)
	deep := wide * math.Sin(alpha) * math.Sin(beta) / math.Sin(alpha+beta)
	box := seat.Outline.Bounds()
	assert.InDelta(t, wide, box.Width().Millimetres(), 0.01)
	assert.InDelta(t, deep, box.Height().Millimetres(), 0.01)
	assert.InDelta(t, deep*0.021, seat.Rise.Millimetres(), 0.01)
	assert.InDelta(t, 441.8, deep, 0.1)

	// 48 mm of bullnose and a joint of 2 lie along the front; the tile's own front row is whole there.
	region := seat.Shape.Region.Bounds()
	assert.Equal(t, 50*length.Millimetre, region.Bottom)
	require.Len(t, seat.Trim, 6)
	for _, q := range seat.Trim {
		assert.Equal(t, survey.HeadEdge, q.Edge)
		assert.Equal(t, plane.Rect{Left: q.Face.Bounds().Left, Right: q.Face.Bounds().Right, Top: 48 * length.Millimetre}, q.Face.Bounds())
	}
	for _, q := range seat.Pieces {
		if q.Course == 1 {
			assert.Equal(t, q.Tile.Bottom, region.Bottom, q.ID)
		}
		assert.False(t, q.Sliver || q.Unworkable, q.ID)
	}
	// Soft joints run along both walls, not along the front: sealant is bought for them.
	assert.Equal(t, []plane.Side{survey.SideLeft, survey.SideRight}, seat.Soft)
}

// A corner bench moves no start: the rest of the room is set out as without its seat.
func TestACornerSeatFollowsItsWall(t *testing.T) {
	job := shippedJob(t, "corner-bench.json")
	with, err := layout.Now(job)
	require.NoError(t, err)
	top := *job.Walls[3].Top
	top.Face, top.Corner, top.Trim = survey.InsideFace{Slab: "7"}, "", "" // as thick as the tile
	job.Walls[3].Top = &top
	without, err := layout.Now(job)
	require.NoError(t, err)
	for i := range with.Walls {
		assert.Equal(t, with.Walls[i].Start, without.Walls[i].Start)
	}
	slab := without.Walls[3].Top.Pieces
	require.Len(t, slab, 1)
	assert.Equal(t, without.Walls[3].Top.Shape.Region, slab[0].Face, "a slab in a corner has three corners")
}
