package survey_test

import (
	"fmt"
	"strconv"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The sketch is 60 in wide between corners with gaps of 1/8 in, tub 40 in below
// the line, head 30 in above.
func TestFreeRangesEndWhereTileEnds(t *testing.T) {
	span := func(from, to string) survey.Span { return survey.Span{From: l(t, from), To: l(t, to)} }
	wide := survey.Opening{Kind: "niche", Name: "n", Left: free("0", "58"), Width: free("11", "70"),
		Bottom: free("-60", "25"), Height: &survey.Measure{Mark: free("12", "90")}}
	for _, c := range []struct {
		name                        string
		spoil                       func(j *survey.Job, w *survey.Wall)
		left, width, bottom, height survey.Span
	}{
		{"between corners, tub and head", func(j *survey.Job, w *survey.Wall) {}, span("1/8", "48 7/8"), span("11", "59 3/4"), survey.Span{From: -l(t, "39 7/8"), To: 18 * in}, span("12", "69 7/8")},
		{"between ends that may move", func(j *survey.Job, w *survey.Wall) {
			w.Left, w.Right = survey.End{Stops: free("4", "6")}, survey.End{Stops: free("50", "52")}
		}, span("4", "41"), span("11", "48"), survey.Span{From: -l(t, "39 7/8"), To: 18 * in}, span("12", "69 7/8")},
		{"under a ceiling that rakes", func(j *survey.Job, w *survey.Wall) {
			w.Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{At: "0", Rise: "30"}, {At: "60", Rise: "20"}}}
		}, span("1/8", "48 7/8"), span("11", "59 3/4"), survey.Span{From: -l(t, "39 7/8")}, survey.Span{}},
		{"a pin out of the tile keeps its two ranges as typed", func(j *survey.Job, w *survey.Wall) {
			j.Pins.Walls = map[string]survey.WallPin{"a": {Marks: map[string]string{"niche n bottom": "-50"}}}
		}, span("1/8", "48 7/8"), span("11", "59 3/4"), survey.Span{From: -60 * in, To: 25 * in}, span("12", "90")},
		{"pins in the tile change no range", func(j *survey.Job, w *survey.Wall) {
			j.Pins.Walls = map[string]survey.WallPin{"a": {Marks: map[string]string{"niche n bottom": "0", "niche n left": "20", "niche n right": "40"}}}
		}, span("1/8", "48 7/8"), span("11", "59 3/4"), survey.Span{From: -l(t, "39 7/8"), To: 18 * in}, span("12", "69 7/8")},
		{"what cannot fit stays as typed", func(j *survey.Job, w *survey.Wall) {
			w.Left, w.Right = survey.End{Stops: mark("0")}, survey.End{Stops: mark("10")}
		}, span("0", "58"), span("11", "70"), survey.Span{From: -l(t, "39 7/8"), To: 18 * in}, span("12", "69 7/8")},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := sketch("in", "a")
			job.Walls[0].Width = "60"
			w := &job.Walls[0]
			opening := wide
			opening.Width = free("11", "60")
			w.Openings = []survey.Opening{opening}
			c.spoil(&job, w)
			room, faults := job.Resolve()
			require.Empty(t, faults, "a range is not refused for reaching too far")
			o := room.Walls[0].Openings[0]
			assert.Equal(t, c.left, o.Left)
			assert.Equal(t, min(c.width.To, 60*in), o.Width.To)
			assert.Equal(t, c.bottom.From, o.Bottom.From)
			if c.height != (survey.Span{}) {
				assert.Equal(t, c.bottom, o.Bottom)
				assert.Equal(t, c.height, o.Height)
			}
		})
	}
}

// A niche with a range that reaches past the tile ends in it; where it is pinned past it, it stays there.
func TestAFreeNicheEndsInTheTile(t *testing.T) {
	job := sketch("in", "a")
	job.Walls[0].Width = "60"
	job.Walls[0].Openings = []survey.Opening{{Kind: "niche", Name: "n", Left: free("40", "48"), Width: mark("11"),
		Bottom: free("10", "18"), Height: &survey.Measure{Mark: free("12", "18")}}}
	niche := func() survey.OpeningFound {
		room, faults := job.Resolve()
		require.Empty(t, faults)
		return room.Walls[0].Openings[0]
	}
	require.Zero(t, niche().Right, "48 and 11 are 59")
	require.Equal(t, survey.Span{From: 22 * in, To: 30 * in}, niche().Top, "18 and 18 are 36, the head is at 30")
	job.Pins.Walls = map[string]survey.WallPin{"a": {Marks: map[string]string{"niche n top": "29"}}}
	require.Equal(t, survey.Span{From: 22 * in, To: 30 * in}, niche().Top)
	job.Pins.Walls["a"].Marks["niche n top"] = "31"
	require.Zero(t, niche().Top)
}

func TestAWindowMayReachPastAHeadThatStops(t *testing.T) {
	job := sketch("in", "a")
	job.Walls[0].Openings = []survey.Opening{{Kind: "window", Name: "w", Left: mark("10"), Width: mark("20"), Bottom: free("20", "25"), Height: &survey.Measure{Mark: mark("30")}}}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, survey.Span{From: 20 * in, To: 25 * in}, room.Walls[0].Openings[0].Bottom)
}

// Law 4: whatever is taken from the ranges of an opening begins in the tile, and
// there is a size with which it ends there. Law 6: the same job, the same room.
func TestFreeRangesHoldOnlyPlacesInTheTile(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		mark := func(name string, low, high, least int) *survey.Mark {
			from := rapid.IntRange(low, high).Draw(r, name)
			return free(fmt.Sprint(from), fmt.Sprint(from+rapid.IntRange(least, 80).Draw(r, "spread")))
		}
		job := sketch("in", "a")
		w := &job.Walls[0]
		w.Base[0].Readings = []survey.Drop{{At: "0", Drop: fmt.Sprint(rapid.IntRange(20, 40).Draw(r, "drop"))}, {At: "60", Drop: fmt.Sprint(rapid.IntRange(20, 40).Draw(r, "drop"))}}
		if rapid.Bool().Draw(r, "stops") {
			w.Right = survey.End{Stops: free(fmt.Sprint(rapid.IntRange(20, 40).Draw(r, "end")), "50")}
		}
		w.Openings = []survey.Opening{{Kind: "niche", Name: "n", Left: mark("left", 0, 20, 1), Width: mark("width", 5, 15, 1),
			Bottom: mark("bottom", -60, 10, 50), Height: &survey.Measure{Mark: mark("height", 5, 15, 1)}}}
		for _, m := range []*survey.Mark{w.Openings[0].Left, w.Openings[0].Width} {
			if to, _ := strconv.Atoi(m.To); to > 60 {
				m.To = "60"
			}
		}
		room, faults := job.Resolve()
		require.Empty(r, faults)
		again, _ := job.Resolve()
		require.Equal(r, room, again)
		found := room.Walls[0]
		o, right := found.Openings[0], 60*in-in/8
		if !found.Right.Meets {
			right = found.Right.Stops.To
		}
		require.GreaterOrEqual(r, o.Left.From, in/8)
		require.LessOrEqual(r, o.Left.To+o.Width.From, right)
		require.LessOrEqual(r, o.Left.From+o.Width.To, right)
		require.LessOrEqual(r, o.Bottom.To+o.Height.From, 30*in)
		require.LessOrEqual(r, o.Bottom.From+o.Height.To, 30*in)
		for _, x := range []length.Length{o.Left.From, o.Left.To + o.Width.To} {
			require.GreaterOrEqual(r, o.Bottom.From, survey.At(found.Base[0].Readings, min(max(x, 0), 60*in))+in/8)
		}
	})
}
