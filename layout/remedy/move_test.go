package remedy_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"coursewright/layout/merit"
	"coursewright/layout/remedy"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stopped is a wall of tile of 4 in with joints of 1/8 in from a floor at the level line, whose ends both
// stop: widths and heights of n courses are n × 4 1/8 less a joint.
func stopped(width, head string) survey.Job {
	stop := func(at string) survey.End { return survey.End{Stops: &survey.Mark{At: at}} }
	job := wall(width, "4", "1/8", stop("0"), stop(width), head)
	job.Pins.Walls = map[string]survey.WallPin{"w": {Edge: "0"}}
	return job
}

// A liner of 1/2 in with its edge at 5 in stands 7/8 in over the top joint of a first course on the floor,
// 4 1/8 in up, so that a strip of 3/4 in is left under that course. 7/8 in is less than a quarter of a course.
func TestABandIsMovedToWholeCourses(t *testing.T) {
	job := stopped("24 5/8", "25 1/4") // six courses, the liner and its joint
	job.Bands = []survey.Band{{Name: "liner", Tile: survey.Tile{Width: "4", Height: "1/2"}, Bottom: survey.Mark{At: "5"}}}
	now, all := found(t, job)
	require.Positive(t, now.Setout.Merit.Slivers)
	r := using(all, "bands[0].bottom.at", "4 1/8")
	require.NotNil(t, r, all)
	assert.Equal(t, remedy.Move, r.Kind)
	assert.Equal(t, `Move the band liner 7/8" down, its lower edge 4 1/8" over the level line.`, r.Text)
	assert.Equal(t, "no slivers", r.After)
	assert.Empty(t, r.Least.Piece, "nothing is cut")

	job.Bands[0].Bottom.At, job.Pins.Course.Line = "5", "7/8"
	_, all = found(t, job)
	r = using(all, "bands[0].bottom.at", "4 1/8")
	require.NotNil(t, r, all)
	assert.Contains(t, r.Use, remedy.Use{Path: "pins.course.line"})
	assert.Contains(t, r.Text, "Let go of the course line, and move the band liner 7/8\" down")
}

// Bands that were measured are moved together: one course line says where both stand.
func TestBandsAreMovedTogether(t *testing.T) {
	job := stopped("24 5/8", "25 7/8")
	liner := survey.Band{Name: "liner", Tile: survey.Tile{Width: "4", Height: "1/2"}, Bottom: survey.Mark{At: "5"}}
	other := liner
	other.Name, other.Bottom.At = "cap", "13 7/8" // two courses, and liner with its joint, further up
	job.Bands = []survey.Band{liner, other}
	_, all := found(t, job)
	r := using(all, "bands[0].bottom.at", "4 1/8")
	require.NotNil(t, r, all)
	assert.Contains(t, r.Use, remedy.Use{Path: "bands[1].bottom.at", Text: "13"})
	assert.Equal(t, `Move the band liner 7/8" down, its lower edge 4 1/8" over the level line, and the band cap 7/8" down, its lower edge 13" over the level line.`, r.Text)
}

// A head 1/2 in over two courses leaves a strip of 3/8 in. It may stop lower as well as higher.
func TestAHeadStopsLower(t *testing.T) {
	job := stopped("24 5/8", "8 5/8")
	job.Pins.Course.Line = "0"
	now, all := found(t, job)
	require.Positive(t, now.Setout.Merit.Unworkable)
	r := using(all, "walls[0].head.stops.at", "8 1/8")
	require.NotNil(t, r, all)
	assert.Equal(t, `Let the head of w stop 1/2" lower, 8 1/8" over the level line.`, r.Text)
	assert.Equal(t, "no unworkable pieces", r.After)
}

// A niche two modules less a joint wide that stands 5/8 in right of the joint at 8 1/8 in leaves 1/2 in of the tile beside it.
func TestANicheThatIsNotFramedIsMoved(t *testing.T) {
	job := stopped("24 5/8", "16 3/8")
	job.Pins.Course.Line = "0"
	at := func(s string) *survey.Mark { return &survey.Mark{At: s} }
	job.Walls[0].Openings = []survey.Opening{{Kind: "niche", Name: "shelf", Left: at("8 3/4"), Width: at("8 3/8"), Bottom: at("4"), Height: &survey.Measure{Mark: at("8 3/8")}}}
	now, all := found(t, job)
	require.Positive(t, now.Setout.Merit.Slivers)
	r := using(all, "walls[0].openings[0].left.at", "8 1/8")
	require.NotNil(t, r, all)
	assert.Equal(t, `If niche shelf is not framed yet, move it 5/8" to the left.`, r.Text)
	assert.Len(t, r.Use, 1, "its height stays")

	for why, spoil := range map[string]func(*survey.Opening){
		"a window is where it is":           func(o *survey.Opening) { o.Kind = "window" },
		"a niche with a tolerance is built": func(o *survey.Opening) { o.Inside = &survey.Inside{Depth: "3 1/2", Tolerance: "1/16"} },
	} {
		spoiled := job
		o := job.Walls[0].Openings[0]
		spoil(&o)
		spoiled.Walls = []survey.Wall{job.Walls[0]}
		spoiled.Walls[0].Openings = []survey.Opening{o}
		now, all = found(t, spoiled)
		require.Positive(t, now.Setout.Merit.Slivers, why)
		for _, r := range all {
			assert.NotEqual(t, remedy.Move, r.Kind, why)
		}
	}
}

// A strip of two columns of 1 in from base to head whose middle stands off its joint lines.
func TestAStripIsMovedToJointLines(t *testing.T) {
	job := stopped("24 5/8", "16 3/8")
	job.Pins.Course.Line = "0"
	strip := survey.Strip{Name: "pebble", Columns: 2, Tile: survey.Tile{Width: "1", Height: "1"}, Middle: survey.Mark{At: "14"}}
	strip.Bottom, strip.Top = &survey.Mark{At: "4 1/8"}, &survey.Mark{At: "12 1/4"}
	job.Walls[0].Strips = []survey.Strip{strip}
	now, all := found(t, job)
	require.True(t, remedy.Troubled(&now.Setout.Merit))
	for _, r := range all {
		if r.Kind == remedy.Move {
			assert.Contains(t, r.Text, "Move strip pebble ")
			assert.LessOrEqual(t, r.Term, merit.Runs)
			return
		}
	}
	assert.Fail(t, "the strip is not moved", all)
}

// A flush dish is moved by the fields in which it was measured, whichever those are.
func TestAFlushDishIsMoved(t *testing.T) {
	job := stopped("24 5/8", "16 3/8")
	job.Pins.Course.Line = "0"
	job.Walls[0].Fixtures = []survey.Fixture{{Kind: "grab bar", Name: "bar", At: "12", Height: survey.Measure{Plain: "10"}, Width: "12"},
		{Kind: "soap dish", Name: "soap", Flush: true, At: "6 3/4", Height: survey.Measure{Plain: "6 1/8"}, Width: "4", High: "4"}}
	_, all := found(t, job)
	r := using(all, "walls[0].fixtures[1].at", "6 1/8")
	require.NotNil(t, r, all)
	assert.Equal(t, `Move soap dish soap 5/8" to the left.`, r.Text)
	assert.Empty(t, r.Least.Piece)
}

// A seat is moved with all that was read of it under the walls behind, or not at all.
func TestASeatIsMovedWithWhatStandsOnIt(t *testing.T) {
	data, err := os.ReadFile("../../testdata/jobs/bench.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	job.Pins.Course.Line = "-35 7/8"
	job.Walls[3].Head.Stops.At = "-17 1/4" // from 18 1/8, and so 7/8 in off the drops
	for _, at := range [][3]int{{0, 1, 0}, {0, 1, 1}, {1, 0, 0}, {1, 0, 1}, {2, 0, 0}, {2, 0, 1}} {
		r := &job.Walls[at[0]].Base[at[1]].Readings[at[2]]
		r.Drop = map[string]string{"18 1/8": "17 1/4", "17 3/4": "16 7/8"}[r.Drop]
	}
	_, all := found(t, job)
	r := using(all, "walls[3].head.stops.at", "-18 1/4")
	require.NotNil(t, r, all)
	assert.Equal(t, `If bench is not built yet, make it 1" lower.`, r.Text)
	for _, use := range []remedy.Use{{Path: "walls[0].base[1].readings[0].drop", Text: "18 1/4"}, {Path: "walls[1].base[0].readings[1].drop", Text: "17 7/8"},
		{Path: "walls[2].base[0].readings[1].drop", Text: "18 1/4"}} {
		assert.Contains(t, r.Use, use)
	}
	for _, r := range all {
		if moves := slices.ContainsFunc(r.Use, func(u remedy.Use) bool { return strings.HasPrefix(u.Path, "walls[3].head") }); moves {
			assert.Len(t, r.Use, 7, r.Text)
		}
	}
}
