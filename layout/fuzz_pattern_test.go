package layout_test

import (
	"errors"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Any small room, with all that a room may have, laid in any pattern: what is found holds together
// and is found again where it is pinned as printed; and where it is proven no mark of the tape for the
// line or a start is better, before the terms that walls share at their corners.
func TestAnySearchOfAPatternHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if !rare(t, 20) {
			return
		}
		by := byRapid{t}
		if job, ok := patternRoom(by); ok {
			searchedInPattern(t, by, job)
		}
	})
}

// patternRoom is fuzzedRoom laid in a pattern, with its openings left out where they are refused.
func patternRoom(by chooser) (survey.Job, bool) {
	room := anyRoom(by)
	layPattern(by, room)
	for range 2 {
		if data := jobFile(room); accepted(data) {
			job, err := survey.Read(data)
			return job, err == nil
		}
		for _, wall := range room["walls"].([]any) {
			delete(wall.(object), "openings")
		}
	}
	return survey.Job{}, false
}

func searchedInPattern(t require.TestingT, by chooser, job survey.Job) {
	plan, p := printOf(t, job)
	ids := map[string]bool{}
	for _, w := range plan.Walls {
		holdsTogether(t, w, ids)
	}
	pins := job.Pins
	job.Pins = p.pins(t)
	again, _ := printOf(t, job)
	shared := plan.Setout.Order.Shared()
	order, term := plan.Setout.Order.Until(&again.Setout.Merit, &plan.Setout.Merit, shared)
	require.Zero(t, order, "pinned as printed it differs in %s\n%s", term, mustWrite(job))
	if !plan.Setout.Proven {
		return
	}
	for range 3 {
		job.Pins = pins
		job.Pins.Course.Line, job.Pins.Walls = "", nil
		tape := plan.Room.Tape
		if what := by.number("pinned", 0, 2); what != 1 {
			job.Pins.Course.Line = lengthText(plan.Setout.Line - plan.Setout.Line%tape + tape*length.Length(by.number("line", 0, 60)))
			if what == 2 {
				w := oneOf(by, "wall", plan.Walls...)
				job.Pins.Walls = edgePin(w, w.Start.Edge-w.Start.Edge%tape+tape*length.Length(by.number("start", 0, 60)))
			}
		} else {
			w := oneOf(by, "wall", plan.Walls...)
			job.Pins.Walls = edgePin(w, oneOf(by, "start", w.Start.Classic...).Edge)
		}
		pinned, err := layout.Now(job)
		if faults := (survey.Faults)(nil); errors.As(err, &faults) {
			continue
		}
		require.NoError(t, err)
		order, term := plan.Setout.Order.Until(&pinned.Setout.Merit, &plan.Setout.Merit, shared)
		require.GreaterOrEqual(t, order, 0, "pinned it is better in %s\n%s", term, mustWrite(job))
	}
}
