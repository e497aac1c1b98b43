package layout_test

import (
	"os"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// inPattern is a tile and its pattern, in which the rooms of tests and benchmarks are laid.
type inPattern struct {
	name string
	tile survey.Tile
	bond survey.Bond
}

// roomsInPatterns lay an alcove in about 600 pieces.
var roomsInPatterns = []inPattern{
	{"herringbone", survey.Tile{Width: "7 1/2", Height: "2 3/8"}, survey.Bond{Kind: "herringbone"}},
	{"herringbone at 45", survey.Tile{Width: "7 1/2", Height: "2 3/8"}, survey.Bond{Kind: "herringbone", Turn: "45"}},
	{"double herringbone", survey.Tile{Width: "7 1/2", Height: "2 3/8"}, survey.Bond{Kind: "double herringbone"}},
	{"hexagon", survey.Tile{Width: "4 1/4", Height: "4 1/4"}, survey.Bond{Kind: "hexagon"}},
	{"picket", survey.Tile{Width: "3", Height: "7 1/2"}, survey.Bond{Kind: "picket"}},
	{"chevron", survey.Tile{Width: "7 1/2", Height: "2 3/8"}, survey.Bond{Kind: "chevron"}},
	{"diagonal", survey.Tile{Width: "4", Height: "4"}, survey.Bond{Kind: "diagonal"}},
	{"basket weave", survey.Tile{Width: "6 1/8", Height: "3"}, survey.Bond{Kind: "basket weave"}},
	{"pinwheel", survey.Tile{Width: "5 1/4", Height: "5 1/4"}, survey.Bond{Kind: "pinwheel", Tiles: []survey.Tile{{Width: "2 1/2"}}}},
	{"modular", survey.Tile{Width: "2 1/2", Height: "2 1/2"}, survey.Bond{Kind: "modular", Tiles: []survey.Tile{{Width: "5 1/8", Height: "2 1/2"}, {Width: "5 1/8"}, {Width: "7 3/4", Height: "5 1/8"}}}},
	{"mixed heights", survey.Tile{Width: "7", Height: "3"}, survey.Bond{Kind: "mixed heights", Tiles: []survey.Tile{{Height: "1 1/2"}}}},
}

// lay is a job that ships, laid in the pattern.
func (p inPattern) lay(t require.TestingT, name string) survey.Job {
	file, err := os.ReadFile("../testdata/jobs/" + name + ".json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	job.Tile, job.Bond = p.tile, p.bond
	job.Tile.Thickness, job.Tile.Vary = "5/16", "1/32"
	return job
}

// BenchmarkPattern is two rooms of three walls laid in every pattern, in about 600
// pieces: one whose ends, head and niche are free, and one where all is measured.
func BenchmarkPattern(b *testing.B) {
	for _, p := range roomsInPatterns {
		for _, room := range []string{"alcove", "herringbone"} {
			b.Run(p.name+"/"+room, func(b *testing.B) { benchSolve(b, p.lay(b, room)) })
		}
	}
	for _, room := range []string{"herringbone", "hexagon"} {
		file, err := os.ReadFile("../testdata/jobs/" + room + ".json")
		require.NoError(b, err)
		job, err := survey.Read(file)
		require.NoError(b, err)
		b.Run("job/"+room, func(b *testing.B) { benchSolve(b, job) })
	}
}

// BenchmarkNicheBack is a wall whose niche has a back of about 500 hexagons, beside the same
// wall without it: the difference is what the back costs.
func BenchmarkNicheBack(b *testing.B) {
	file, err := os.ReadFile("../testdata/jobs/sheets.json")
	require.NoError(b, err)
	for _, name := range []string{"hexagons", "none"} {
		job, err := survey.Read(file)
		require.NoError(b, err)
		job.Walls = job.Walls[:1]
		job.Tile.Sheet = nil
		job.Tile.Width, job.Tile.Height = "5 7/8", "5 7/8"
		niche := &job.Walls[0].Openings[0]
		niche.Inside.Back.Tile.Width, niche.Inside.Back.Tile.Height, niche.Inside.Back.Tile.Sheet = "9/16", "9/16", nil
		if name == "none" {
			niche.Inside = nil
		}
		b.Run(name, func(b *testing.B) { benchSolve(b, job) })
	}
}
