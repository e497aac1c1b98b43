package survey_test

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// column is a strip of two columns of 2 in tile with its middle so far from the left.
func column(middle survey.Mark) survey.Strip {
	return survey.Strip{Name: "slate", Columns: 2, Tile: survey.Tile{Width: "2", Height: "2"}, Middle: middle}
}

// Each case spoils one thing in a sound job with a strip, and names the one fault.
func TestStripsAreRefused(t *testing.T) {
	for fault, spoil := range map[string]func(*survey.Job, *survey.Strip){
		"walls[0].strips[0].name: found nothing; write a name":                   func(_ *survey.Job, s *survey.Strip) { s.Name = "" },
		"walls[0].strips[0].tile.width: found “0”; write a length from":          func(_ *survey.Job, s *survey.Strip) { s.Tile.Width = "0" },
		"walls[0].strips[0].joint: found “x”":                                    func(_ *survey.Job, s *survey.Strip) { s.Joint = "x" },
		"walls[0].strips[0].bond.kind: found “odd”; write one of":                func(_ *survey.Job, s *survey.Strip) { s.Bond.Kind = "odd" },
		"walls[0].strips[0].bond: found a bond without plumb joints":             func(_ *survey.Job, s *survey.Strip) { s.Bond = survey.Bond{Kind: "running", Offset: "1/2"} },
		"walls[0].strips[0].columns: found -1; write a whole number":             func(_ *survey.Job, s *survey.Strip) { s.Columns = -1 },
		"walls[0].strips[0].middle.at: found nothing; write a length":            func(_ *survey.Job, s *survey.Strip) { s.Middle = survey.Mark{} },
		"walls[0].strips[0].middle: found a strip from -1 3/16\" to 3 3/16\"":    func(_ *survey.Job, s *survey.Strip) { s.Middle = *mark("1") },
		"walls[0].strips[0].near: found “3”; write nothing here: a wish belongs": func(_ *survey.Job, s *survey.Strip) { s.Middle, s.Near = *mark("20"), "3" },
		"walls[0].strips[0].top: found an upper edge at -5\"; write a height over": func(_ *survey.Job, s *survey.Strip) {
			s.Bottom, s.Top = mark("0"), mark("-5")
		},
		"walls[0].strips: found 5 strips; write at most 4": func(j *survey.Job, _ *survey.Strip) { j.Walls[0].Strips = make([]survey.Strip, 4) },
		"walls[0].strips[0].middle: found a strip where niche shelf may stand; write a place clear of it": func(j *survey.Job, s *survey.Strip) {
			j.Walls[0].Openings = []survey.Opening{{Kind: "niche", Name: "shelf", Left: mark("18"), Width: mark("12"), Bottom: mark("0"), Height: &survey.Measure{Mark: mark("12")}}}
		},
		"walls[0].strips[1].middle: found a strip where strip slate may stand; write a place clear of it": func(j *survey.Job, s *survey.Strip) {
			other := column(*mark("21"))
			other.Name = "other"
			j.Walls[0].Strips = append(j.Walls[0].Strips, column(*mark("20")))
			*s = other
		},
	} {
		job, s := sketch("in", "a"), column(*free("18", "22"))
		spoil(&job, &s)
		job.Walls[0].Strips = append(job.Walls[0].Strips, s)
		_, faults := job.Resolve()
		if assert.Len(t, faults, 1, "%s: %v", fault, faults) {
			assert.Contains(t, faults[0].String(), fault)
		}
	}
}

// Two tiles of 2 in with a joint of 1/8 in are 4 1/8 in; with a joint on either side
// the field stays open over 4 3/8 in, and its middle stays where it was measured.
func TestWhatAStripTakesFromTheField(t *testing.T) {
	job := sketch("in", "a")
	job.Joint.Plain = "1/8"
	job.Walls[0].Strips = []survey.Strip{column(*mark("20"))}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	o := room.Walls[0].Openings[len(room.Walls[0].Openings)-1]
	assert.Equal(t, 35*length.Inch/8, o.Width.From)
	assert.Equal(t, 20*length.Inch, o.Left.From+o.Width.From.Half())
	assert.True(t, o.Parts())
	wider := room.Jointed(length.Inch / 4)
	moved := wider.Walls[0].Openings[len(room.Walls[0].Openings)-1]
	assert.Equal(t, 19*length.Inch/4, moved.Width.From, "4 1/4 in of tile, and two joints")
	assert.Equal(t, 20*length.Inch, moved.Left.From+moved.Width.From.Half())
	assert.Equal(t, 35*length.Inch/8, o.Width.From, "the room before is another one")
}

// A strip from base to head keeps clear of a leg in single tiles, which belongs to the part
// of the wall beside it; over one in the bond it may stand.
func TestAStripKeepsClearOfASingleLeg(t *testing.T) {
	for _, c := range []struct {
		leg, middle string
		over        bool
	}{{"single", "20", false}, {"single", "33", true}, {"bond", "33", false}} {
		job := legged(c.leg)
		job.Walls[0].Strips = []survey.Strip{column(*mark(c.middle))}
		_, faults := job.Resolve()
		if !c.over {
			require.Empty(t, faults)
			continue
		}
		require.Len(t, faults, 1)
		assert.Contains(t, faults[0].String(), "walls[0].strips[0]: found a strip from base to head, over a leg in single tiles")
	}
}
