package ask_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/web/ask"
	"coursewright/web/form"
)

// The guess of a stud goes with the other one, so that the first of the two is not refused for what nobody measured.
func TestTheGuessOfAStudGoesWithTheOther(t *testing.T) {
	const left, right = "walls[0].openings[0].inside.studs.left", "walls[0].openings[0].inside.studs.right"
	before := survey.Job{Units: "in", Guess: []string{left, right}, Walls: []survey.Wall{{Name: "back", Width: "60", Openings: []survey.Opening{
		{Kind: "niche", Name: "shelf", Inside: &survey.Inside{Studs: &survey.Studs{Left: "20", Right: "34 1/2"}}}}}}}
	for name, c := range map[string]struct{ path, typed, other, want string }{
		"the right one on":             {left, "40", right, "54 1/2"},
		"the right one back":           {left, "4 1/4", right, "18 3/4"},
		"the left one":                 {right, "50", left, "35 1/2"},
		"no further than the wall":     {left, "50", right, "60"},
		"no further than its left end": {right, "9", left, "0"},
		"beyond the wall it stays":     {left, "70", right, "34 1/2"},
		"what does not read is left":   {left, "x", right, "34 1/2"},
	} {
		job := before.Clone()
		require.NoError(t, form.Set(&job, c.path, c.typed))
		ask.Settle(&job, []string{c.path})
		ask.MoveStuds(before, &job)
		assert.Equal(t, c.want, form.Get(job, c.other), name)
	}
	job := before.Clone()
	require.NoError(t, form.Set(&job, left, "40"))
	ask.Settle(&job, []string{left, right})
	ask.MoveStuds(before, &job)
	assert.Equal(t, "34 1/2", form.Get(job, right), "it is measured")
}

// What a stud does to the guess of the other is said at the stud that was typed, not at the wall's width.
func TestAStudIsRefusedForTheGuessOfTheOther(t *testing.T) {
	const left, right = "walls[0].openings[0].inside.studs.left", "walls[0].openings[0].inside.studs.right"
	job := survey.Job{Guess: []string{right}, Walls: []survey.Wall{{Name: "back", Width: "60", Openings: []survey.Opening{
		{Kind: "niche", Name: "shelf", Inside: &survey.Inside{Studs: &survey.Studs{Left: "59 1/2", Right: "60"}}}}}}}
	fault := survey.Fault{Path: right, Found: "a bay of 1/2", Want: "studs more than 2 apart"}
	assert.Equal(t, survey.Faults{{Path: left, Found: "“59 1/2”", Want: "a place that leaves room on the wall for the other stud, or measure that too"}},
		ask.Once(job, survey.Faults{fault}))
}
