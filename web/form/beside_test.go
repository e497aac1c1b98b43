package form

import (
	"net/url"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whatever is added to a wall first, a strip and a window or a niche that are added find room beside
// each other. Found by pressing the buttons of the survey in any order.
func TestStripsAndOpeningsThatAreAddedKeepOffEachOther(t *testing.T) {
	for _, key := range []string{"three", "tub", "one", "corner"} {
		for _, kind := range []string{"niche", "window", "doorway"} {
			for _, order := range [][]string{{"strips", "openings " + kind}, {"openings " + kind, "strips"}} {
				job := room(t, key)
				for _, what := range order {
					require.NoError(t, Apply(&job, "add walls[0]."+what))
					Tidy(&job)
				}
				sound(t, job)
				assert.Len(t, job.Walls[0].Openings, 1)
				assert.Len(t, job.Walls[0].Strips, 1)
			}
		}
	}
}

// The seat of a bench with a tile of its own shows boxes for its sheets: left empty they say nothing.
// They once refused every edit that came after.
func TestEmptyBoxesOfASheetOnASeatSayNothing(t *testing.T) {
	job := room(t, "bench")
	seat := -1
	for i, w := range job.Walls {
		if w.Top != nil {
			seat = i
		}
	}
	at := At("walls", seat) + ".top.face.tile"
	require.NoError(t, Apply(&job, "add "+at))
	require.NoError(t, Decode(&job, url.Values{at + ".sheet.across": {""}, at + ".sheet.up": {""}}))
	Tidy(&job)
	sound(t, job)
	assert.Nil(t, job.Walls[seat].Top.Face.Tile.Sheet)
}

// A band goes off a wall with what it stands upon, and onto one too.
func TestBandsUponEachOtherGoRoundTogether(t *testing.T) {
	job := room(t, "three")
	require.NoError(t, Apply(&job, "add bands liner"))
	require.NoError(t, Apply(&job, "add bands mosaic"))
	job.Bands[1].Upon, job.Bands[1].Bottom, job.Bands[1].Near = job.Bands[0].Name, survey.Mark{}, ""
	sound(t, job)
	require.NoError(t, Apply(&job, "round bands[0] left"))
	assert.Equal(t, []string{"back", "right"}, job.Bands[0].Walls)
	assert.Equal(t, []string{"back", "right"}, job.Bands[1].Walls)
	sound(t, job)
	require.NoError(t, Apply(&job, "round bands[1] left"))
	assert.Empty(t, job.Bands[0].Walls)
	assert.Empty(t, job.Bands[1].Walls)
	sound(t, job)
}

// A wall that is added stands before the fronts of benches and curbs, which stand between two others; what
// is said of their fields goes with them. A corner bench was refused once its front met a corner.
func TestAWallIsAddedBeforeBenches(t *testing.T) {
	for _, add := range []string{"bench", "corner bench", "curb"} {
		for _, what := range []string{"add walls", "add walls round"} {
			job := room(t, "three")
			require.NoError(t, Apply(&job, "add walls "+add))
			require.Contains(t, job.Guess, "walls[3].top.depth")
			require.NoError(t, Apply(&job, what))
			Tidy(&job)
			sound(t, job)
			if what == "add walls" || add == "corner bench" {
				assert.Equal(t, newWall, job.Walls[3].Name)
				assert.NotNil(t, job.Walls[4].Top)
				assert.Contains(t, job.Guess, "walls[4].top.depth")
				assert.Equal(t, "wall", job.Walls[4].Right.Meets)
			}
		}
	}
}
