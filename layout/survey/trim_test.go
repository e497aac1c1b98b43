package survey_test

import (
	"strings"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// trimmed is a job of one wall, 60 in wide, whose right end and head are trimmed.
func trimmed(place string) survey.Job {
	job := sketch("in", "a")
	job.Joint.Plain = "1/8"
	job.Trims = []survey.TrimTile{{Name: "edge", Kind: "bullnose", Width: "2", Length: "6", Place: place}}
	job.Walls[0].Right = survey.End{Stops: mark("40"), Trim: "edge"}
	job.Walls[0].Head = survey.Head{Stops: mark("40"), Trim: "edge"}
	return job
}

// Stop 40, trim 2, joint 1/8: tile ends at 37 7/8. The set-out begins at the factory
// edge of the bullnose and works back (how-to page; the sum is plain arithmetic).
func TestTileEndsBeforeItsTrim(t *testing.T) {
	room, faults := trimmed("").Resolve()
	require.Empty(t, faults)
	w := room.Walls[0]
	assert.Equal(t, survey.Span{From: 37*in + 7*in/8, To: 37*in + 7*in/8}, w.Right.Stops)
	assert.Equal(t, 37*in+7*in/8, w.Head.Stops.From)
	assert.Equal(t, survey.Bullnose, w.Sides()[survey.SideRight].Kind)
	assert.False(t, w.Right.Trim.Mitred, "bullnose has corner pieces")

	room, faults = trimmed("beyond").Resolve()
	require.Empty(t, faults)
	assert.Equal(t, 40*in, room.Walls[0].Right.Stops.From, "trim beyond the stop leaves it where it is")
}

// With a wider joint of a range tile ends sooner; trim beyond the stop moves nothing.
func TestTrimWithAnotherJoint(t *testing.T) {
	job := trimmed("")
	job.Joint = survey.Measure{Mark: free("1/8", "1/4")}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	wide := room.Jointed(in / 4)
	assert.Equal(t, 37*in+3*in/4, wide.Walls[0].Right.Stops.From)
	assert.Equal(t, 37*in+3*in/4, wide.Walls[0].Head.Stops.From)
	assert.Equal(t, 37*in+7*in/8, room.Walls[0].Right.Stops.From, "the room itself stays")
	assert.Equal(t, in/4, wide.Joint)

	job.Trims[0].Place = "beyond"
	room, _ = job.Resolve()
	assert.Equal(t, 40*in, room.Jointed(in / 4).Walls[0].Right.Stops.From)
}

func TestTrimIsRefused(t *testing.T) {
	for _, c := range []struct {
		spoil func(*survey.Job)
		fault string
	}{
		{func(j *survey.Job) { j.Trims[0].Name = "" }, "trims[0].name: found nothing; write a name"},
		{func(j *survey.Job) { j.Trims = append(j.Trims, j.Trims[0]) }, "trims[1].name: found “edge” a second time"},
		{func(j *survey.Job) { j.Trims[0].Kind = "gold" }, "trims[0].kind: found “gold”; write one of bullnose, quarter round, pencil, profile"},
		{func(j *survey.Job) { j.Trims[0].Width = "" }, "trims[0].width: found nothing; write a length from 1/32\" to 12\""},
		{func(j *survey.Job) { j.Trims[0].Width = "13" }, "trims[0].width: found “13”"},
		{func(j *survey.Job) { j.Trims[0].Length = "" }, "trims[0].length: found nothing"},
		{func(j *survey.Job) { j.Trims[0].Thickness = "3" }, "trims[0].thickness: found “3”"},
		{func(j *survey.Job) { j.Trims[0].Place = "over" }, "trims[0].place: found “over”; write one of in, beyond"},
		{func(j *survey.Job) { j.Trims[0].Corners = "round" }, "trims[0].corners: found “round”; write one of piece, mitre"},
		{func(j *survey.Job) { j.Trims[0].Box = &survey.Box{} }, "trims[0].box.count: found 0"},
		{func(j *survey.Job) { j.Walls[0].Right.Trim = "brim" }, "walls[0].right.trim: found “brim”; write the name of one of the trims: edge"},
		{func(j *survey.Job) { j.Walls[0].Head.Trim = "brim" }, "walls[0].head.trim: found “brim”"},
		{func(j *survey.Job) { j.Walls[0].Right.Finish = "casing" }, "walls[0].right.trim: found “edge” where a casing covers the edge"},
		{func(j *survey.Job) { j.Walls[0].Left.Trim = "edge" }, "walls[0].left.trim: found “edge”; write nothing here: a finish belongs to an end that stops"},
		{func(j *survey.Job) { j.Trims[0].Place, j.Walls[0].Right.Stops.At = "beyond", "59" },
			"walls[0].right.trim: found trim that would stand 1 1/8\" beyond the wall; write a stop that leaves 2 1/8\" of wall for it"},
		{func(j *survey.Job) { j.Walls[0].Right.Stops.At = "2" }, "walls[0].right: found tile ending at -1/8"},
		{func(j *survey.Job) { j.Trims = make([]survey.TrimTile, 21) }, "trims: found 21 kinds of trim; write at most 20"},
	} {
		job := trimmed("")
		c.spoil(&job)
		_, faults := job.Resolve()
		require.NotEmpty(t, faults, c.fault)
		assert.True(t, strings.HasPrefix(faults[0].String(), c.fault), "want %s\ngot  %s", c.fault, faults[0])
	}
	job := trimmed("")
	job.Trims = nil
	_, faults := job.Resolve()
	require.Len(t, faults, 2)
	assert.Equal(t, "walls[0].right.trim: found “edge”; write nothing here, or give trim of that name in trims", faults[0].String())
}

// A profile comes in bars of the usual length where none is given.
func TestBars(t *testing.T) {
	job := trimmed("")
	job.Trims[0] = survey.TrimTile{Name: "edge", Kind: "profile", Width: "1/8"}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	bar := room.Trims[0]
	assert.Equal(t, 8*length.Foot, bar.Length)
	assert.True(t, bar.Mitred)
	assert.Equal(t, survey.Trim, room.Walls[0].Sides()[survey.SideRight].Kind)
}
