package form

import (
	"net/url"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A bond that is picked gets the tiles it needs, of sizes that close, and loses what it
// has no use for.
func TestAPickedPatternGetsTheTilesThatItNeeds(t *testing.T) {
	pick := func(kind string, with url.Values) survey.Job {
		job := survey.Job{Format: survey.Format, Units: "in", Tile: survey.Tile{Width: "4", Height: "4"}, Joint: survey.Measure{Plain: "1/8"},
			Bond: survey.Bond{Kind: "running", Offset: "1/3", Hand: "left"}}
		posted := url.Values{"bond.kind": {kind}}
		for k, v := range with {
			posted[k] = v
		}
		require.NoError(t, Decode(&job, posted))
		return job
	}
	four := pick("modular", nil)
	require.Len(t, four.Bond.Tiles, 3)
	assert.Equal(t, survey.Tile{Width: "12 1/4", Height: "8 1/8"}, four.Bond.Tiles[2])
	assert.Empty(t, four.Bond.Offset+four.Bond.Hand, "what only courses have is gone")
	assert.Equal(t, "1 15/16", pick("pinwheel", nil).Bond.Tiles[0].Width)
	assert.Equal(t, "1 15/16", pick("mixed heights", nil).Bond.Tiles[0].Height)
	assert.Equal(t, "1/3", pick("mixed heights", nil).Bond.Offset, "its courses shift too")
	assert.Empty(t, pick("diagonal", nil).Bond.Offset, "the shift was that of the running bond")
	assert.Equal(t, "1/2", pick("diagonal", url.Values{"bond.offset": {"1/2"}}).Bond.Offset, "one that is asked for stays")
	assert.Nil(t, pick("hexagon", nil).Bond.Tiles)
	assert.Nil(t, pick("basket weave", url.Values{"bond.tiles[0].width": {""}}).Bond.Tiles, "no dot was typed")
	assert.Len(t, pick("basket weave", url.Values{"bond.tiles[0].width": {"3/8"}}).Bond.Tiles, 1)
	assert.Empty(t, pick("hexagon", url.Values{"bond.turn": {"45"}, "bond.angle": {"30"}}).Bond.Turn)
	assert.Equal(t, "30", pick("chevron", url.Values{"bond.angle": {"30"}}).Bond.Angle)
}

// What is picked is laid: each with the sizes that a person would then have.
func TestAModularThatIsPickedCloses(t *testing.T) {
	job := survey.Job{Format: survey.Format, Units: "mm", Tile: survey.Tile{Width: "98", Height: "98"}, Joint: survey.Measure{Plain: "2"},
		Walls: []survey.Wall{{Name: "a", Width: "900", Left: survey.End{Stops: &survey.Mark{At: "0"}}, Right: survey.End{Stops: &survey.Mark{At: "900"}},
			Base: []survey.Segment{{Meets: "tub", Readings: []survey.Drop{{At: "0", Drop: "400"}, {At: "900", Drop: "400"}}}}, Head: survey.Head{Stops: &survey.Mark{At: "500"}}}}}
	require.NoError(t, Decode(&job, url.Values{"bond.kind": {"modular"}}))
	_, faults := job.Resolve()
	assert.Empty(t, faults)
}

// A phase picked on the map of a pattern pins the start of its wall and the line of all.
func TestAPhaseIsPlaced(t *testing.T) {
	job := survey.Job{Walls: []survey.Wall{{Name: "a"}, {Name: "b"}}}
	require.NoError(t, Apply(&job, "place 2 phase=24 1/2;-38"))
	require.Equal(t, "-38", job.Pins.Course.Line)
	require.Equal(t, survey.WallPin{Edge: "24 1/2"}, job.Pins.Walls["b"])
	require.Error(t, Apply(&job, "place 2 phase=24"))
}
