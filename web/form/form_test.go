package form

import (
	"fmt"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout/survey"
	"coursewright/static"
)

func demo(t require.TestingT) survey.Job {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	return job
}

func TestEveryFieldOfAJobCanBeTypedAndReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := demo(t)
		fields := Fields(job)
		f := rapid.SampledFrom(fields).Draw(t, "field")
		require.Equal(t, f.Value, Get(job, f.Path))
		value := rapid.StringMatching(`[1-9][0-9]{0,2}`).Draw(t, "value")
		if Get(job, f.Path) == "true" {
			value = "true"
		}
		require.NoError(t, Set(&job, f.Path, value))
		assert.Equal(t, value, Get(job, f.Path))
	})
}

func TestAPostedFormGivesTheSameJob(t *testing.T) {
	job := demo(t)
	posted := url.Values{Revision: {"7"}, Do: {""}}
	for _, f := range Fields(job) {
		posted.Add(f.Path, f.Value)
	}
	again := demo(t)
	require.NoError(t, Decode(&again, posted))
	assert.Equal(t, job, again)

	var fresh survey.Job
	require.NoError(t, Decode(&fresh, posted), "lists grow as they are posted")
	assert.Equal(t, job, fresh)
}

func TestListsOverTenKeepTheirOrder(t *testing.T) {
	posted := url.Values{}
	for i := range 12 {
		posted.Set(fmt.Sprintf("walls[0].base[0].readings[%d].at", i), fmt.Sprint(i))
	}
	var job survey.Job
	require.NoError(t, Decode(&job, posted))
	assert.Equal(t, "11", job.Walls[0].Base[0].Readings[11].At)
}

func TestWrongFieldsAreRefusedByName(t *testing.T) {
	for path, says := range map[string]string{
		"":                        "without a name",
		"colour":                  "no such field",
		"walls":                   "a group",
		"walls[9].name":           "no such place",
		"walls[-1].name":          "not a place",
		"walls[x].name":           "not a place",
		"walls[99999999999].name": "no such place",
		"walls[0].name.first":     "deeper",
		"walls[0]..name":          "name is missing",
		"walls[0]name":            "dot",
		"tile.box.count":          "whole number",
		`pins.walls["a`:           "quoted",
		"pins.walls[0].joint":     "takes a name",
		"walls.name":              "no such place",
	} {
		t.Run(path, func(t *testing.T) {
			job := demo(t)
			err := Set(&job, path, "many")
			require.Error(t, err)
			assert.ErrorContains(t, err, says)
		})
	}
}

func TestNoPathPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := demo(t)
		path := rapid.StringMatching(`(walls|pins|tile|setOrder|\.|\[|\]|"|[0-9]|name|openings|height|marks){1,8}`).Draw(t, "path")
		_ = Set(&job, path, "1")
		_ = Apply(&job, "add "+path)
		_ = Apply(&job, "remove "+path)
		_ = Apply(&job, "free "+path)
		_ = Get(job, path)
	})
}

func TestARenamedWallTakesItsPinsAlong(t *testing.T) {
	job := demo(t)
	job.Pins.Walls = map[string]survey.WallPin{"back": {Joint: "30"}}
	require.NoError(t, Decode(&job, url.Values{"walls[1].name": {"long. wall"}, "pins.walls.back.joint": {"31"}}))
	assert.Equal(t, map[string]survey.WallPin{"long. wall": {Joint: "31"}}, job.Pins.Walls)
	assert.Equal(t, []string{"long. wall", "left", "right"}, job.SetOrder)
	assert.Equal(t, "31", Get(job, Key("pins.walls", "long. wall")+".joint"))
}

func TestAChangeOfUnitsChangesNoMeasurement(t *testing.T) {
	job := demo(t)
	job.Tile.Thickness = "8 mm"
	require.NoError(t, Decode(&job, url.Values{"units": {"mm"}}))
	assert.Equal(t, "59 7/8 in", job.Walls[1].Width)
	assert.Equal(t, "-32 1/2 in", job.Walls[0].Openings[0].Height.Plain)
	assert.Equal(t, "8 mm", job.Tile.Thickness, "has its unit already")
	assert.Equal(t, "1/2", job.Bond.Offset, "a share, not a length")
	assert.Equal(t, "80", Get(job, "tile.box.count"))
}

func TestAChangedWidthTakesTheReadingsAtItsEndAlong(t *testing.T) {
	job := demo(t)
	require.NoError(t, Decode(&job, url.Values{"walls[2].width": {"34 1/4"}, "walls[1].width": {"60"}, "walls[1].base[0].readings[1].at": {"31"}}))
	assert.Equal(t, "34 1/4", job.Walls[2].Base[1].Readings[1].At)
	assert.Equal(t, "34 1/4", job.Walls[2].Right.Stops.To)
	assert.Equal(t, "60", job.Walls[1].Base[0].Readings[2].At)
	assert.Equal(t, "31", job.Walls[1].Base[0].Readings[1].At)
	assert.Equal(t, "30 5/8", job.Walls[2].Base[0].Readings[1].At, "a step inside the wall stays")
}

func TestAnEndThatStopsForgetsItsLean(t *testing.T) {
	job := demo(t)
	require.NoError(t, Decode(&job, url.Values{"walls[1].left.meets": {""}}))
	assert.Equal(t, survey.End{Stops: &survey.Mark{At: "0"}}, job.Walls[1].Left)
}

func TestButtons(t *testing.T) {
	tests := []struct {
		do, path, want string
	}{
		{"add walls[1].base[0].readings", "walls[1].base[0].readings[2].at", "44 15/16"},
		{"add walls[0].base left", "walls[0].base[0].readings[1].at", "2 3/16"},
		{"add walls[2].base", "walls[2].base[2].meets", "floor"},
		{"add walls[1].openings pipe", "walls[1].openings[1].diameter", "1"},
		{"add walls[1].openings niche", "walls[1].openings[1].name", "niche"},
		{"add walls", "walls[3].left.meets", "corner"},
		{"add walls[1].right.lean", "walls[1].right.lean[1].height", "48"},
		{"remove walls[0].openings[0]", "walls[0].openings[0].name", "valve"},
		{"measure walls[1].openings[0].left", "walls[1].openings[0].left.at", "32"},
		{"set joint=3/16", "joint", "3/16"},
		{"pin back tile=30", "pins.walls.back.tile", "30"},
		{"pin back edge=30", "pins.walls.back.edge", "30"},
		{"place 2 course=-37", "pins.course.line", "-37"},
		{"place 2 start=30", "pins.walls.back.joint", "30"},
		{"place 1 pipe valve=20;-8", "walls[0].openings[1].at", "20"},
		{"place 1 pipe valve=20;-8", "walls[0].openings[1].height", "-8"},
		{"place 2 niche shelf left=33", "pins.walls.back.marks.niche shelf left", "33"},
		{"place 2 base 1 reading 2=31;-38 3/4", "walls[1].base[0].readings[1].drop", "38 3/4"},
		{"place 2 base 1 reading 2=31;-38 3/4", "walls[1].base[0].readings[1].at", "31"},
		{"place 2 base 1 reading 1=2", "walls[1].base[0].readings[0].drop", "-2"},
		{"place 2 base 1 reading 1=0", "walls[1].base[0].readings[0].drop", "0"},
		{"place 1 head=36", "pins.walls.left.marks.head", "36"},
		{"", "joint", "1/8"},
	}
	for _, test := range tests {
		t.Run(test.do, func(t *testing.T) {
			job := demo(t)
			require.NoError(t, Apply(&job, test.do))
			assert.Equal(t, test.want, Get(job, test.path))
		})
	}
}

func TestFreeingAMeasuredMarkGivesItARange(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "measure walls[1].openings[0].bottom"))
	require.NoError(t, Apply(&job, "free walls[1].openings[0].bottom"))
	assert.Equal(t, survey.Mark{From: "0", To: "4"}, *job.Walls[1].Openings[0].Bottom)
}

func TestReleasedPinsLeaveNothingBehind(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "pin back joint=30"))
	require.NoError(t, Apply(&job, "release pins.walls.back.joint"))
	assert.Equal(t, demo(t), job)
	require.NoError(t, Apply(&job, "pin back joint=30"))
	require.NoError(t, Apply(&job, "pin back edge=30"))
	assert.Equal(t, survey.WallPin{Edge: "30"}, job.Pins.Walls["back"], "one word pins a start")
	require.NoError(t, Apply(&job, "remove walls[1]"))
	assert.Nil(t, job.Pins.Walls)
	assert.Equal(t, []string{"left", "right"}, job.SetOrder)
}

func TestWrongButtonsAreRefused(t *testing.T) {
	for _, do := range []string{"paint walls", "add", "add tile", "add walls[7].openings pipe", "add walls[0].openings door",
		"remove walls[8]", "remove tile", "pin nobody joint=3", "pin back grout=3", "release joint", "place 9 course=1", "place 1 niche x left=3", "place 1 pipe valve=3", "place 1 base 3 reading 1=2", "place 1 base 1 reading 9=2", "place 1 head reading 1=2", "place 2 move niche shelf=3;4", "place 2 move niche=3;4", "place", "free joint", "set joint.x=3"} {
		t.Run(do, func(t *testing.T) {
			job := demo(t)
			assert.Error(t, Apply(&job, do))
		})
	}
}

// What was measured of a window is dragged in the survey; what is free of it is pinned elsewhere.
func TestAMeasuredWindowIsMovedAndSized(t *testing.T) {
	job := demo(t)
	job.Walls[1].Openings = []survey.Opening{{Kind: "window", Name: "reading room",
		Left: &survey.Mark{At: "20"}, Width: &survey.Mark{At: "24"}, Bottom: &survey.Mark{From: "4", To: "6"}, Height: &survey.Measure{Mark: &survey.Mark{At: "20"}}}}
	require.NoError(t, Apply(&job, "place 2 move window reading room=19 1/2"))
	require.NoError(t, Apply(&job, "place 2 size window reading room=25;21"))
	require.NoError(t, Apply(&job, "place 2 window reading room bottom=5"))
	assert.Equal(t, survey.Mark{At: "19 1/2"}, *job.Walls[1].Openings[0].Left)
	assert.Equal(t, survey.Mark{At: "25"}, *job.Walls[1].Openings[0].Width)
	assert.Equal(t, survey.Mark{At: "21"}, *job.Walls[1].Openings[0].Height.Mark)
	assert.Equal(t, "5", job.Pins.Walls["back"].Marks["window reading room bottom"])
	assert.Error(t, Apply(&job, "place 2 move window reading room=19;4"), "the free mark is no measurement")
}

// A window is guessed to end under the line at which tile stops, so that the drawing of a room that
// is not measured yet has none stand out of its tile.
func TestAWindowIsGuessedUnderTheTopOfTheTile(t *testing.T) {
	for _, c := range []struct{ from, at, height string }{
		{"", "33", "19"}, {"31", "", "17"}, {"", "60", "24"}, {"", "20", "24"}, {"", "high", "24"},
	} {
		job := edited(t)
		job.Walls[1].Head = survey.Head{Stops: &survey.Mark{At: c.at, From: c.from}}
		if c.from != "" {
			job.Walls[1].Head.Stops.To = "35"
		}
		require.NoError(t, Apply(&job, "add walls[1].openings window"))
		openings := job.Walls[1].Openings
		assert.Equal(t, c.height, openings[len(openings)-1].Height.Mark.At, "%+v", c)
	}
	job := edited(t)
	job.Walls[1].Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{At: "0", Rise: "20"}}}
	require.NoError(t, Apply(&job, "add walls[1].openings window"))
	openings := job.Walls[1].Openings
	assert.Equal(t, "24", openings[len(openings)-1].Height.Mark.At)
}
