package survey_test

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The end of a half wall stops under its cap as its face does: under tile of 5/16 in that laps a
// joint of 1/8 in lower, 7/16 in under the finished height of 2 in; beside a bar of 1/8 in a joint
// before that; mitred at the height itself. Found on a knee wall, whose end went 7/16 in into its cap.
func TestTheEndOfAHalfWallStopsUnderItsCap(t *testing.T) {
	in := length.Inch
	for name, c := range map[string]struct {
		top    survey.Top
		spoil  func(*survey.Job)
		stops  length.Length
		mitred bool
	}{
		"a lap":                     {top: survey.Top{Corner: "lap"}, stops: 2*in - 7*in/16},
		"bullnose over":             {top: survey.Top{Corner: "bullnose", Trim: "nose"}, stops: 2*in - 7*in/16},
		"bullnose on the front":     {top: survey.Top{Corner: "bullnose", Trim: "nose", Laps: "front"}, stops: 2*in - 2*in - in/8},
		"a bar":                     {top: survey.Top{Corner: "profile", Trim: "bar"}, stops: 2*in - in/4},
		"a mitre":                   {top: survey.Top{Corner: "mitre"}, stops: 2 * in, mitred: true},
		"an end that is higher":     {top: survey.Top{Corner: "lap"}, spoil: func(j *survey.Job) { j.Walls[1].Head.Stops = mark("9") }, stops: 9 * in},
		"trim of its own":           {top: survey.Top{Corner: "lap"}, spoil: func(j *survey.Job) { j.Walls[1].Head.Trim = "nose" }, stops: 2*in - 2*in - in/8},
		"a bench, with no far edge": {top: survey.Top{Kind: "seat", Corner: "lap"}, stops: 2 * in},
	} {
		job := turned(nil)
		if c.top.Kind == "" {
			c.top.Kind = "cap"
		}
		c.top.Depth = "6"
		job.Walls[0].Top = &c.top
		if c.spoil != nil {
			c.spoil(&job)
		}
		room, faults := job.Resolve()
		require.Empty(t, faults, name)
		panel := room.Walls[1].Head
		assert.Equal(t, survey.Span{From: c.stops, To: c.stops}, panel.Stops, name)
		assert.Equal(t, c.mitred, panel.Mitred(), name)
		if panel.Beneath == nil {
			continue
		}
		assert.Equal(t, room.Walls[0].Head.Stops, panel.Stops, "%s: as the face does", name)
		wider := room.Jointed(3 * in / 16)
		assert.Equal(t, wider.Walls[0].Head.Stops, wider.Walls[1].Head.Stops, "%s: with another joint too", name)
	}
}

// The back of a half wall stops under the cap too, round both corners; a wall behind it that is
// higher does not. Found on a half wall tiled all round.
func TestTheBackOfAHalfWallStopsUnderItsCap(t *testing.T) {
	job := turned(nil)
	job.Walls[0].Top = &survey.Top{Kind: "cap", Depth: "6", Corner: "lap"}
	job.Walls[1].Right = survey.End{Meets: "outside corner"}
	back := job.Walls[0]
	back.Name, back.Top, back.Left, back.Right = "back", nil, survey.End{Meets: "outside corner"}, survey.End{Stops: mark("36")}
	job.Walls = append(job.Walls, back)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	for _, w := range room.Walls {
		assert.Equal(t, room.Walls[0].Head.Stops, w.Head.Stops, w.Name)
	}
	job.Walls[2].Head.Stops = mark("9")
	room, faults = job.Resolve()
	require.Empty(t, faults)
	assert.Nil(t, room.Walls[2].Head.Beneath)
	assert.NotNil(t, room.Walls[1].Head.Beneath)
}
