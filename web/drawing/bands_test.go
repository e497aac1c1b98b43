package drawing

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
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

// Over the ends of a wall stand the sizes of its own tile: a liner's once ran together with those of hexagons.
func TestNoSizeOfABandStandsOverTheEndsOfItsWall(t *testing.T) {
	data, err := os.ReadFile("../../testdata/jobs/hexagon.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	texts := func() (out []string) {
		plan, err := layout.Now(job)
		require.NoError(t, err)
		b := newBoard(plan, wrapTexts)
		for i, w := range plan.Walls {
			said := map[string]bool{}
			c := b.inTurn(frame{wall: i, scale: Scale{1, 10}}, w, survey.SideLeft, said)
			out = append(out, c)
			for _, p := range w.Pieces {
				require.False(t, p.Laid > 0 && said[p.ID], p.ID)
			}
		}
		return out
	}
	require.NotEmpty(t, strings.Join(texts(), ""))
	job.Bands = []survey.Band{{Name: "liner", Bottom: survey.Mark{At: "-300"}, Tile: survey.Tile{Width: "200", Height: "15"}}}
	require.NotEmpty(t, strings.Join(texts(), ""))
}
