package form

import (
	"net/url"
	"testing"

	"coursewright/layout/survey"
	"coursewright/static"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A range is typed into one box as people say it, also from under the line to over it; "-2 to 2" was once refused
// for a unit "to".
func TestARangeTypedIntoOneBoxIsOne(t *testing.T) {
	for text, want := range map[string]survey.Mark{
		"-2 to 2":        {From: "-2", To: "2"},
		"−2 to 2":        {From: "−2", To: "2"},
		" 2..12 ":        {From: "2", To: "12"},
		"2 1/2 – 12":     {From: "2 1/2", To: "12"},
		"-40 - -2":       {From: "-40", To: "-2"},
		"2 in to 300 mm": {From: "2 in", To: "300 mm"},
		"1' - 7 1/2\"":   {At: "1' - 7 1/2\""},
		"-2 to high":     {At: "-2 to high"},
	} {
		job := demo(t)
		require.NoError(t, Apply(&job, "add walls[0].openings window"))
		k := len(job.Walls[0].Openings) - 1
		path := At("walls[0].openings", k) + ".bottom"
		require.NoError(t, Decode(&job, url.Values{path + ".at": {text}}))
		assert.Equal(t, want, *job.Walls[0].Openings[k].Bottom, text)
	}
}

func TestARangeTypedOverOneEndIsBoth(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add bands liner"))
	require.NoError(t, Decode(&job, url.Values{"bands[0].bottom.from": {"-2 to 2"}, "bands[0].bottom.to": {job.Bands[0].Bottom.To}, "joint": {"1/16 to 1/8"}}))
	assert.Equal(t, survey.Mark{From: "-2", To: "2"}, job.Bands[0].Bottom)
	require.NoError(t, Decode(&job, url.Values{"bands[0].bottom.from": {"-2 to 2"}, "bands[0].bottom.to": {"6"}}))
	assert.Equal(t, survey.Mark{From: "-2", To: "6"}, job.Bands[0].Bottom, "its other end was typed after it")
	assert.Equal(t, &survey.Mark{From: "1/16", To: "1/8"}, job.Joint.Mark)
}

// What can only be measured keeps what was typed, to be refused where it stands.
func TestWhatIsMeasuredTakesNoRange(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add walls[0].openings doorway"))
	k := len(job.Walls[0].Openings) - 1
	for _, path := range []string{"walls[0].width", "walls[0].openings[0].at", "walls[0].openings[0].height", "walls[0].base[0].readings[0].at", At("walls[0].openings", k) + ".left.at"} {
		now := job.Clone()
		require.NoError(t, Decode(&now, url.Values{path: {"-2 to 2"}}))
		assert.Equal(t, "-2 to 2", Get(now, path), path)
	}
}

// A mark that is dragged is pinned; once it is measured it is built, and its pin would refuse every other figure typed for it.
func TestWhatIsMeasuredIsPinnedNoMore(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	for _, pin := range []string{"2 niche shelf left=34", "2 niche shelf right=46", "2 niche shelf bottom=4", "2 niche shelf top=16"} {
		require.NoError(t, Apply(&job, "place "+pin))
	}
	require.Len(t, job.Pins.Walls["back"].Marks, 4)
	shelf := "walls[1].openings[0]"
	for field, left := range map[string]int{"left": 3, "width": 3, "bottom": 3, "height": 3} {
		one := job.Clone()
		require.NoError(t, Apply(&one, "measure "+shelf+"."+field))
		require.Len(t, one.Pins.Walls["back"].Marks, left, field)
	}
	require.NoError(t, Apply(&job, "measure "+shelf+".left=34 "+shelf+".width=12 "+shelf+".bottom=4 "+shelf+".height=12"))
	require.Empty(t, job.Pins.Walls["back"].Marks)
	require.NoError(t, Decode(&job, map[string][]string{shelf + ".left.at": {"34 1/4"}}))
	_, faults := job.Resolve()
	require.Empty(t, faults)
}

// So it is of a strip and a dish, whose fields have names of their own.
func TestWhatIsMeasuredOfAStripAndADishIsPinnedNoMore(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	from := func(from, to string) survey.Mark { return survey.Mark{From: from, To: to} }
	along := from("8", "12")
	w := &job.Walls[0]
	w.Strips = []survey.Strip{{Name: "green", Middle: from("18", "22")}}
	w.Fixtures = []survey.Fixture{{Kind: "soap dish", Name: "soap", Flush: true, Along: &along, Height: survey.Measure{Mark: &survey.Mark{From: "4", To: "9"}}}}
	for _, pin := range []string{"1 strip green left=19", "1 soap dish soap left=9", "1 soap dish soap bottom=5", "1 end left=1"} {
		require.NoError(t, Apply(&job, "place "+pin))
	}
	for field, mark := range map[string]string{"strips[0].middle": "strip green left", "fixtures[0].along": "soap dish soap left", "fixtures[0].height": "soap dish soap bottom", "left.stops": "end left"} {
		one := job.Clone()
		require.NoError(t, Apply(&one, "measure walls[0]."+field))
		require.Empty(t, one.Pins.Walls["left"].Marks[mark], field)
		require.Len(t, one.Pins.Walls["left"].Marks, 3, field)
	}
}
