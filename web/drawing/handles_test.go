package drawing_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/drawing"
)

// At 768 px the arrows at the heads had lain over the word "whole", those of the niche over "niche".
// On a phone, in herringbone and chevron, those of the course line lay over its own height; in patterns those of the head
// over what is written over its wall, and a finding's number over those of the niche.
func TestArrowsKeepClearOfTexts(t *testing.T) {
	for _, kind := range []string{"running", "herringbone", "chevron", "double herringbone", "picket", "diagonal", "mixed heights"} {
		job, err := survey.Read(static.Demo)
		require.NoError(t, err)
		switch job.Bond.Kind = kind; kind {
		case "running":
		case "picket":
			job.Bond, job.Tile.Width, job.Tile.Height = survey.Bond{Kind: kind}, "3", "7 1/2"
		case "mixed heights":
			job.Bond = survey.Bond{Kind: kind, Tiles: []survey.Tile{{Height: "1 1/2"}}}
		default:
			job.Bond = survey.Bond{Kind: kind}
		}
		plan, err := layout.Quick(t.Context(), job)
		require.NoError(t, err, kind)
		arrowsKeepClear(t, plan, kind)
	}
}

// arrowsKeepClear holds the arrows of a plan clear of texts.
func arrowsKeepClear(t *testing.T, plan layout.Plan, kind string) {
	t.Helper()
	for _, wide := range []drawing.Micron{336, 734, 1006} {
		o := drawing.Options{Handles: true, Wide: wide * drawing.Pixel}
		for name, s := range map[string]drawing.Scene{"wrap": drawing.Wrap(plan, o), "wall": drawing.Elevation(plan, 1, o)} {
			if name == "wrap" && wide < 600 {
				continue // a phone shows one wall
			}
			for _, h := range s.Handles {
				if h.Measured || h.ID == "start" || h.ID == "end left" || h.ID == "end right" || h.ID == "course" && name == "wrap" {
					continue // they stand at their place
				}
				across, along := drawing.Micron(1500), drawing.Micron(3200)
				if h.Axis == "x" {
					across, along = along, across
				}
				for _, e := range s.Elements {
					l, is := e.(drawing.Label)
					if !is {
						continue
					}
					from, to := l.Room()
					over := h.At.X+across > from.X && h.At.X-across < to.X && h.At.Y+along > from.Y && h.At.Y-along < to.Y
					assert.False(t, over, "%s, %s at %d px: the arrows of %s lie over %q", kind, name, wide, h.ID, l.Text)
				}
			}
		}
	}
}

// No other handle lies over the start. Found in the demo: the reading in the middle of the rim lay on
// it to the pixel, and who dragged the start moved what was measured.
func TestNothingLiesOverTheHandleOfTheStart(t *testing.T) {
	const apart = 24 * drawing.Pixel
	for _, name := range []string{"alcove", "old-house", "corner-shower", "half-wall", "bench", "one-wall", "boxing"} {
		plan := planOf(t, name)
		o := drawing.Options{Handles: true, Wide: 1006 * drawing.Pixel}
		scenes := []drawing.Scene{drawing.Wrap(plan, o)}
		for wall := range plan.Walls {
			scenes = append(scenes, drawing.Elevation(plan, wall, o))
		}
		for _, s := range scenes {
			for _, start := range s.Handles {
				if start.ID != "start" {
					continue
				}
				for _, other := range s.Handles {
					dx, dy := max(other.At.X-start.At.X, start.At.X-other.At.X), max(other.At.Y-start.At.Y, start.At.Y-other.At.Y)
					if other.Wall == start.Wall && other.ID != "start" {
						assert.False(t, dx < apart && dy < apart, "%s, %s: %s lies over the start of wall %d", name, s.Title, other.ID, start.Wall)
					}
				}
			}
		}
	}
}

// A shelf goes to the joint line under it and a dish to that at its lower edge, half its height under its middle; a bar to none.
func TestShelvesAndDishesGoToTheLinesTheyStandOn(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	height := survey.Measure{Mark: &survey.Mark{From: "2", To: "14"}}
	job.Walls[1].Fixtures = []survey.Fixture{
		{Kind: "corner shelf", Name: "ledge", Corner: "right", Width: "8", Height: height},
		{Kind: "soap dish", Name: "dish", At: "12", Width: "6", High: "4", Height: height},
		{Kind: "grab bar", Name: "bar", At: "30", Width: "20", Height: height},
	}
	plan, err := layout.Quick(t.Context(), job)
	require.NoError(t, err)
	snaps := map[string][]drawing.Snap{}
	for _, h := range drawing.Elevation(plan, 1, drawing.Options{Handles: true}).Handles {
		snaps[h.ID] = h.Snaps
	}
	assert.Equal(t, []drawing.Snap{{Axis: "y", Side: drawing.Ends}}, snaps["fixture ledge"])
	assert.Equal(t, []drawing.Snap{{Axis: "y", Side: drawing.Begins, From: -2 * length.Inch}}, snaps["fixture dish"])
	assert.Contains(t, snaps, "fixture bar")
	assert.Empty(t, snaps["fixture bar"])
}

// At 768 px a closed room of four walls had run out of its frame by two walls: it is drawn smaller, down to a
// hand's breadth, before it is wider than the frame.
func TestFourWallsGoIntoTheFrameOfATablet(t *testing.T) {
	for _, file := range []string{"../../testdata/cases/closed-room.json", "../../testdata/doubts/true/closed-wet-room.json"} {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		job, err := survey.Read(data)
		require.NoError(t, err)
		plan, err := layout.Quick(t.Context(), job)
		require.NoError(t, err)
		const frame = 734 * drawing.Pixel
		assert.LessOrEqual(t, drawing.Wrap(plan, drawing.Options{Handles: true, Wide: frame}).Width, drawing.Micron(frame+drawing.Pixel), file)
	}
}

// In a frame so narrow that the walls are drawn a hair high, counting on to a course that has room for its number did not end.
func TestAWrapInANarrowFrameIsDrawn(t *testing.T) {
	data, err := os.ReadFile("../../testdata/doubts/true/closed-wet-room.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	plan, err := layout.Quick(t.Context(), job)
	require.NoError(t, err)
	for _, wide := range []drawing.Micron{734, 600, 150} {
		assert.Positive(t, drawing.Wrap(plan, drawing.Options{Wide: wide * drawing.Pixel, Within: true}).Height, wide)
	}
}
