package layout_test

import (
	"errors"
	"testing"

	"coursewright/layout"
	"coursewright/layout/merit"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// FuzzSearch searches through any small room, with whatever is free left free: what is found
// holds together, is found again where it is pinned as printed, and none of the classic
// starts and lines that can be pinned instead is better.
func FuzzSearch(f *testing.F) { f.Fuzz(rapid.MakeFuzz(searched)) }

func TestAnySearchHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if rare(t, 10) {
			searched(t)
		}
	})
}

func searched(t *rapid.T) {
	data := rooms.Draw(t, "room")
	job, err := survey.Read(data)
	require.NoError(t, err)
	plan, p := printOf(t, job)
	ids := map[string]bool{}
	for _, w := range plan.Walls {
		holdsTogether(t, w, ids)
	}
	job.Pins = p.pins(t)
	again, _ := printOf(t, job)
	order, term := plan.Setout.Order.Compare(&again.Setout.Merit, &plan.Setout.Merit)
	require.LessOrEqual(t, order, 0, "pinned as printed it is worse in %s\n%s", term, data)
	require.True(t, order == 0 || !plan.Setout.Proven, "pinned as printed it is better in %s\n%s", term, data)

	for _, pins := range classicPins(t, plan) {
		job.Pins = pins
		pinned, err := layout.Now(job)
		if faults := (survey.Faults)(nil); errors.As(err, &faults) {
			continue // pins that clash
		}
		require.NoError(t, err)
		order, term := plan.Setout.Order.Until(&pinned.Setout.Merit, &plan.Setout.Merit, merit.Slack)
		if !plan.Setout.Proven {
			continue // nothing is said of what is not proven but its bound: see law 2 of package search
		}
		require.GreaterOrEqual(t, order, 0, "pinned to %+v it is better in %s\n%s", pins, term, data)
	}
}

// classicPins draws a classic line and a classic start of a wall, and pins each and both.
func classicPins(t *rapid.T, plan layout.Plan) []survey.Pins {
	line := exactly(float64(rapid.SampledFrom(plan.Setout.Lines).Draw(t, "line").Line))
	w := rapid.SampledFrom(plan.Walls).Draw(t, "wall")
	edge := exactly(float64(rapid.SampledFrom(w.Start.Classic).Draw(t, "start").Edge))
	start := map[string]survey.WallPin{w.Found.Name: {Edge: edge}}
	return []survey.Pins{{Course: survey.CoursePin{Line: line}}, {Walls: start}, {Course: survey.CoursePin{Line: line}, Walls: start}}
}
