package remedy_test

import (
	"testing"

	"coursewright/layout/remedy"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A leg 3 in wide beside a tub, in half bond of tile 8 in wide: every other course
// holds a joint, so that one of its two pieces is small. In single tiles each is
// 2 7/8 in wide, 3 less the gap at the tub.
func TestALegInSingleTiles(t *testing.T) {
	level := func(drop, from, to string) []survey.Drop {
		return []survey.Drop{{At: from, Drop: drop}, {At: to, Drop: drop}}
	}
	job := wall("33", "8", "1/8", survey.End{Meets: "corner", Gap: "1/8"}, survey.End{Stops: &survey.Mark{At: "33"}}, "24 3/8")
	job.Tile.Height, job.Bond = "4", survey.Bond{Kind: "running"}
	job.Walls[0].Base = []survey.Segment{{Meets: "tub", Gap: "1/8", Readings: level("0", "0", "30")}, {Meets: "floor", Gap: "1/8", Readings: level("18", "30", "33")}}
	now, all := found(t, job)
	require.True(t, remedy.Troubled(&now.Setout.Merit))
	r := using(all, "walls[0].base[1].leg", "single")
	require.NotNil(t, r, all)
	assert.Equal(t, remedy.Leg, r.Kind)
	assert.Equal(t, `Set the leg at the right of w in single tiles, each 2 7/8" wide, course by course.`, r.Text)

	job.Walls[0].Base[1].Leg = "single"
	_, all = found(t, job)
	assert.Nil(t, using(all, "walls[0].base[1].leg", "single"), "it is so already")

	job.Walls[0].Base[1].Leg, job.Walls[0].Right.Stops.At = "", "31 1/2"
	_, all = found(t, job)
	assert.Nil(t, using(all, "walls[0].base[1].leg", "single"), "a leg of 1 3/8 in would be all slivers")
	r = using(all, "walls[0].base[1].leg", "none")
	require.NotNil(t, r, all)
	assert.Equal(t, `Leave out the leg at the right of w, 1 3/8" wide.`, r.Text)
}
