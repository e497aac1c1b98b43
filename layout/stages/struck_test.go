package stages_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout"
	"coursewright/layout/stages"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// A tile that leans, or has points, meets the lines that are struck with a corner: a setter who was told of the "left edge"
// of a tile at 45° had two to choose from.
func TestWhatOfATileMeetsTheLinesStruck(t *testing.T) {
	for _, c := range []struct {
		bond         survey.Bond
		level, plumb stages.Touch
		is           string
	}{
		{survey.Bond{Kind: "running", Offset: "1/2"}, stages.Edge, stages.Edge, "It is the bottom edge of a course."},
		{survey.Bond{Kind: "herringbone"}, stages.Edge, stages.Edge, "It is the bottom edge of a course."},
		{survey.Bond{Kind: "herringbone", Turn: "45"}, stages.Corner, stages.Corner, "The lowest corners of a course stand on it."},
		{survey.Bond{Kind: "diagonal"}, stages.Corner, stages.Corner, "The lowest corners of a course stand on it."},
		{survey.Bond{Kind: "hexagon"}, stages.Corner, stages.Edge, "The lowest corners of a course stand on it."},
		{survey.Bond{Kind: "hexagon", Along: "plumb"}, stages.Edge, stages.Corner, "It is the bottom edge of a course."},
	} {
		job := jobOf(t, "one-wall")
		job.Bond = c.bond
		if c.bond.Kind == "hexagon" {
			job.Tile.Width = job.Tile.Height
		}
		p, err := layout.Now(job)
		require.NoError(t, err)
		s := stages.ToStrike(p.Room, p.Setout.Line, p.Walls)
		assert.Equal(t, []stages.Touch{c.level, c.plumb}, []stages.Touch{s.Level, s.Plumb}, "%v", c.bond)
		assert.Equal(t, c.is, s.Is("a course"))
	}
}
