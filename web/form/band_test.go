package form

import (
	"net/url"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/shapes"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEveryBandThatIsAddedSolves(t *testing.T) {
	for _, what := range []string{Liner, Mosaic, Above} {
		for _, units := range []string{"in", "mm"} {
			job := demo(t)
			require.NoError(t, Decode(&job, url.Values{"units": {units}}))
			require.NoError(t, Apply(&job, "add bands "+what))
			room, faults := job.Resolve()
			require.Empty(t, faults, "%s in %s", what, units)
			assert.Len(t, room.Bands, 1)
			assert.Len(t, room.Bands[0].Walls, 3)
		}
	}
	job := demo(t)
	assert.Error(t, Apply(&job, "add bands ribbon"))
}

func TestABandLeavesOutWhatEndsUnderIt(t *testing.T) {
	for _, what := range []string{Liner, Mosaic, Above} {
		job := demo(t)
		require.NoError(t, Apply(&job, "add walls bench"))
		require.NoError(t, Apply(&job, "add walls curb"))
		require.NoError(t, Apply(&job, "add bands "+what))
		assert.Equal(t, []string{"left", "back", "right"}, job.Bands[0].Walls)
		_, faults := job.Resolve()
		assert.Empty(t, faults, what)
	}
}

func TestABandRunsRoundTheWallsChosen(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add bands mosaic"))
	require.NoError(t, Apply(&job, "round bands[0] left"))
	assert.Equal(t, []string{"back", "right"}, job.Bands[0].Walls)
	require.NoError(t, Decode(&job, url.Values{"walls[1].name": {"long"}}))
	assert.Equal(t, []string{"long", "right"}, job.Bands[0].Walls, "it follows the name")
	require.NoError(t, Apply(&job, "round bands[0] left"))
	assert.Nil(t, job.Bands[0].Walls, "all walls again")
	require.NoError(t, Apply(&job, "round bands[0] left"))
	require.NoError(t, Apply(&job, "round bands[0] long"))
	assert.Error(t, Apply(&job, "round bands[0] right"), "it runs on one at least")
	assert.Error(t, Apply(&job, "round bands[1] right"))
	require.NoError(t, Apply(&job, "remove walls[2]"))
	assert.Nil(t, job.Bands, "a band whose only wall is gone")
}

func TestBandsHoldWords(t *testing.T) {
	for path, is := range map[string]bool{"bands[0].bottom.from": true, "bands[0].near": true, "bands[0].tile.height": true, "bands[0].joint": true,
		"bands[0].courses": false, "bands[0].toHead": false, "bands[0].name": false, "bands[0].walls[0]": false} {
		assert.Equal(t, is, IsLength(path), path)
	}
}

// A band that stands upon another has no height of its own, runs round its walls and follows
// its name; let go of, it stands at a height again.
func TestABandStandsUponAnother(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add bands liner"))
	require.NoError(t, Apply(&job, "round bands[0] left"))
	require.NoError(t, Apply(&job, "add bands mosaic"))
	require.NoError(t, Decode(&job, url.Values{"bands[1].upon": {"liner"}}))
	assert.Equal(t, survey.Mark{}, job.Bands[1].Bottom)
	assert.Equal(t, []string{"back", "right"}, job.Bands[1].Walls)
	require.NoError(t, Decode(&job, url.Values{"bands[0].name": {"pencil"}}))
	assert.Equal(t, "pencil", job.Bands[1].Upon)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, room.Bands[0].Bottom.Moved(room.Bands[0].High(room.Joint)+room.Joint), room.Bands[1].Bottom)
	require.NoError(t, Decode(&job, url.Values{"bands[1].upon": {""}}))
	assert.NotEqual(t, survey.Mark{}, job.Bands[1].Bottom)
}

// Bands that are added one after the other, in any order, keep off each other: the room
// solves with the first two, and with all three.
func TestBandsThatAreAddedKeepOffEachOther(t *testing.T) {
	kinds := []string{Liner, Mosaic, Above}
	for _, units := range []string{"in", "mm"} {
		for i, first := range kinds {
			for k, second := range kinds {
				if i == k {
					continue
				}
				third := kinds[3-i-k]
				job, err := shapes.New("three", units, "bands")
				require.NoError(t, err)
				for _, what := range []string{first, second, third} {
					require.NoError(t, Apply(&job, "add bands "+what))
					_, faults := job.Resolve()
					require.Empty(t, faults, "%s: %s after %s", units, what, first)
				}
				sound(t, job)
			}
		}
	}
	job := room(t, "three")
	require.NoError(t, Apply(&job, "add bands mosaic"))
	require.NoError(t, Apply(&job, "add bands mosaic"))
	sound(t, job)
}

// Bands that go round all walls leave out a bench or a curb that is added later: its front ends under
// them, and the button would be refused at the band.
func TestBandsLeaveOutALowWallThatIsAdded(t *testing.T) {
	for _, low := range []string{"bench", "corner bench", "curb"} {
		job := room(t, "three")
		require.NoError(t, Apply(&job, "add bands mosaic"))
		require.Empty(t, job.Bands[0].Walls, "round all of them")
		require.NoError(t, Apply(&job, "add walls "+low))
		Tidy(&job)
		sound(t, job)
		assert.Equal(t, []string{"left", "back", "right"}, job.Bands[0].Walls)
	}
}

// A band for which there is no room over the others stands under them.
func TestABandWithoutRoomOverOthersStandsUnderThem(t *testing.T) {
	job := room(t, "one")
	for range 2 {
		require.NoError(t, Apply(&job, "add bands mosaic"))
		sound(t, job)
	}
	over, err := length.Parse(job.Bands[0].Near, length.Imperial)
	require.NoError(t, err)
	under, err := length.Parse(job.Bands[1].Near, length.Imperial)
	require.NoError(t, err)
	assert.Less(t, under, over)
}

// A band that is let round a lower wall keeps under its head, as far as its range lets it; a wall that ends under
// all of it has no room, and is refused with its field.
func TestABandFindsRoomOnALowerWall(t *testing.T) {
	job := demo(t)
	require.NoError(t, Apply(&job, "add bands mosaic"))
	require.NoError(t, Apply(&job, "round bands[0] left"))
	before, _ := job.Resolve()
	band := before.Bands[0]
	low := band.Bottom.From + band.High(before.Joint) + 2*length.Inch
	job.Walls[0].Head = survey.Head{Stops: &survey.Mark{At: low.Plain(length.Imperial, 0)}, Finish: "trim"}
	found, faults := job.Resolve()
	require.Empty(t, faults)
	require.True(t, HasRoom(found, 0, 0))
	require.NoError(t, Apply(&job, "round bands[0] left"))
	sound(t, job)
	after, _ := job.Resolve()
	assert.Len(t, after.Bands[0].Walls, 3)
	assert.Equal(t, band.Bottom.From, after.Bands[0].Bottom.From)
	assert.Less(t, after.Bands[0].Bottom.To, band.Bottom.To)

	require.NoError(t, Apply(&job, "add walls curb"))
	found, faults = job.Resolve()
	require.Empty(t, faults)
	assert.False(t, HasRoom(found, 0, 3), "over a curb")
	require.NoError(t, Apply(&job, "round bands[0] curb"))
	_, faults = job.Resolve()
	require.Len(t, faults, 1)
	assert.Equal(t, "bands[0].bottom", faults[0].Path)
}

// Other tile above a line that has no room over a band just under the head begins upon that band.
func TestTileAboveBeginsUponABandUnderTheHead(t *testing.T) {
	job := room(t, "one")
	for _, do := range []string{"add bands liner", "add walls"} {
		require.NoError(t, Apply(&job, do))
	}
	job.Bands[0].Bottom = survey.Mark{From: "24", To: "31"}
	job.Bands[0].Near = ""
	sound(t, job)
	require.NoError(t, Apply(&job, "add bands above"))
	sound(t, job)
	assert.Equal(t, "liner", job.Bands[1].Upon)
}

// In a pattern a band that is added stands over where a free niche may stand, or under it where over it is no room: it was once
// refused for the place that the button itself had given it.
func TestABandInAPatternKeepsOffAFreeNiche(t *testing.T) {
	for _, what := range []string{Liner, Mosaic, Above} {
		for _, low := range [][2]string{{"2", "8"}, {"-14", "-8"}, {"8", "12"}} {
			job := demo(t)
			require.NoError(t, Decode(&job, url.Values{"bond.kind": {"herringbone"}}))
			for i := range job.Walls {
				job.Walls[i].Openings = nil
			}
			free := func(from, to string) *survey.Mark { return &survey.Mark{From: from, To: to} }
			job.Walls[1].Openings = []survey.Opening{{Kind: string(survey.Niche), Name: "shelf", Left: free("20", "30"), Width: free("11", "14"),
				Bottom: free(low[0], low[1]), Height: &survey.Measure{Mark: free("8", "12")}}}
			_, faults := job.Resolve()
			require.Empty(t, faults)
			require.NoError(t, Apply(&job, "add bands "+what))
			Tidy(&job)
			room, faults := job.Resolve()
			require.Empty(t, faults, "%s, a niche from %s", what, low)
			assert.Len(t, room.Bands, 1)
			if what == Above || low[0] == "8" {
				continue
			}
			require.NoError(t, Decode(&job, url.Values{"bands[0].bond.kind": {"chevron"}}))
			Tidy(&job)
			_, faults = job.Resolve()
			require.Empty(t, faults, "%s in a pattern, which is higher, a niche from %s", what, low)
		}
	}
}
