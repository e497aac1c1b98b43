package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/web/shapes"
)

// The look of the finished wall has each tile in its own colour; the drawing to work
// by tells a band from the field by a shade.
func TestEachTileHasItsColour(t *testing.T) {
	job, err := shapes.New("banded", "in", "banded")
	require.NoError(t, err)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	colours := func(o Options) map[Colour]int {
		out := map[Colour]int{}
		for _, e := range Elevation(plan, 1, o).Elements {
			if tiles, is := e.(Tiles); is {
				for _, r := range tiles.Runs {
					out[tiles.Fill] += r.Count
				}
			}
		}
		return out
	}
	whole := map[int]int{}
	for _, p := range plan.Walls[1].Pieces {
		if p.Whole {
			whole[p.Laid]++
		}
	}
	finish := colours(Options{Finish: true})
	assert.Equal(t, whole[0], finish[Colour(plan.Room.Tile.Colour)])
	assert.Equal(t, whole[1], finish[Colour(plan.Room.Bands[0].Tile.Colour)])
	work := colours(Options{})
	assert.Equal(t, whole[0], work[White])
	assert.Len(t, work, 2)
}
