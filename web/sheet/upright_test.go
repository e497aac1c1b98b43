package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The set-out sheet says where a strip's tile and the field beside it stand, the cut
// list what of it is cut, and its tile is bought by itself. By hand: three tiles of
// 1 7/8 in with joints of 1/8 in about a middle at 18 in stand from 15 1/16 to 20 15/16 in,
// and the field keeps 1/8 in from them.
func TestSheetsSayWhereAStripStands(t *testing.T) {
	plan := banded(t, "strip")
	b := newBook(plan, Options{Paper: Papers()[0]})
	said := map[string][]string{}
	for _, r := range b.marks().rows {
		said[r.cells[1]] = r.cells[2:]
	}
	assert.Equal(t, []string{held("15 1/16\" to 20 15/16\""), "from the base to the head"}, said["strip mosaic"])
	assert.Equal(t, "ends "+held("14 15/16\"")+", begins "+held("21 1/16\""), said["field beside it"][0])
	require.NotEmpty(t, said["first full row of it"])
	found := 0
	for _, e := range b.stripEntries(plan.Walls[0]) {
		found += e.pieces
	}
	cut := 0
	for _, p := range plan.Walls[0].Strips[0].Pieces {
		if !p.Whole {
			cut++
		}
	}
	assert.Equal(t, cut, found)
	require.NotZero(t, cut)
	bought := false
	for _, l := range b.buy.Lines {
		bought = bought || l.Item == "tile for the strip mosaic"
	}
	assert.True(t, bought)
	laidOut(t, "strip", plan, Options{Kinds: Kinds(), Paper: Papers()[0]})
}
