package survey_test

import (
	"strings"
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

// A measured window down to the floor is a doorway, and is called one; one down to a tub's rim, one that
// stands over a floor, and one whose inside is tiled are windows. In a wet room the door stands on what the shower
// drains into: found by a walk, whose doorway wanted safety glass as a window 3 mm over the rim.
func TestAWindowDownToTheFloorIsADoorway(t *testing.T) {
	const job = `{"format": "coursewright-job/1", "title": "t", "units": "in", "tile": {"width": "6", "height": "6", "thickness": "1/4"}, "joint": "1/8", "bond": {"kind": "stack"},
		"walls": [{"name": "w", "width": "90", "left": {"meets": "corner"}, "right": {"meets": "corner"}, "head": {"stops": {"at": "40"}},
		"base": [{"meets": BASE, "gap": "1/8", "readings": [{"at": "0", "drop": "40"}, {"at": "50", "drop": "40"}]}, {"meets": "tub", "readings": [{"at": "50", "drop": "20"}, {"at": "90", "drop": "20"}]}],
		"openings": [{"kind": "window", "name": NAME, "left": {"at": LEFT}, "width": {"at": "20"}, "bottom": {"at": BOTTOM}, "height": {"at": "30"}INSIDE}]}]}`
	for _, c := range []struct{ name, base, left, bottom, inside, called string }{
		{"window", "floor", "10", "-40", "", "doorway"},
		{"window 2", "floor", "10", "-40", "", "doorway 2"},
		{"back door", "floor", "10", "-39 7/8", "", "back door"},
		{"hall", "floor", "10", "-40", "", "doorway hall"},
		{"window", "shower base", "10", "-40", "", "doorway"},
		{"window", "curb", "10", "-40", "", "window"},
		{"window", "floor", "10", "-30", "", "window"},
		{"window", "floor", "60", "-20", "", "window"},
		{"window", "floor", "10", "-40", `, "inside": {"depth": "4"}`, "window"},
	} {
		file := strings.NewReplacer("NAME", `"`+c.name+`"`, "BASE", `"`+c.base+`"`, "LEFT", `"`+c.left+`"`, "BOTTOM", `"`+c.bottom+`"`, "INSIDE", c.inside).Replace(job)
		read, err := survey.Read([]byte(file))
		require.NoError(t, err)
		room, faults := read.Resolve()
		require.Empty(t, faults)
		assert.Equal(t, c.called, room.Walls[0].Openings[0].Called(), c)
		assert.Equal(t, "window "+c.name, room.Walls[0].Openings[0].Key(), "in files it keeps its name")
	}
}
