package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/web/shapes"
)

// banded is the plan of a shape with bands.
func banded(t *testing.T, key string) layout.Plan {
	t.Helper()
	job, err := shapes.New(key, "in", "with other tile")
	require.NoError(t, err)
	plan, err := layout.Now(job)
	require.NoError(t, err)
	return plan
}

// The story pole shows field, band and field: each course a joint over the one under
// it, the band's courses as high as its tile, numbers running through.
func TestTheStoryPoleShowsTheBand(t *testing.T) {
	plan := banded(t, "banded")
	p := newBook(plan, Options{Paper: Papers()[0]}).pole()
	courses := map[length.Length]int{}
	for i, s := range p.tiles {
		courses[s.top-s.bottom]++
		if i > 0 {
			assert.Equal(t, p.tiles[i-1].top+plan.Room.Joint, s.bottom, "course %d", s.course)
			assert.Equal(t, p.tiles[i-1].course+1, s.course)
		}
	}
	assert.Equal(t, 2, courses[plan.Room.Bands[0].Tile.Height], "two courses of mosaic")
	names := map[string]length.Length{}
	for _, m := range p.marks {
		names[m.name] = m.at
	}
	assert.Equal(t, plan.Setout.Bands[0].Bottom, names["mosaic bottom"])
	assert.Equal(t, plan.Setout.Bands[0].Top, names["mosaic top"])
}

// The sheets of rooms with other tile are laid out like all others, and say whose tile
// is cut and where the band is struck.
func TestSheetsWithOtherTile(t *testing.T) {
	for _, key := range []string{"banded", "two"} {
		plan := banded(t, key)
		every := Options{Kinds: Kinds(), Paper: Papers()[0]}
		laidOut(t, key, plan, every)
		b := newBook(plan, every)
		found := map[Kind]bool{}
		for _, l := range b.leaves {
			if countOf(l, plan.Room.Bands[0].Name) > 0 {
				found[l.kind] = true
			}
		}
		assert.True(t, found[SetOut], "%s: the set-out strikes the band", key)
	}
}
