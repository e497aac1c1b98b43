package layout_test

import (
	"errors"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// FuzzSearch searches through any small room, with whatever is free left free: what is found
// holds together, is found again where it is pinned as printed, and, if it is proven, none of the
// classic starts and lines and none of the marks of the tape that can be pinned instead is better.
func FuzzSearch(f *testing.F) {
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, data []byte) {
		by := &byBytes{data}
		job, ok := fuzzedRoom(by)
		if !ok {
			t.Skip("no room")
		}
		searched(t, by, job)
	})
}

func TestAnySearchHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if !rare(t, 10) {
			return
		}
		if job, ok := fuzzedRoom(byRapid{t}); ok {
			searched(t, byRapid{t}, job)
		}
	})
}

func searched(t require.TestingT, by chooser, job survey.Job) {
	plan, p := printOf(t, job)
	ids := map[string]bool{}
	for _, w := range plan.Walls {
		holdsTogether(t, w, ids)
	}
	job.Pins = p.pins(t)
	again, _ := printOf(t, job)
	order, term := plan.Setout.Order.Compare(&again.Setout.Merit, &plan.Setout.Merit)
	require.LessOrEqual(t, order, 0, "pinned as printed it is worse in %s\n%s", term, mustWrite(job))
	require.True(t, order == 0 || !plan.Setout.Proven, "pinned as printed it is better in %s\n%s", term, mustWrite(job))
	if !plan.Setout.Proven {
		return // nothing is said of what is not proven but its bound: see law 2 of package search
	}
	for _, pins := range []survey.Pins{classicPins(by, plan), tapePins(by, plan)} {
		for _, pins := range parts(pins) {
			job.Pins = pins
			pinned, err := layout.Now(job)
			if faults := (survey.Faults)(nil); errors.As(err, &faults) {
				continue // pins that clash
			}
			require.NoError(t, err)
			order, term := plan.Setout.Order.Until(&pinned.Setout.Merit, &plan.Setout.Merit, merit.Slack)
			require.GreaterOrEqual(t, order, 0, "pinned it is better in %s\n%s", term, mustWrite(job))
		}
	}
}

// classicPins pins a classic line and a classic start of a wall.
func classicPins(by chooser, plan layout.Plan) (p survey.Pins) {
	if lines := plan.Setout.Lines; len(lines) > 0 {
		p.Course.Line = lengthText(oneOf(by, "line", lines...).Line)
	}
	w := oneOf(by, "wall", plan.Walls...)
	p.Walls = edgePin(w, oneOf(by, "start", w.Start.Classic...).Edge)
	return p
}

// tapePins pins the line and the start of a wall at marks of the tape.
func tapePins(by chooser, plan layout.Plan) (p survey.Pins) {
	tape := plan.Room.Tape
	mark := func(what string, low, reach length.Length) length.Length {
		return low - low%tape + tape*length.Length(by.number(what, 0, int(reach/tape)))
	}
	p.Course.Line = lengthText(mark("mark of the line", plan.Setout.Line, plan.Room.Tile.Height+plan.Room.Joint))
	w := oneOf(by, "wall", plan.Walls...)
	p.Walls = edgePin(w, mark("mark of the start", w.Start.Edge, plan.Room.Tile.Width+plan.Room.Joint))
	return p
}

func edgePin(w layout.Wall, at length.Length) map[string]survey.WallPin {
	return map[string]survey.WallPin{w.Found.Name: {Edge: lengthText(at)}}
}

func lengthText(l length.Length) string { return exactly(float64(l)) }

// parts are pins, and the pins of the line and of the walls alone.
func parts(p survey.Pins) []survey.Pins {
	if p.Course.Line == "" {
		return []survey.Pins{p}
	}
	return []survey.Pins{p, {Course: p.Course}, {Walls: p.Walls}}
}
