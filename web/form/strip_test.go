package form

import (
	"net/url"
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAStripThatIsAddedStandsBehindTheValve(t *testing.T) {
	for _, units := range []string{"in", "mm"} {
		job := demo(t)
		require.NoError(t, Decode(&job, url.Values{"units": {units}}))
		require.NoError(t, Apply(&job, "add walls[0].strips"))
		room, faults := job.Resolve()
		require.Empty(t, faults, units)
		o := room.Walls[0].Openings[len(room.Walls[0].Openings)-1]
		require.Equal(t, survey.PlumbStrip, o.Kind)
		assert.True(t, o.Parts())
		assert.Equal(t, job.Walls[0].Openings[0].At, job.Walls[0].Strips[0].Near)
	}
}

func TestAStripReachesToAHeightOrOn(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add walls[0].strips"))
	require.NoError(t, Apply(&job, "reach walls[0].strips[0] top"))
	require.NotNil(t, job.Walls[0].Strips[0].Top)
	require.NoError(t, Apply(&job, "free walls[0].strips[0].top"))
	_, faults := job.Resolve()
	require.Empty(t, faults)
	require.NoError(t, Apply(&job, "reach walls[0].strips[0] top"))
	assert.Nil(t, job.Walls[0].Strips[0].Top)
	for _, bad := range []string{"reach walls[0].strips[1] top", "reach walls[9].strips[0] top", "reach walls[0].strips[0] side", "reach bands[0] top"} {
		assert.Error(t, Apply(&job, bad), bad)
	}
	require.NoError(t, Apply(&job, "remove walls[0].strips[0]"))
	assert.Nil(t, job.Walls[0].Strips)
}

func TestAStripIsDragged(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add walls[0].strips"))
	require.NoError(t, Apply(&job, "place 1 strip mosaic left=17"))
	assert.Equal(t, "17", job.Pins.Walls["left"].Marks["strip mosaic left"], "a free one is pinned")
	assert.Error(t, Apply(&job, "place 1 move strip mosaic=18"))
	require.NoError(t, Apply(&job, "measure walls[0].strips[0].middle"))
	require.NoError(t, Apply(&job, "place 1 move strip mosaic=18 1/2"))
	assert.Equal(t, "18 1/2", job.Walls[0].Strips[0].Middle.At, "a measured one is moved")
	require.NoError(t, Apply(&job, "remove walls[0].strips[0]"))
	assert.Empty(t, job.Pins.Walls["left"].Marks, "its pin goes with it")
}

func TestStripsHoldWords(t *testing.T) {
	for path, is := range map[string]bool{"walls[0].strips[0].middle.at": true, "walls[0].strips[0].near": true, "walls[0].strips[0].top.from": true,
		"walls[0].strips[0].tile.width": true, "walls[0].strips[0].columns": false, "walls[0].strips[0].name": false, "walls[0].strips[0].bond.kind": false} {
		assert.Equal(t, is, IsLength(path), path)
	}
}

func TestACoveThatIsAddedStandsAlongBasesOfOneStretch(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add trims cove"))
	assert.Equal(t, "cove", job.Walls[1].Base[0].Trim)
	assert.Empty(t, job.Walls[0].Base[0].Trim, "beside a tub the base has a step")
	_, faults := job.Resolve()
	require.Empty(t, faults)
	require.NoError(t, Apply(&job, "add walls[1].base left"))
	assert.Empty(t, job.Walls[1].Base[0].Trim)
	assert.Empty(t, job.Walls[1].Base[1].Trim)
}

// A strip is added wherever there is a wall: up a half wall and its end panel, in fewer columns where it is
// narrow; measured in a pattern, where bands have to know its place; and under a band in a pattern.
func TestAStripFindsRoomOnEveryWall(t *testing.T) {
	for key, walls := range map[string][]int{"half wall": {0, 1, 2, 3}, "bench": {3}, "herringbone": {0, 1, 2}, "dotted": {0, 1, 2}} {
		for _, wall := range walls {
			job := room(t, key)
			require.NoError(t, Apply(&job, "add "+At("walls", wall)+".strips"))
			sound(t, job)
			s := job.Walls[wall].Strips[0]
			assert.Equal(t, key == "dotted", s.Top != nil, key)
			assert.Equal(t, key == "half wall" && wall == 3, s.Columns < 3, "%s, wall %d: %d columns", key, wall, s.Columns)
			if key != "half wall" && key != "herringbone" {
				continue
			}
			if key == "herringbone" {
				assert.NotEmpty(t, s.Middle.At)
				require.NoError(t, Apply(&job, "add bands mosaic"))
				sound(t, job)
			}
			plan, err := layout.Now(job)
			require.NoError(t, err)
			assert.NotEmpty(t, plan.Walls[wall].Strips, key)
		}
	}
}

// Where a narrow wall has a strip there is room for no other, and none is offered.
func TestASecondStripIsOfferedWhereThereIsRoom(t *testing.T) {
	job := room(t, "half wall")
	for wall, more := range map[int]bool{1: true, 3: false} {
		assert.True(t, RoomForStrip(job, wall))
		require.NoError(t, Apply(&job, "add "+At("walls", wall)+".strips"))
		assert.Equal(t, more, RoomForStrip(job, wall), "wall %d", wall)
	}
	assert.Len(t, job.Walls[3].Strips, 1, "asking adds none")
}
