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

// A band of several tiles is bought tile by tile too, as many as stand whole and the rest cut; what is printed of
// the plan says of each piece which of them it is. The spare of bands and of the backs of niches is that of their own
// pattern: 15 % of those cut at an angle, 10 of others (NTCA trainers: 5 to 15 % by shape and pattern, TileLetter).
func TestBandsAreBoughtTileByTileWithTheSpareOfTheirPattern(t *testing.T) {
	for name, of := range patternBands() {
		job, band := withBands(t, of), of.Bands[0]
		p, err := layout.Now(job)
		require.NoError(t, err, name)
		whole, all := map[int]int{}, map[int]int{}
		for _, w := range p.Walls {
			for _, q := range w.Pieces {
				if q.Laid == 1 {
					if all[q.Of]++; q.Whole {
						whole[q.Of]++
					}
				}
			}
		}
		s := cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.For(p.Room))
		var lines []takeoff.Line
		for _, l := range takeoff.Of(takeoff.Input{Room: p.Room, Walls: p.Walls, Cuts: s.Offcuts, Others: s.Others}, takeoff.For(p.Room)).Lines {
			if strings.Contains(l.Item, "tile for the "+band.Name) {
				lines = append(lines, l)
			}
		}
		of, named := map[string]int{}, 0
		for _, w := range p.Walls {
			for _, q := range w.Pieces {
				of[q.ID] = q.Of
			}
		}
		for _, g := range s.Groups {
			for _, id := range g.Pieces {
				require.Equal(t, g.Of, of[id], "%s: %s of %s", name, id, g.ID)
			}
			if g.Of > 0 {
				named++
				require.Contains(t, g.Tile, fmt.Sprintf("tile for the %s, tile %d, ", band.Name, g.Of+1), name)
			}
		}
		require.True(t, named > 0 || len(band.Bond.Tiles) == 0 || name == "dots in hexagon" || name == "dots in running", "%s: lines say which tile is cut", name)
		kinds := max(1, len(band.Bond.Tiles)+1)
		require.Len(t, lines, kinds, name)
		for of, l := range lines {
			require.Contains(t, l.Because, fmt.Sprintf("%d whole, ", whole[of]), "%s, tile %d", name, of+1)
			require.GreaterOrEqual(t, 2*l.Net, whole[of]+all[of], "%s, tile %d: an off-cut serves once", name, of+1)
			require.LessOrEqual(t, l.Net, all[of], "%s, tile %d", name, of+1)
			percent := map[string]string{"": "(5 %)", "herringbone": "(10 %; NTCA", "basket weave": "(10 %; NTCA", "mixed heights": "(10 %; NTCA", "modular": "(10 %; NTCA"}[band.Bond.Kind]
			if percent == "" || band.Bond.Turn != "" {
				percent = "(15 %; NTCA"
			}
			require.Contains(t, l.Because, percent, name)
		}
	}
}

// The back of a niche in a pattern of a single tile gets the spare of that pattern, and not that of the field.
func TestANicheBackGetsTheSpareOfItsPattern(t *testing.T) {
	for kind, want := range map[string]string{"hexagon": "(15 %; NTCA", "herringbone": "(10 %; NTCA", "stack": "(5 %)"} {
		job := demo(t)
		o := &job.Walls[1].Openings[0]
		o.Inside = &survey.Inside{Depth: "3 1/2"}
		o.Inside.Back = survey.InsideFace{Tile: &survey.Tile{Name: "accent", Width: "2", Height: "2"}, Joint: "1/8", Bond: &survey.Bond{Kind: kind}}
		if kind == "herringbone" {
			o.Inside.Back.Tile.Height = "1"
		}
		p, err := layout.Now(job)
		require.NoError(t, err)
		found := 0
		for _, l := range takeoff.Of(takeoff.Input{Room: p.Room, Walls: p.Walls}, takeoff.For(p.Room)).Lines {
			if l.Item == "accent" {
				found++
				require.Contains(t, l.Because, want, kind)
			}
		}
		require.Equal(t, 1, found, kind)
	}
}
