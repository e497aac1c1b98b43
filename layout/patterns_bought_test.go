package layout_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"

	"github.com/stretchr/testify/require"
)

// The back of a niche that is laid of several tiles is bought tile by tile: whole ones as many as stand whole
// there, whatever the field is laid in.
func TestANicheBackOfSeveralTilesIsBoughtTileByTile(t *testing.T) {
	file, err := os.ReadFile("../testdata/jobs/sheets.json")
	require.NoError(t, err)
	dots := survey.Bond{Kind: "basket weave", Tiles: []survey.Tile{{Width: "7/8", Height: "7/8"}}}
	for _, c := range []struct {
		name          string
		tile          survey.Tile
		bond          survey.Bond
		fieldsTile    bool
		fieldsPattern bool
	}{
		{"basket weave with dots", survey.Tile{Width: "3", Height: "1"}, dots, false, false},
		{"dots in the field's own tile", survey.Tile{Width: "4", Height: "2"}, dots, true, false},
		{"the field's pattern", survey.Tile{Width: "4", Height: "2"}, dots, true, true},
		{"pinwheel", survey.Tile{Width: "2", Height: "2"}, survey.Bond{Kind: "pinwheel", Tiles: []survey.Tile{{Width: "7/8"}}}, false, false},
		{"mixed heights", survey.Tile{Width: "3", Height: "1 1/2"}, survey.Bond{Kind: "mixed heights", Tiles: []survey.Tile{{Height: "7/8"}}}, false, false},
		{"modular", survey.Tile{Width: "7/8", Height: "7/8"}, survey.Bond{Kind: "modular", Tiles: []survey.Tile{{Width: "1 7/8", Height: "7/8"}, {Width: "1 7/8"}, {Width: "2 7/8", Height: "1 7/8"}}}, false, false},
	} {
		job, err := survey.Read(file)
		require.NoError(t, err)
		job.Walls = job.Walls[:1]
		job.Tile.Sheet, job.Tile.Width, job.Tile.Height = nil, "5 7/8", "5 7/8"
		c.tile.Name, c.tile.Thickness = "accent", "1/4"
		if c.fieldsTile {
			c.tile.Name, c.tile.Vary, c.tile.Colour, c.tile.Box = job.Tile.Name, job.Tile.Vary, job.Tile.Colour, job.Tile.Box
			job.Tile = c.tile
		}
		if c.fieldsPattern {
			job.Bond = c.bond
		}
		back := &job.Walls[0].Openings[0].Inside.Back
		back.Tile, back.Joint, back.Bond = &c.tile, "1/8", &c.bond
		plan, err := layout.Now(job)
		require.NoError(t, err, c.name)
		s := cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, cuts.For(plan.Room))
		bought := takeoff.Of(takeoff.Input{Room: plan.Room, Walls: plan.Walls, Cuts: s.Offcuts, Others: s.Others}, takeoff.For(plan.Room))
		want := map[string]int{}
		count := func(size string, whole bool) {
			if want[size] += 0; whole {
				want[size]++
			}
		}
		units := plan.Room.Units
		for _, f := range plan.Walls[0].Insides[0].Faces {
			for _, p := range f.Pieces {
				tile := f.Tile
				if p.Of > 0 {
					tile = f.Bond.Others[p.Of-1]
				}
				if !f.Slab && (!c.fieldsPattern || tile != plan.Room.Tile) {
					count(fmt.Sprintf("%s × %s", tile.Width.Fine(units), tile.Height.Fine(units)), p.Whole)
				}
			}
		}
		require.NotEmpty(t, want)
		if c.fieldsPattern { // it is bought with the field, one line to a tile
			n := 0
			for _, l := range bought.Lines {
				if strings.Contains(l.Because, " whole, ") {
					n++
				}
			}
			require.Equal(t, 2, n, c.name)
			continue
		}
		for size, whole := range want {
			found := false
			for _, l := range bought.Lines {
				found = found || strings.Contains(l.Because, fmt.Sprintf("%s: %d whole", size, whole))
			}
			require.True(t, found, "%s: %d whole of %s in %+v", c.name, whole, size, bought.Lines)
		}
	}
}
