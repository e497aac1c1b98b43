package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/static"
)

func TestAFieldIsCalledByThePlainNamesOfItsJob(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	for path, want := range map[string]string{
		"walls[1].width":                         "Back wall, width",
		"walls[1].base[0].readings[2].drop":      "Back wall, tub, reading 3, down",
		"walls[0].left.stops.from":               "Left wall, left end, stops at, from",
		"walls[1].openings[0].left.from":         "Niche shelf on back, left edge, from",
		"walls[0].openings[1]":                   "Pipe valve on left",
		"pins.course.line":                       "Course line",
		"pins.walls.back.joint":                  "Start of back",
		"pins.walls.back.marks.niche shelf left": "Left edge of niche shelf on back",
		"pins.walls.back.marks.end left":         "Left end of back",
		"pins.walls.back.marks.head":             "Head of back",
		"tile.width":                             "Tile, width",
		"walls[7].width":                         "Wall 8, width",
	} {
		assert.Equal(t, want, PlaceIn(job, path), path)
	}
}
