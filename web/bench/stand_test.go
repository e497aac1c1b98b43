package bench

import (
	"strconv"
	"strings"
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/page"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A first course that is cut to the rim has no tile to measure by. What the
// button offers is a full course, by a whole tile.
func TestAFullCourseIsOfferedAsSet(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	b := Bench{Job: page.Job{Typed: job, Plan: plan}}
	for i, w := range plan.Walls {
		_, offered, found := strings.Cut(b.standDo(i), "=")
		require.True(t, found, w.Found.Name)
		said := strings.Split(offered, ";")
		course, err := strconv.Atoi(said[0])
		require.NoError(t, err)
		whole := false
		for _, p := range w.Pieces {
			if p.Course != course {
				continue
			}
			whole = whole || p.Whole && b.findable(p.Tile.Left) == said[4] && b.findable(p.Tile.Top) == said[1]
			for _, side := range p.Cuts {
				assert.NotEqual(t, survey.BaseSegment, w.Shape.Sides[side].Part.Is, "%s is cut to the base", p.ID)
			}
		}
		assert.True(t, whole, "course %d of %s", course, w.Found.Name)
	}
}
