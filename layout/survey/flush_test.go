package survey_test

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// dish is a flush dish of 6 by 4 in.
func dish() survey.Fixture {
	return survey.Fixture{Kind: "soap dish", Name: "dish", At: "20", Width: "6", High: "4", Flush: true, Height: survey.Measure{Mark: free("-4", "4")}}
}

// Each case spoils one thing in a sound job with a flush dish, and names the one fault.
func TestFlushDishesAreRefused(t *testing.T) {
	for fault, spoil := range map[string]func(*survey.Job, *survey.Fixture){
		"walls[0].fixtures[0].flush: found true; write nothing here": func(_ *survey.Job, f *survey.Fixture) {
			f.Kind, f.High = "grab bar", ""
		},
		"walls[0].fixtures[0].along: found a mark; write nothing here: only a soap dish that is flush": func(_ *survey.Job, f *survey.Fixture) {
			f.Flush, f.Along = false, free("18", "22")
		},
		"walls[0].fixtures[0].at: found “20”; write nothing here: a flush soap dish has":            func(_ *survey.Job, f *survey.Fixture) { f.Along = free("18", "22") },
		"walls[0].fixtures[0].along.to: found “1”":                                                  func(_ *survey.Job, f *survey.Fixture) { f.At, f.Along = "", free("18", "1") },
		"walls[0].fixtures[0].at: found a flush dish from -2 1/8\" to 4 1/8\"; write a middle from": func(_ *survey.Job, f *survey.Fixture) { f.At = "1" },
		"walls[0].fixtures[0].height: found a flush dish from":                                      func(_ *survey.Job, f *survey.Fixture) { f.Height = survey.Measure{Plain: "-90"} },
		"walls[0].fixtures[0].at: found a flush dish where niche shelf may stand": func(j *survey.Job, _ *survey.Fixture) {
			j.Walls[0].Openings = []survey.Opening{{Kind: "niche", Name: "shelf", Left: mark("18"), Width: mark("12"), Bottom: mark("0"), Height: &survey.Measure{Mark: mark("12")}}}
		},
	} {
		job, f := sketch("in", "a"), dish()
		spoil(&job, &f)
		job.Walls[0].Fixtures = append(job.Walls[0].Fixtures, f)
		_, faults := job.Resolve()
		if assert.Len(t, faults, 1, "%s: %v", fault, faults) {
			assert.Contains(t, faults[0].String(), fault)
		}
	}
}

// A dish of 6 by 4 in with joints of 1/8 in takes 6 1/4 by 4 1/4 in from the field.
func TestWhatAFlushDishTakesFromTheField(t *testing.T) {
	job := sketch("in", "a")
	job.Joint.Plain = "1/8"
	other := dish()
	other.Flush, other.Name = false, "another"
	job.Walls[0].Fixtures = []survey.Fixture{other, dish()}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	w := room.Walls[0]
	require.Len(t, w.Openings, 1)
	o := w.Openings[0]
	assert.Equal(t, survey.Span{From: 25 * length.Inch / 4, To: 25 * length.Inch / 4}, o.Width)
	assert.Equal(t, survey.Span{From: 17 * length.Inch / 4, To: 17 * length.Inch / 4}, o.Height)
	assert.Equal(t, 20*length.Inch, o.Left.From+o.Width.From.Half())
	placed := survey.Placed{Openings: []survey.Edges{{Left: 1, Right: 2}}}
	_, is := w.Dish(0, placed)
	assert.False(t, is)
	hole, is := w.Dish(1, placed)
	assert.True(t, is)
	assert.Equal(t, placed.Openings[0], hole)
	wider := room.Jointed(length.Inch / 4).Walls[0].Openings[0]
	assert.Equal(t, 13*length.Inch/2, wider.Width.From)
	assert.Equal(t, 20*length.Inch, wider.Left.From+wider.Width.From.Half())
}
