package niche_test

import (
	"context"
	"fmt"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/niche"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	inch = length.Inch
	mm   = length.Millimetre
)

// hand is a wall in 4 in tile with joints of 1/8, and a niche between two studs
// 14 1/2 in apart, three courses high.
func hand(t *testing.T, fall string) plan.Inside {
	job := survey.Job{Format: survey.Format, Units: "in", Tile: survey.Tile{Width: "4", Height: "4", Thickness: "5/16"},
		Joint: survey.Measure{Plain: "1/8"}, Bed: "3/16", Bond: survey.Bond{Kind: "stack"},
		Walls: []survey.Wall{{Name: "back", Width: "60", Left: survey.End{Meets: "corner"}, Right: survey.End{Meets: "corner"},
			Base: []survey.Segment{{Meets: "tub", Readings: []survey.Drop{{At: "0", Drop: "40"}}}},
			Head: survey.Head{Stops: &survey.Mark{At: "42"}},
			Openings: []survey.Opening{{Kind: "niche", Name: "shelf", Bottom: &survey.Mark{At: "1 1/4"}, Height: &survey.Measure{Mark: &survey.Mark{At: "12 1/2"}},
				Inside: &survey.Inside{Studs: &survey.Studs{Left: "22", Right: "36 1/2"}, Depth: "3 1/2", DepthIs: "rough", Lining: "1/2", Fall: fall}}}}}}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	wall := plan.Wall{Found: room.Walls[0], Start: plan.Start{Edge: 23*inch + inch/8, // a tile begins a joint inside the opening
		Placed: survey.Placed{Openings: []survey.Edges{{Left: 23 * inch, Right: 35*inch + inch/2, Bottom: inch + inch/4, Top: 13*inch + 3*inch/4}}}}}
	walls := []plan.Wall{wall}
	require.NoError(t, niche.Lay(context.Background(), room, plan.Setout{Line: inch + 3*inch/8, Joint: room.Joint, Hand: survey.Left}, walls))
	return walls[0].Insides[0]
}

// sizes writes what is on a face: how many pieces of which size, in inches.
func sizes(f *plan.Face) map[string]int {
	out := map[string]int{}
	for _, p := range f.Pieces {
		out[fmt.Sprintf("%.4f × %.4f", p.Wide.Millimetres()/25.4, p.High.Millimetres()/25.4)]++
	}
	return out
}

// Worked by hand, common practice, no source: a bay of 14 1/2 in less a board of
// 1/2 in a side is 13 1/2 lined, less tile 5/16 and bed 3/16 a side 12 1/2
// clear (facts of the trade, how-to page: the same figures). That is three
// tiles of 4 in and four joints of 1/8, so nine whole tiles stand on the back. A
// return is 3 1/2 deep less the tile that laps over it, a joint behind that, and
// the soft joint at the back: 3 1/2 - 5/16 - 1/8 - 1/8 = 2 15/16.
func TestThreeCoursesBetweenTwoStuds(t *testing.T) {
	in := hand(t, "0")
	assert.Equal(t, survey.Edges{Left: 23 * inch, Right: 35*inch + inch/2, Bottom: inch + inch/4, Top: 13*inch + 3*inch/4}, in.Clear)
	assert.Equal(t, 7*inch/2, in.Depth)
	assert.Equal(t, survey.Edges{Left: 22 * inch, Right: 36*inch + inch/2, Bottom: inch / 4, Top: 14*inch + 3*inch/4}, in.Rough, "the studs, and blocking 1 in beyond the tile")
	assert.Equal(t, map[string]int{"4.0000 × 4.0000": 9}, sizes(in.Find(survey.BackFace)))
	for _, side := range []survey.FaceName{survey.LeftFace, survey.RightFace} {
		assert.Equal(t, map[string]int{"2.9375 × 4.0000": 3}, sizes(in.Find(side)), side)
	}
	for _, ledge := range []survey.FaceName{survey.SillFace, survey.TopFace} {
		assert.Equal(t, map[string]int{"4.0000 × 2.9375": 3}, sizes(in.Find(ledge)), ledge)
	}
	for _, p := range in.Find(survey.BackFace).Pieces {
		assert.True(t, p.Whole, p.ID)
	}
	assert.Equal(t, "B-N1-back-01", in.Find(survey.BackFace).Pieces[0].ID)
}

// 1/4 in to the foot over 3 1/2 in is 0.0729 in (NTCA in TileLetter, and the
// arithmetic of the how-to page: 0.073): so much is cut off the lowest course of
// the back, and of the sides where they come to it.
func TestTheSillFallsToTheRoom(t *testing.T) {
	in := hand(t, "1/4")
	assert.InDelta(t, 0.0729, in.Rise.Millimetres()/25.4, 0.0001)
	assert.Equal(t, map[string]int{"4.0000 × 4.0000": 6, "4.0000 × 3.9271": 3}, sizes(in.Find(survey.BackFace)))
	left := in.Find(survey.LeftFace).Pieces[0]
	assert.True(t, left.Face.Bounds().Height() < 4*inch)
	assert.Equal(t, "taper", left.Kind.String()[len(left.Kind.String())-5:], "its foot follows the sill")
	right := in.Find(survey.RightFace).Pieces[0]
	assert.Equal(t, left.Wide, right.Wide)
	assert.Equal(t, left.High, right.High, "the sides are alike")
}

// A published example, corrected (facts of the trade, 0 c): for 75 mm clear of
// the tile's face the recess is 75 − 18 + 7 = 64 deep behind the framing, where
// board and tile of the wall take 18 and what stands on the back 7.
func TestTheWallsOwnTileDeepensANiche(t *testing.T) {
	job := survey.Job{Format: survey.Format, Units: "mm", Tile: survey.Tile{Width: "100", Height: "100", Thickness: "6"},
		Joint: survey.Measure{Plain: "2"}, Bed: "0", Bond: survey.Bond{Kind: "stack"},
		Walls: []survey.Wall{{Name: "back", Width: "1500", Left: survey.End{Meets: "corner"}, Right: survey.End{Meets: "corner"},
			Base: []survey.Segment{{Meets: "tub", Readings: []survey.Drop{{At: "0", Drop: "900"}}}}, Head: survey.Head{Stops: &survey.Mark{At: "900"}},
			Openings: []survey.Opening{{Kind: "niche", Name: "n", Left: &survey.Mark{At: "400"}, Width: &survey.Mark{At: "300"}, Bottom: &survey.Mark{At: "0"},
				Height: &survey.Measure{Mark: &survey.Mark{At: "300"}}, Inside: &survey.Inside{Depth: "64", DepthIs: "rough", Lining: "12",
					Back: survey.InsideFace{Lining: "0", Tile: &survey.Tile{Width: "50", Height: "50", Thickness: "7"}}}}}}}}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, 75*mm, room.Walls[0].Openings[0].Inside.Depth)
}

// Law 2: the joints of the back are those of the wall.
func TestTheBackGoesOnWithTheWall(t *testing.T) {
	in := hand(t, "0")
	back := in.Find(survey.BackFace)
	for i, p := range back.Pieces {
		at := plane.Point{X: back.Origin.X + p.Tile.Left, Y: back.Origin.Y + p.Tile.Bottom}
		assert.Equal(t, length.Length(0), length.Mod(at.X-23*inch-inch/8, 4*inch+inch/8), "piece %d", i)
		assert.Equal(t, length.Length(0), length.Mod(at.Y-inch-3*inch/8, 4*inch+inch/8), "piece %d", i)
	}
}

// Law 4.
func TestAnOpeningWithoutAnInsideStaysAsItWas(t *testing.T) {
	walls := []plan.Wall{{Found: survey.WallFound{Openings: []survey.OpeningFound{{Kind: survey.Niche, Name: "n"}}}}}
	require.NoError(t, niche.Lay(context.Background(), survey.Room{}, plan.Setout{}, walls))
	assert.Nil(t, walls[0].Insides)
}
