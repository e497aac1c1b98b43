package survey_test

import (
	"testing"

	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Nobody needs to compare names to know which boundary a side is.
func TestSidesSayWhatTheyAre(t *testing.T) {
	job := sketch("in", "a")
	w := &job.Walls[0]
	w.Right = survey.End{Stops: mark("60"), Finish: "bullnose"}
	w.Base = []survey.Segment{{Meets: "curb", Readings: drops("0", "4")}, {Meets: "shower base", Readings: drops("4", "60")}}
	w.Openings = []survey.Opening{niche("n", *mark("10"), *mark("12")), pipe("p", "50", "0", "4")}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	sides := room.Walls[0].Sides()
	for i, want := range []survey.Boundary{
		{Name: "factory"},
		{Name: "left", Part: survey.Part{Is: survey.LeftEnd}, Kind: survey.Corner, Meets: true, Gap: in / 8},
		{Name: "right", Part: survey.Part{Is: survey.RightEnd}, Kind: survey.Bullnose},
		{Name: "head", Part: survey.Part{Is: survey.HeadEdge}},
		{Name: "base", Part: survey.Part{Is: survey.BaseSegment}, Kind: survey.Curb, Meets: true, Gap: in / 8},
		{Name: "base", Part: survey.Part{Is: survey.BaseSegment, N: 1}, Kind: survey.ShowerBase, Meets: true, Gap: in / 8},
		{Name: "niche n", Part: survey.Part{Is: survey.OpeningEdge}, Kind: survey.Niche},
		{Name: "pipe p", Part: survey.Part{Is: survey.OpeningEdge, N: 1}, Kind: survey.Pipe},
	} {
		assert.Equal(t, want, sides[i])
	}
	assert.Equal(t, sides, room.Walls[0].Shape(room.Units, survey.Placed{Openings: make([]survey.Edges, 2)}).Sides)
	assert.Equal(t, survey.RightEnd, sides[plane.Side(survey.SideRight)].Part.Is)
}
