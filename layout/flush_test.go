package layout_test

import (
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A flush dish of a tile's size finds a hole between joint lines on all four sides where
// it may slide: in stack bond one tile is left out and none is cut for it.
func TestAFlushDishTakesTheTileOut(t *testing.T) {
	job := demo(t)
	job.Bond = survey.Bond{Kind: "stack"}
	job.Walls[1].Openings = nil
	without, err := layout.Now(job)
	require.NoError(t, err)
	job.Walls[1].Fixtures = []survey.Fixture{{Kind: "soap dish", Name: "dish", Width: "5 7/8", High: "2 7/8", Flush: true, Along: &survey.Mark{From: "20", To: "30"},
		Height: survey.Measure{Mark: &survey.Mark{From: "-6", To: "2"}}}}
	p, err := layout.Now(job)
	require.NoError(t, err)
	w := p.Walls[1]
	require.Len(t, w.Fixtures, 1)
	box := w.Fixtures[0].Box
	assert.Equal(t, p.Room.Tile.Width, box.Width())
	assert.Equal(t, p.Room.Tile.Height, box.Height())
	for _, q := range w.Pieces {
		require.False(t, q.Tile.Overlaps(box), "%s stands where the dish is", q.ID)
		for _, s := range q.Cuts {
			require.NotEqual(t, survey.SoapDish, w.Shape.Sides[s].Kind, "%s is cut for it", q.ID)
		}
	}
	assert.Equal(t, len(without.Walls[1].Pieces)-1, len(w.Pieces), "one tile is left out")
	assert.True(t, p.Setout.Proven)
}
