package remedy_test

import (
	"context"
	"slices"
	"testing"

	"coursewright/layout/merit"
	"coursewright/layout/remedy"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// wall is a job of one wall over a level floor, set from a corner or stop at its
// left with full tiles, in inches.
func wall(width, tile, joint string, left, right survey.End, head string) survey.Job {
	return survey.Job{Format: survey.Format, Title: "remedies", Units: "in",
		Tile: survey.Tile{Width: tile, Height: tile, Thickness: "1/4"}, Joint: survey.Measure{Plain: joint}, Bond: survey.Bond{Kind: "stack"},
		Walls: []survey.Wall{{Name: "w", Width: width, Left: left, Right: right,
			Base: []survey.Segment{{Meets: "floor", Gap: "0", Readings: []survey.Drop{{At: "0", Drop: "0"}}}},
			Head: survey.Head{Stops: &survey.Mark{At: head}}}}}
}

func found(t *testing.T, job survey.Job) (remedy.Solved, []remedy.Remedy) {
	t.Helper()
	now, err := remedy.Solve(context.Background(), job)
	require.NoError(t, err)
	help, err := remedy.Find(context.Background(), job, now)
	require.NoError(t, err)
	return now, help.Remedies
}

func using(all []remedy.Remedy, path, text string) *remedy.Remedy {
	i := slices.IndexFunc(all, func(r remedy.Remedy) bool { return slices.Contains(r.Use, remedy.Use{Path: path, Text: text}) })
	if i < 0 {
		return nil
	}
	return &all[i]
}

// Six joints that are 1/32 in wider are 3/16 in: with what the sealed joint takes
// up, a strip of 3/16 in and its joint of 3/32 in are gone (CTEF's advice on small
// cuts, as told by Floor Covering Installer).
func TestAWiderJointDissolvesASliver(t *testing.T) {
	corner := survey.End{Meets: "corner", Gap: "1/8"}
	job := wall("29 3/32", "4", "3/32", corner, corner, "8 3/32") // 1/8 + 7 × (4 + 3/32) + 3/16 + 1/8
	job.Pins.Walls = map[string]survey.WallPin{"w": {Edge: "1/8"}}
	now, all := found(t, job)
	require.Positive(t, now.Setout.Merit.Unworkable, "a strip of 3/16 in")
	r := using(all, "joint", "1/8")
	require.NotNil(t, r, all)
	assert.Equal(t, merit.Unworkable, r.Term)
	assert.Equal(t, "no unworkable pieces", r.After)
	assert.Equal(t, "2 unworkable pieces", r.Before)
}

// Of a tile of 13 in 3 3/8 in are left at the top: a stop raised by 3 1/4 in, a
// quarter of the tile, leaves half a tile and a joint (a worked example of a how-to
// page).
func TestAStopRaisedByAQuarterLeavesHalfATile(t *testing.T) {
	stop := func(at string) survey.End { return survey.End{Stops: &survey.Mark{At: at}} }
	job := wall("26 1/8", "13", "1/8", stop("0"), stop("26 1/8"), "29 5/8") // 2 × 13 1/8 + 3 3/8
	job.Limits.Sliver = "4"
	job.Pins.Course.Line = "0"
	now, all := found(t, job)
	require.Equal(t, 2, now.Setout.Merit.Slivers)
	r := using(all, "walls[0].head.stops.at", "32 7/8")
	require.NotNil(t, r, all)
	assert.Equal(t, "Let the head of w stop 3 1/4\" further.", r.Text)
	assert.Equal(t, "no slivers", r.After)
	assert.Equal(t, "6 5/8\"", r.Least.Size.Fine(now.Room.Units))
}

// Casing hides cuts beside a window, but not where tile goes on into it: there it has none. Found by a walk in which a
// window with tiled returns was to be cased.
func TestCasingCoversCutsBesideAWindowThatHasCasing(t *testing.T) {
	stop := func(at string) survey.End { return survey.End{Stops: &survey.Mark{At: at}} }
	job := wall("39 1/4", "13", "1/8", stop("0"), stop("39 1/4"), "26 1/8")
	job.Pins.Course.Line, job.Pins.Walls = "0", map[string]survey.WallPin{"w": {Edge: "0"}}
	job.Walls[0].Openings = []survey.Opening{{Kind: "window", Name: "window", Left: &survey.Mark{At: "15 1/8"}, Width: &survey.Mark{At: "11"},
		Bottom: &survey.Mark{At: "5"}, Height: &survey.Measure{Mark: &survey.Mark{At: "15"}}}}
	cased := func() bool {
		_, all := found(t, job)
		return using(all, "walls[0].openings[0].sight", "low") != nil
	}
	require.True(t, cased())
	job.Walls[0].Openings[0].Inside = &survey.Inside{Depth: "4"}
	assert.False(t, cased())
}

func TestNothingIsSaidWhereNothingIsPoor(t *testing.T) {
	stop := func(at string) survey.End { return survey.End{Stops: &survey.Mark{At: at}} }
	_, all := found(t, wall("26 1/8", "13", "1/8", stop("0"), stop("26 1/8"), "26 1/8"))
	assert.Empty(t, all)
	assert.NotNil(t, all)
}

func TestASearchThatIsGivenUpEnds(t *testing.T) {
	corner := survey.End{Meets: "corner", Gap: "1/8"}
	job := wall("29 3/32", "4", "3/32", corner, corner, "8 3/32")
	job.Pins.Walls = map[string]survey.WallPin{"w": {Edge: "1/8"}}
	now, err := remedy.Solve(context.Background(), job)
	require.NoError(t, err)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = remedy.Find(ctx, job, now)
	assert.ErrorIs(t, err, context.Canceled)
}

func TestFieldsAreWrittenByTheirPaths(t *testing.T) {
	stop := survey.End{Stops: &survey.Mark{At: "0"}}
	job := wall("30", "4", "1/8", stop, survey.End{Meets: "corner"}, "8")
	job.Joint = survey.Measure{Mark: &survey.Mark{From: "1/16", To: "1/8"}}
	got, err := remedy.Apply(job, []remedy.Use{{Path: "joint", Text: "3/16"}, {Path: "prefer[0]", Text: "shared"}, {Path: "walls[0].right.gap", Text: "1/4"},
		{Path: `pins.walls["tub. side"].edge`, Text: "2"}, {Path: "bond.hand", Text: "left"}})
	require.NoError(t, err)
	assert.Equal(t, survey.Measure{Plain: "3/16"}, got.Joint)
	assert.Equal(t, []string{"shared"}, got.Prefer)
	assert.Equal(t, "1/4", got.Walls[0].Right.Gap)
	assert.Equal(t, "2", got.Pins.Walls["tub. side"].Edge)
	assert.Equal(t, "left", got.Bond.Hand)
	assert.Empty(t, job.Walls[0].Right.Gap, "the job itself stays")
	for _, path := range []string{"prefer[1]", "walls[x].name", `pins.walls["a`, "walls[0].colour"} {
		_, err := remedy.Apply(job, []remedy.Use{{Path: path, Text: "x"}})
		assert.Error(t, err, path)
	}
}
