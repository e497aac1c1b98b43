package niche_test

import (
	"context"
	"testing"

	"coursewright/layout/niche"
	"coursewright/layout/plan"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// window is a wall in 4 in tile with joints of 1/8, a course of which begins at the level line, and a
// window 16 in wide and high, whose sill of tile lies 1 in over a joint line. Its right side is as said.
func window(t *testing.T, right survey.InsideFace) plan.Inside {
	at := func(s string) *survey.Mark { return &survey.Mark{At: s} }
	job := survey.Job{Format: survey.Format, Units: "in", Tile: survey.Tile{Width: "4", Height: "4", Thickness: "5/16"},
		Joint: survey.Measure{Plain: "1/8"}, Bed: "3/16", Bond: survey.Bond{Kind: "stack"},
		Walls: []survey.Wall{{Name: "back", Width: "60", Left: survey.End{Meets: "corner"}, Right: survey.End{Meets: "corner"},
			Base: []survey.Segment{{Meets: "tub", Readings: []survey.Drop{{At: "0", Drop: "40"}}}},
			Head: survey.Head{Stops: at("42")},
			Openings: []survey.Opening{{Kind: "window", Name: "light", Left: at("20"), Width: at("16"), Bottom: at("1"), Height: &survey.Measure{Mark: at("16")},
				Inside: &survey.Inside{Depth: "3 3/4", Fall: "0", Gap: "0", Front: "flush", Right: right}}}}}}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	walls := []plan.Wall{{Found: room.Walls[0], Start: plan.Start{Placed: survey.Placed{Openings: []survey.Edges{{Left: 20 * inch, Right: 36 * inch, Bottom: inch, Top: 17 * inch}}}}}}
	require.NoError(t, niche.Lay(context.Background(), room, plan.Setout{Joint: room.Joint, Hand: survey.Left}, walls))
	return walls[0].Insides[0]
}

// Worked by hand, common practice, no source. Tile of 5/16 on a bed of 3/16 takes 1/2 in of the 16 at the
// sill and at the top: it stands from 1 1/2 to 16 1/2, 15 in. Courses that run on from the wall leave
// 4 - 1 1/2 = 2 1/2 in over the sill, then three of 4 with their joints to 2 1/2 + 3 × 4 1/8 = 14 7/8, and a joint
// under the top. Begun anew three whole courses take 3 × 4 1/8 = 12 3/8, and 2 5/8 is left under the top.
func TestASideBeginsAnewOnTheSill(t *testing.T) {
	in := window(t, survey.InsideFace{Begin: "sill"})
	assert.Equal(t, map[string]int{"3.7500 × 2.5000": 1, "3.7500 × 4.0000": 3}, sizes(in.Find(survey.LeftFace)))
	assert.Equal(t, map[string]int{"3.7500 × 4.0000": 3, "3.7500 × 2.6250": 1}, sizes(in.Find(survey.RightFace)))
}

// A tile of its own, 5 3/4 in high with joints of 1/8, is centred by itself: one on the middle leaves
// (15 - 5 3/4)/2 - 1/8 = 4 1/2 at both ends, a joint there 1 9/16. Begun on the sill two are whole,
// 2 × 5 7/8 = 11 3/4, and 3 1/4 is left.
func TestATileOfItsOwnBeginsOnTheSill(t *testing.T) {
	own := &survey.Tile{Width: "5 3/4", Height: "5 3/4", Thickness: "5/16"}
	in := window(t, survey.InsideFace{Tile: own, Joint: "1/8"})
	assert.Equal(t, map[string]int{"3.7500 × 5.7500": 1, "3.7500 × 4.5000": 2}, sizes(in.Find(survey.RightFace)))
	in = window(t, survey.InsideFace{Tile: own, Joint: "1/8", Begin: "sill"})
	assert.Equal(t, map[string]int{"3.7500 × 5.7500": 2, "3.7500 × 3.2500": 1}, sizes(in.Find(survey.RightFace)))
}

// Only a side with tile has courses that could begin on the sill.
func TestOnlySidesBeginOnTheSill(t *testing.T) {
	for _, c := range []struct {
		inside survey.Inside
		path   string
	}{
		{survey.Inside{Depth: "4", Sill: survey.InsideFace{Begin: "sill"}}, "walls[0].openings[0].inside.sill.begin"},
		{survey.Inside{Depth: "4", Left: survey.InsideFace{Begin: "sill", Cased: true}}, "walls[0].openings[0].inside.left.begin"},
		{survey.Inside{Depth: "4", Left: survey.InsideFace{Begin: "top"}}, "walls[0].openings[0].inside.left.begin"},
	} {
		at := func(s string) *survey.Mark { return &survey.Mark{At: s} }
		job := survey.Job{Format: survey.Format, Title: "t", Units: "in", Tile: survey.Tile{Width: "4", Height: "4"}, Joint: survey.Measure{Plain: "1/8"}, Bond: survey.Bond{Kind: "stack"},
			Walls: []survey.Wall{{Name: "w", Width: "60", Left: survey.End{Meets: "corner"}, Right: survey.End{Meets: "corner"},
				Base: []survey.Segment{{Meets: "tub", Readings: []survey.Drop{{At: "0", Drop: "40"}}}}, Head: survey.Head{Stops: at("42")},
				Openings: []survey.Opening{{Kind: "window", Name: "n", Left: at("20"), Width: at("16"), Bottom: at("1"), Height: &survey.Measure{Mark: at("16")}, Inside: &c.inside}}}}}
		_, faults := job.Resolve()
		require.Len(t, faults, 1, c.path)
		assert.Equal(t, c.path, string(faults[0].Path))
	}
}
