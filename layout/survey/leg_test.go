package survey_test

import (
	"strings"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// legged is a wall of 40 in with a tub 30 in wide at its left and a floor beside it.
func legged(leg string) survey.Job {
	job := sketch("in", "a")
	w := &job.Walls[0]
	w.Width = "40"
	w.Right = survey.End{Stops: mark("36")}
	level := func(drop, from, to string) []survey.Drop {
		return []survey.Drop{{At: from, Drop: drop}, {At: to, Drop: drop}}
	}
	w.Base = []survey.Segment{{Meets: "tub", Gap: "1/8", Readings: level("40", "0", "30")}, {Meets: "floor", Gap: "1/8", Leg: leg, Readings: level("58", "30", "40")}}
	w.Head = survey.Head{Stops: mark("20")}
	return job
}

// With the leg left out the tile ends at the rim from end to end; in single tiles
// the bond comes down to there, and the leg is part of the wall again WithLegs.
func TestLegs(t *testing.T) {
	bottom := func(w survey.WallFound) string {
		at := survey.Placed{Right: w.Right.Stops.From, Head: w.Head.Stops.From}
		return w.Shape(0, at).Region.Bounds().Bottom.Plain(0, 0)
	}
	for leg, want := range map[string][2]string{"": {"-57 7/8", "-57 7/8"}, "bond": {"-57 7/8", "-57 7/8"}, "single": {"-39 7/8", "-57 7/8"}, "none": {"-39 7/8", "-39 7/8"}} {
		room, faults := legged(leg).Resolve()
		require.Empty(t, faults)
		assert.Equal(t, want, [2]string{bottom(room.Walls[0]), bottom(room.Walls[0].WithLegs())}, "leg %q", leg)
	}
	room, _ := legged("single").Resolve()
	legs := room.Walls[0].LegsBeside()
	require.Len(t, legs, 1)
	assert.Equal(t, survey.LegBeside{Right: true, Rim: -40*in + in/8, Front: 30*in + in/8}, legs[0])
	assert.Equal(t, 36*in-30*in-in/8, legs[0].Width(room.Walls[0], survey.Placed{Right: 36 * in}), "from the end, less the front and its gap")
}

// A leg that is laid as is best is open until the solver has chosen, but where a set-out is held
// or the room allows no single tiles.
func TestWhichLegsAreOpen(t *testing.T) {
	for _, c := range []struct {
		what  string
		spoil func(*survey.Job)
		how   survey.Leg
		why   survey.LegReason
	}{
		{"open", func(*survey.Job) {}, survey.InBond, survey.NoReason},
		{"held", func(j *survey.Job) {
			j.Held = &survey.Held{Walls: map[string]survey.WallPin{"a": {Legs: map[string]string{"right": "none"}}}}
		}, survey.NoLeg, survey.LegHeld},
		{"held at the other side, where no leg is", func(j *survey.Job) {
			j.Held = &survey.Held{Walls: map[string]survey.WallPin{"a": {Legs: map[string]string{"left": "none"}}}}
		}, survey.InBond, survey.NoReason},
		{"columns", func(j *survey.Job) { j.Bond = survey.Bond{Kind: "stack", Along: "plumb"} }, survey.InBond, survey.LegOnly},
		{"a pattern", func(j *survey.Job) { j.Bond = survey.Bond{Kind: "diagonal"} }, survey.InBond, survey.LegOnly},
	} {
		job := legged("best")
		c.spoil(&job)
		room, faults := job.Resolve()
		require.Empty(t, faults, c.what)
		leg := room.Walls[0].Base[1]
		assert.Equal(t, c.how, leg.Leg, c.what)
		assert.Equal(t, c.why, leg.Why, c.what)
		assert.Equal(t, c.why == survey.NoReason, len(room.OpenLegs()) == 1, c.what)
	}
}

func TestLegsAreRefused(t *testing.T) {
	for _, c := range []struct {
		spoil func(*survey.Job)
		fault string
	}{
		{func(j *survey.Job) { j.Walls[0].Base[1].Leg = "short" }, "walls[0].base[1].leg: found “short”; write one of bond, single, none, best"},
		{func(j *survey.Job) { j.Walls[0].Base[0].Leg = "none" }, "walls[0].base[0].leg: found “none”; write nothing here: a leg is a floor"},
		{func(j *survey.Job) { j.Walls[0].Base[0].Meets = "floor" }, "walls[0].base[1].leg: found “single”; write nothing here: a leg is a floor"},
		{func(j *survey.Job) { j.Bond = survey.Bond{Kind: "stack", Along: "plumb"} }, "walls[0].base[1].leg: found “single” beside a bond without level courses; write bond or none"},
		{func(j *survey.Job) {
			j.Pins.Walls = map[string]survey.WallPin{"a": {Legs: map[string]string{"right": "single"}}}
		}, "pins.walls.a.legs: found legs; write nothing here: how a leg is laid is said by its field leg"},
		{func(j *survey.Job) {
			j.Walls[0].Base[1].Leg = "best"
			j.Held = &survey.Held{Walls: map[string]survey.WallPin{"a": {Legs: map[string]string{"right": "best"}}}}
		}, "held.walls.a.legs.right: found “best”; write bond, single or none"},
	} {
		job := legged("single")
		c.spoil(&job)
		_, faults := job.Resolve()
		require.NotEmpty(t, faults, c.fault)
		assert.True(t, strings.HasPrefix(faults[0].String(), c.fault), "want %s\ngot  %s", c.fault, faults[0])
	}
}
