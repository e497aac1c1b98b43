package page

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/static"
)

// A figure is told as it is asked for, from the corner and without its sign, as the words before it say.
func TestAFigureIsToldAsItIsAskedFor(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	require.Equal(t, "35 1/4", job.Walls[0].Width)
	for path, c := range map[string][2]string{
		"walls[0].openings[1].at":           {"19 3/4", "15 1/2"},
		"walls[0].openings[1].height":       {"-9", "9 below"},
		"walls[1].width":                    {"60", "60"},
		"walls[0].base[0].readings[1].at":   {"4 1/4", "31"},
		"walls[0].openings[0].diameter":     {"4 1/2", "4 1/2"},
		"walls[2].base[0].readings[1].drop": {"38 7/8 in", "38 7/8 in"},
	} {
		assert.Equal(t, c[1], ValueIn(job, path, c[0]), path)
	}
	assert.Equal(t, "15 l/2", ValueIn(job, "walls[0].openings[1].at", "15 l/2"), "what does not read")
	assert.Empty(t, ValueIn(job, "walls[0].openings[1].at", ""))
}

// A field is called as the box in which it is asked for, so that a refusal, undo and the history speak of it
// by the words that stand over it.
func TestAFieldIsCalledByThePlainNamesOfItsJob(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	for path, want := range map[string]string{
		"walls[1].width":                                  "Width of wall back",
		"walls[1].base[0].readings[2].drop":               "Corner of back and right, below the line",
		"walls[0].base[1].readings[0].drop":               "Front of wall left, below the line",
		"walls[1].base[0].readings[2].at":                 "Back wall, tub, reading 3, at",
		"walls[0].left.stops.from":                        "Left wall, left end, stops at, from",
		"walls[1].openings[0].left.from":                  "Niche shelf on back, left edge, from",
		"walls[0].openings[1]":                            "Pipe valve on left",
		"pins.course.line":                                "Course line",
		"pins.walls.back.joint":                           "Start of back",
		"pins.walls.back.marks.niche shelf left":          "Left edge of niche shelf on back",
		"pins.walls.back.marks.niche niche right":         "Right edge of niche on back",
		"pins.walls.back.marks.soap dish soap dish 2 top": "Top edge of soap dish 2 on back",
		"pins.walls.back.marks.end left":                  "Left end of back",
		"pins.walls.back.marks.head":                      "Head of back",
		"tile.width":                                      "Width of a tile",
		"tile.name":                                       "Name of the tile",
		"tile.box":                                        "Tiles in a box",
		"tile.box.price":                                  "Price of a box",
		"tile.sheet.across":                               "Tiles along a sheet",
		"bands[0].tile.box.price":                         "Band liner, price of a box",
		"bands[0].tile.width":                             "Band liner, tile, width",
		"choices[1].name":                                 "Choice 2, name",
		"walls[7].width":                                  "Wall 8, width",
		"walls[1].openings[0].inside.depthIs":             "Niche shelf on back, inside, depth is",
		"bands[0].height":                                 "Band liner, height",
		"bands[1].name":                                   "Band 2, name",
	} {
		job.Bands = []survey.Band{{Name: "liner"}, {}}
		assert.Equal(t, want, PlaceIn(job, path), path)
	}
}

// What is added or removed is named, not the list it stands in.
func TestAPartThatIsAddedOrRemovedIsNamed(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	less := job
	less.Walls = slices.Clone(job.Walls)
	less.Walls[1].Openings = nil
	assert.Equal(t, "adding niche shelf on back", PartsEdit(less, job))
	assert.Equal(t, "removing niche shelf on back", PartsEdit(job, less))
	less.Walls = job.Walls[:2]
	assert.Equal(t, "removing wall right", PartsEdit(job, less))
	assert.Empty(t, PartsEdit(job, job))
	other := job
	other.Walls = slices.Clone(job.Walls)
	other.Walls[2].Name = "window wall"
	assert.Empty(t, PartsEdit(job, other), "another name adds and removes nothing")
}
