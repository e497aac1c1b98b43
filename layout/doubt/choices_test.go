package doubt_test

import (
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A choice that was copied for a tile of another size keeps the name and the box of the old one until somebody
// writes its own.
func TestATileOfAnotherSizeHasABoxOfItsOwn(t *testing.T) {
	first := survey.Tile{Name: "Chalk 8 × 4", Width: "7 15/16", Height: "3 15/16", Box: &survey.Box{Count: 50, Price: "$32.50"}}
	for _, c := range []struct {
		name  string
		apart func(*survey.Tile)
		path  string
	}{
		{"the size alone was changed", func(t *survey.Tile) {}, "tile.box.price"},
		{"the name too", func(t *survey.Tile) { t.Name = "Slab" }, "tile.box.price"},
		{"a price of its own", func(t *survey.Tile) { t.Box.Price = "$81" }, "tile.box.count"},
		{"a box of its own", func(t *survey.Tile) { t.Box = &survey.Box{Count: 6, Price: "$32.50"} }, "tile.name"},
		{"no box", func(t *survey.Tile) { t.Box = nil }, "tile.name"},
		{"no box, and a name without a size", func(t *survey.Tile) { t.Box, t.Name = nil, "Slab" }, ""},
		{"all of its own", func(t *survey.Tile) { t.Name, t.Box = "Slab 12 × 24", &survey.Box{Count: 6, Price: "$81"} }, ""},
		{"the same tile upright", func(t *survey.Tile) { t.Width, t.Height = first.Height, first.Width }, ""},
	} {
		job := read(t, "../../testdata/jobs/alcove.json")
		job.Tile = first
		box := *first.Box
		tile := survey.Tile{Name: first.Name, Width: "11 3/4", Height: "23 5/8", Box: &box}
		c.apart(&tile)
		job.Choices, job.Chosen = []survey.Choice{{Name: "first"}, {Name: "second", Tile: tile, Joint: job.Joint, Bond: job.Bond}}, "first"
		found := raise(t, job)
		if c.path == "" {
			assert.Empty(t, found, c.name)
			continue
		}
		require.Len(t, found, 1, c.name)
		assert.Equal(t, c.path, found[0].Path, c.name)
		assert.Contains(t, found[0].Text, "“second”", c.name)
		second, err := job.Choose("second")
		require.NoError(t, err)
		require.Len(t, raise(t, second), 1, c.name)
		second.Confirmed = []string{c.path}
		assert.Empty(t, raise(t, second), c.name)
	}
}
