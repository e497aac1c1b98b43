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

// A pattern takes none of its tiles from the one before, though that asked for one more than was typed: mixed heights
// once left a height to a pinwheel, which was refused for want of a width.
func TestAPatternPickedAfterAnotherHasTilesOfItsOwn(t *testing.T) {
	job := survey.Job{Format: survey.Format, Units: "in", Tile: survey.Tile{Width: "4", Height: "4"}, Joint: survey.Measure{Plain: "1/8"}}
	require.NoError(t, Decode(&job, url.Values{"bond.kind": {"mixed heights"}}))
	require.Equal(t, []survey.Tile{{Height: "1 15/16"}}, job.Bond.Tiles)
	require.NoError(t, Decode(&job, url.Values{"bond.kind": {"pinwheel"}, "bond.tiles[0].height": {"1 15/16"}, "bond.tiles[1].height": {""}}))
	assert.Equal(t, []survey.Tile{{Width: "1 15/16"}}, job.Bond.Tiles)
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

// Bands and backs of niches get the further tiles of a pattern from their own tile and joint; those of another
// pattern go, and those that nobody typed follow the tile when its size is typed.
func TestABandsPatternGetsTilesThatCloseWithItsOwn(t *testing.T) {
	job := survey.Job{Format: survey.Format, Units: "in", Tile: survey.Tile{Width: "8", Height: "3"}, Joint: survey.Measure{Plain: "1/4"},
		Bands: []survey.Band{{Name: "b", Tile: survey.Tile{Width: "2", Height: "2"}, Joint: "1/8", Height: "6"}},
		Walls: []survey.Wall{{Name: "a", Width: "60", Openings: []survey.Opening{{Kind: "niche", Name: "n", Inside: &survey.Inside{Depth: "3", Back: survey.InsideFace{
			Tile: &survey.Tile{Width: "1", Height: "1"}, Bond: &survey.Bond{Kind: "hexagon", Along: "plumb"}}}}}}}}
	type posts = url.Values
	after := func(posted posts) []survey.Tile {
		require.NoError(t, Decode(&job, posted))
		return job.Bands[0].Bond.Tiles
	}
	tile := func(wide, high string) survey.Tile { return survey.Tile{Width: wide, Height: high} }
	require.Equal(t, []survey.Tile{tile("15/16", "")}, after(posts{"bands[0].bond.kind": {"pinwheel"}}))
	modular := after(posts{"bands[0].bond.kind": {"modular"}, "bands[0].bond.tiles[0].width": {"15/16"}})
	require.Equal(t, []survey.Tile{tile("4 1/8", "2"), tile("4 1/8", "4 1/8"), tile("6 1/4", "4 1/8")}, modular)
	require.Equal(t, tile("2 1/8", "1"), after(posts{"bands[0].tile.width": {"1"}, "bands[0].tile.height": {"1"}})[0])
	require.Equal(t, tile("3 1/4", "2 1/8"), job.Bands[0].Bond.Tiles[2])
	typed := after(posts{"bands[0].bond.tiles[0].width": {"2 3/16"}})
	require.Equal(t, "2 3/16", typed[0].Width)
	require.Equal(t, "2 3/16", after(posts{"bands[0].tile.width": {"3"}, "bands[0].tile.height": {"3"}})[0].Width, "what was typed stays")
	liner := after(posts{"bands[0].tile.height": {"1/2"}, "bands[0].tile.width": {"8"}, "bands[0].bond.kind": {"mixed heights"}})
	require.Equal(t, []survey.Tile{tile("", "1 1/8")}, liner, "half of it would be no tile")
	back := &job.Walls[0].Openings[0].Inside.Back
	require.NoError(t, Decode(&job, posts{"walls[0].openings[0].inside.back.bond.kind": {"mixed heights"}}))
	require.Equal(t, []survey.Tile{tile("", "3/8")}, back.Bond.Tiles, "a joint of the room's")
	require.Empty(t, back.Bond.Along, "which way its rows go was said of another")
	require.NoError(t, Decode(&job, posts{"walls[0].openings[0].inside.back.bond.along": {"plumb"}}))
	require.Equal(t, []survey.Tile{tile("3/8", "")}, back.Bond.Tiles, "heights become widths")
}
