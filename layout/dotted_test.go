package layout_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
)

// The dotted band of the example by hand (common practice, no source): a tile of 100 by 50 covers its crossing
// and two dots of 22 with their joints of 3, 50 + 2·(22 + 3) = 100, so strands stand 50 + 22 + 2·3 = 78 apart. In
// 128 = 78 + 50 stand two rows of level tiles, all whole in height. What stands reaches 25 beyond its row and is
// cut to 100 - 25 = 75 at one edge of the band. Dots stand between the rows alone, none is cut by the band's edges.
func TestTheDottedBandOfTheExample(t *testing.T) {
	p, err := layout.Now(shippedJob(t, "dotted.json"))
	require.NoError(t, err)
	assert.True(t, p.Setout.Proven)
	const mm = length.Millimetre
	weave, rows, standing, dots := 1, map[length.Length]int{}, 0, 0
	low := p.Setout.Bands[weave].Bottom
	for _, w := range p.Walls {
		for _, q := range w.Pieces {
			assert.False(t, q.Sliver || q.Unworkable, q.ID)
			if q.Laid != weave+1 {
				continue
			}
			high := q.Face.Bounds().Height()
			switch {
			case q.Of == 1:
				dots++
				assert.Equal(t, 22*mm, high, q.ID)
			case q.Tile.Height() == 50*mm:
				rows[q.Tile.Bottom-low]++
				assert.Equal(t, 50*mm, high, q.ID)
			default:
				standing++
				assert.Equal(t, 75*mm, high, q.ID)
			}
		}
	}
	assert.Len(t, rows, 2, "level tiles: two rows")
	assert.Positive(t, rows[0])
	assert.Positive(t, rows[78*mm])
	assert.Positive(t, standing)
	assert.Positive(t, dots)
}
