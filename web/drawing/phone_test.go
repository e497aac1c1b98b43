package drawing_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/drawing"
)

// demo is the plan of the demo job.
func demo(t *testing.T) layout.Plan {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	plan, err := layout.Quick(t.Context(), job)
	require.NoError(t, err)
	return plan
}

// On a phone a wall takes two thirds of its card. It had taken half, between its heights on one side
// and those of its courses on the other; and of the niche neither name nor size stood there.
func TestAWallOnAPhoneIsAsWideAsMayBe(t *testing.T) {
	plan := demo(t)
	s := drawing.Elevation(plan, 1, drawing.Options{Handles: true, Wide: 366 * drawing.Pixel})
	assert.GreaterOrEqual(t, s.Scale.On(plan.Walls[1].Found.Width), s.Width*2/3)
	for _, text := range []string{"niche", "12 1/8 × 12 1/8"} {
		found := false
		for _, e := range s.Elements {
			l, is := e.(drawing.Label)
			if !is || l.Text != text || l.Kind != drawing.Niche {
				continue
			}
			found = true
			from, to := l.Room()
			for _, h := range s.Handles {
				assert.False(t, reachesInto(h, from, to), "%q lies under the handle %s", text, h.ID)
			}
			for _, e := range s.Elements {
				if d, is := e.(drawing.Disc); is && d.Kind == drawing.Finding {
					c := d.Centre
					assert.False(t, c.X+d.Radius > from.X && c.X-d.Radius < to.X && c.Y+d.Radius > from.Y && c.Y-d.Radius < to.Y, "%q lies under a finding", text)
				}
			}
		}
		assert.True(t, found, "%q is written", text)
	}
}

// reachesInto tells whether the arrows of a handle reach into a box.
func reachesInto(h drawing.Handle, from, to drawing.Point) bool {
	across, along := drawing.Micron(1500), drawing.Micron(3200)
	if h.Axis == "x" {
		across, along = along, across
	}
	if h.Axis == "xy" {
		across = along
	}
	return h.At.X+across > from.X && h.At.X-across < to.X && h.At.Y+along > from.Y && h.At.Y-along < to.Y
}

// On a phone no text is smaller than 11 px.
func TestNoTextOnAPhoneIsSmall(t *testing.T) {
	plan := demo(t)
	for wall := range plan.Walls {
		for _, e := range drawing.Elevation(plan, wall, drawing.Options{Wide: 296 * drawing.Pixel}).Elements {
			if l, is := e.(drawing.Label); is {
				assert.GreaterOrEqual(t, l.Size, 11*drawing.Pixel, fmt.Sprintf("wall %d: %s", wall, l.Text))
			}
		}
	}
}
