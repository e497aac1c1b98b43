package survey_test

import (
	"strings"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// panelled is a half wall in half bond of tile 6 by 3 in with joints of 1/8 in, and its end
// panel of a width, which the tile of the half wall laps.
func panelled(width, laid string) survey.Job {
	job := sketch("in", "half wall", "panel")
	job.Tile.Width, job.Tile.Height = "6", "3"
	job.Bond = survey.Bond{Kind: "running"}
	job.Walls[0].Right = survey.End{Meets: "outside corner", Laps: "left"}
	p := &job.Walls[1]
	p.Width, p.Laid = width, laid
	p.Left, p.Right = survey.End{Meets: "outside corner"}, survey.End{Stops: mark(width)}
	p.Base[0].Readings = []survey.Drop{{At: "0", Drop: "40"}}
	return job
}

// A joint of half bond stands every 3 1/16 in, so what lies clear between two is 2 15/16 in.
// The tile of the panel goes on under that of the half wall by the bed less the joint,
// 3/16 - 1/8 in: 1/16 in more than the panel is wide.
func TestWhichWallsAreInSingleTiles(t *testing.T) {
	for _, c := range []struct {
		what, width, laid string
		spoil             func(*survey.Job)
		single            bool
	}{
		{"wider than what is clear", "3", "", nil, true},
		{"not wider than what is clear", "2 7/8", "", nil, false},
		{"not wider than what is clear, but so by hand", "2 7/8", "single", nil, true},
		{"just a tile", "5 15/16", "", nil, true},
		{"wider than a tile", "6", "", nil, false},
		{"in the bond by hand", "5", "bond", nil, false},
		{"with its start pinned", "5", "", func(j *survey.Job) { j.Pins.Walls = map[string]survey.WallPin{"panel": {Edge: "1"}} }, false},
		{"held in the bond", "5", "", func(j *survey.Job) {
			j.Held = &survey.Held{Walls: map[string]survey.WallPin{"panel": {Edge: "1"}}}
		}, false},
		{"by hand where the bond is held", "5", "single", func(j *survey.Job) {
			j.Held = &survey.Held{Walls: map[string]survey.WallPin{"panel": {Edge: "1"}}}
		}, true},
		{"held in single tiles", "2 7/8", "", func(j *survey.Job) {
			j.Held = &survey.Held{Walls: map[string]survey.WallPin{"panel": {Single: true}}}
		}, true},
		{"in stack bond", "5", "", func(j *survey.Job) { j.Bond = survey.Bond{Kind: "stack"} }, false},
		{"in columns", "5", "", func(j *survey.Job) { j.Bond.Along = "plumb" }, false},
		{"a free end", "5", "", func(j *survey.Job) { j.Walls[1].Right.Stops = &survey.Mark{From: "4", To: "5"} }, false},
		{"a niche in it", "5", "", func(j *survey.Job) {
			j.Walls[1].Openings = []survey.Opening{{Kind: "niche", Name: "slot", Left: mark("2"), Width: mark("1"), Bottom: mark("0"), Height: &survey.Measure{Mark: mark("2")}}}
		}, false},
	} {
		job := panelled(c.width, c.laid)
		if c.spoil != nil {
			c.spoil(&job)
		}
		room, faults := job.Resolve()
		require.Empty(t, faults, c.what)
		assert.Equal(t, c.single, room.Walls[1].Single, c.what)
		assert.False(t, room.Walls[0].Single, c.what)
	}
}

// The factory edge faces out: at an end that is seen, and not under the tile that laps.
func TestWhereSingleTilesBegin(t *testing.T) {
	for _, c := range []struct {
		what  string
		spoil func(*survey.Job)
		edge  string
	}{
		{"lapped at the left", func(*survey.Job) {}, "-1"},
		{"lapping at the left, which is seen as the right end is", func(j *survey.Job) { j.Walls[0].Right.Laps = "right" }, "-1/2"},
		{"lapping at the left, under casing at the right", func(j *survey.Job) {
			j.Walls[0].Right.Laps, j.Walls[1].Right.Finish = "right", "casing"
		}, "-1/2"},
		{"a mitre at the left", func(j *survey.Job) { j.Walls[0].Right.Laps, j.Walls[0].Right.Corner = "", "mitre" }, "-1"},
	} {
		job := panelled("5", "single")
		job.Bed, job.Tile.Thickness = "3/16", "5/16"
		c.spoil(&job)
		room, faults := job.Resolve()
		require.Empty(t, faults, c.what)
		_, w := room.Singly(room.Walls[1])
		assert.Equal(t, c.edge, w.Pin.X.Plain(0, 0), c.what)
	}
}

func TestSingleTilesAreRefused(t *testing.T) {
	for _, c := range []struct {
		spoil func(*survey.Job)
		fault string
	}{
		{func(j *survey.Job) { j.Walls[1].Laid = "stack" }, "walls[1].laid: found “stack”; write one of bond, single"},
		{func(j *survey.Job) { j.Walls[1].Width, j.Walls[1].Right.Stops = "7", mark("7") }, "walls[1].laid: found “single” on a wall with 7 1/16\" of tile, which is wider than one; write bond or nothing"},
		{func(j *survey.Job) { j.Bond.Along = "plumb" }, "walls[1].laid: found “single” on a wall without level courses; write bond or nothing"},
		{func(j *survey.Job) { j.Pins.Walls = map[string]survey.WallPin{"panel": {Joint: "1"}} }, "pins.walls.panel: found a start, on a wall that is laid in single tiles; write no start"},
		{func(j *survey.Job) { j.Pins.Walls = map[string]survey.WallPin{"panel": {Single: true}} }, "pins.walls.panel.single: found true; write nothing here"},
		{func(j *survey.Job) {
			j.Walls[1].Openings = []survey.Opening{{Kind: "niche", Name: "slot", Left: mark("2"), Width: mark("1"), Bottom: mark("0"), Height: &survey.Measure{Mark: mark("2")}}}
		}, "walls[1].laid: found “single” on a wall with an opening or a strip; write bond or nothing"},
	} {
		job := panelled("5", "single")
		c.spoil(&job)
		_, faults := job.Resolve()
		require.NotEmpty(t, faults, c.fault)
		assert.True(t, strings.HasPrefix(faults[0].String(), c.fault), "want %s\ngot  %s", c.fault, faults[0])
	}
}
