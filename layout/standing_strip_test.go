package layout_test

import (
	"testing"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/keep"
	"coursewright/layout/length"
	"coursewright/layout/stages"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Courses stand on both sides of a strip that is measured: the demo with its back wall set up to
// course 8 as it was planned, read off a tape of 1/16 in. The rest goes on as it was planned, in the
// same courses, to within what the tape shows: beyond the strip from the strip on, before it
// from where the tile was found.
func TestCoursesThatStandBesideAStrip(t *testing.T) {
	for _, bond := range []survey.Bond{{Kind: "stack"}, {Kind: "running", Offset: "1/2"}, {Kind: "running", Offset: "1/3", Hand: "left"}} {
		t.Run(bond.Kind+" "+bond.Offset, func(t *testing.T) { standBesideAStrip(t, bond) })
	}
}

func standBesideAStrip(t *testing.T, bond survey.Bond) {
	job := demo(t)
	job.Bond = bond
	job.Walls[1].Openings = nil
	job.Walls[1].Strips = []survey.Strip{slate(survey.Mark{At: "32"})}
	before, err := layout.Now(job)
	require.NoError(t, err)
	var top, edge length.Length
	for _, p := range before.Walls[1].Pieces {
		if p.Course == 8 && p.Whole && edge == 0 {
			top, edge = p.Tile.Top, p.Tile.Left
		}
	}
	require.NotZero(t, edge)
	tape := length.Inch / 16
	say := func(l length.Length) string { return l.RoundTo(tape).Plain(length.Imperial, length.Inch/64) }
	job.Held = &survey.Held{Course: survey.CoursePin{Line: before.Setout.Line.MillimetreText() + " mm"}, Walls: map[string]survey.WallPin{
		"back": {Beyond: keep.Of("", job, before.Setout, before.Walls).Walls["back"].Beyond}}} // which was kept of it
	job.Walls[1].Set = &survey.AsSet{Course: "8", Left: say(top), Right: say(top), Start: survey.SetStart{Is: "left edge", At: say(edge)}}
	after, err := layout.Now(job)
	require.NoError(t, err)

	places := func(p layout.Plan, from length.Length, high bool) (out [][3]length.Length) {
		for _, q := range p.Walls[1].Pieces {
			if q.Tile.Left >= from == high {
				out = append(out, [3]length.Length{length.Length(q.Course), q.Tile.Left, q.Tile.Bottom})
			}
		}
		return out
	}
	strip := after.Walls[1].Start.Placed.Openings[0]
	assert.Equal(t, before.Walls[1].Start.Placed.Openings[0].Left, strip.Left, "the strip stands where it was measured")
	for _, beyond := range []bool{false, true} {
		was, is := places(before, strip.Right, beyond), places(after, strip.Right, beyond)
		require.Len(t, is, len(was))
		for i := range was {
			assert.Equal(t, was[i][0], is[i][0])
			assert.LessOrEqual(t, (was[i][2] - is[i][2]).Abs(), tape)
			if beyond {
				assert.Equal(t, was[i][1], is[i][1], "beyond the strip tile stands beside it as before")
			}
			assert.LessOrEqual(t, (was[i][1] - is[i][1]).Abs(), tape)
		}
	}
	piecesMakeUp(t, &after.Walls[1])
	s := cuts.Of(cuts.Input{Room: after.Room, Walls: after.Walls}, cuts.Usual(after.Room.Units))
	set := map[string]int{}
	for _, step := range stages.Order(stages.Input{Room: after.Room, Walls: after.Walls, Cuts: s}) {
		for _, q := range step.Pieces {
			set[q.ID]++
		}
	}
	for _, q := range after.Walls[1].Pieces {
		want := 1
		if q.Course <= 8 {
			want = 0
		}
		assert.Equal(t, want, set[q.ID], "%s of course %d is a step", q.ID, q.Course)
	}
	again, err := layout.Now(keep.Hold(job, keep.Of("", job, after.Setout, after.Walls)))
	require.NoError(t, err)
	assert.True(t, keep.Same(after.Walls, again.Walls), "held, it stays")

	// Where the strip is not measured, or the start lies beyond it, nothing is known of the other side.
	for _, c := range []struct {
		spoil func(*survey.Wall)
		fault string
	}{
		{func(w *survey.Wall) { w.Strips[0].Middle = survey.Mark{From: "30", To: "34"} },
			"walls[1].strips[0].middle: found a strip from base to head that may stand anywhere in a range, where courses stand"},
		{func(w *survey.Wall) { w.Set.Start.At = "50" }, "walls[1].set.start.at: found a place beyond a strip from base to head"},
	} {
		spoilt := copied(job)
		c.spoil(&spoilt.Walls[1])
		_, faults := spoilt.Resolve()
		require.NotEmpty(t, faults, c.fault)
		assert.Contains(t, faults[0].String(), c.fault)
	}
}
