package takeoff

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/layout/trim"

	"github.com/stretchr/testify/assert"
)

// leg is 84 in of trim in pieces 6 in long with joints of 1/8 in: 13 whole ones
// and one of 4 3/8 in.
func leg(t survey.TrimFound) []trim.Piece {
	var all []trim.Piece
	for range 13 {
		all = append(all, trim.Piece{Trim: t, Long: 6 * inch, Inner: 6 * inch, Whole: true})
	}
	return append(all, trim.Piece{Trim: t, Long: 35 * inch / 8, Inner: 35 * inch / 8})
}

func TestTrimInPieces(t *testing.T) {
	edge := survey.TrimFound{Name: "edge", Kind: survey.Bullnose, Width: 2 * inch, Length: 6 * inch, BoxCount: 10, BoxCents: 2000}
	in := twoByTwo()
	in.Room.Trims = []survey.TrimFound{edge}
	in.Walls[0].Shape.Sides[left].Trim = &edge
	in.Walls[0].Shape.Sides[left].Kind = survey.Bullnose
	in.Walls[0].Trim = append(leg(edge), trim.Piece{Trim: edge, Long: 2 * inch, Corner: true})
	got := Of(in, Usual(length.Imperial))
	assert.Equal(t, Line{Item: "bullnose edge", Unit: `piece of 6"`, Net: 14, Spare: 1, Count: 15, Boxes: 2, Cents: 4000,
		Because: "13 whole and 1 cut from 1, and 5 % spare"}, line(t, got.Lines, "bullnose edge"))
	assert.Equal(t, 1, line(t, got.Lines, "bullnose edge, corner piece").Count)
	assert.Equal(t, 3, line(t, got.Lines, "bullnose").Count, "the head has none in pieces and is counted by its length, as ever")
	for _, l := range got.Lines {
		assert.NotContains(t, []string{"trim", "bullnose corner"}, l.Item, "an edge is not bought twice")
	}

	// Two stubs of 2 3/4 in and a kerf of 1/8 come out of one piece, two of 3 in do not.
	in.Walls[0].Trim = []trim.Piece{{Trim: edge, Long: 11 * inch / 4}, {Trim: edge, Long: 11 * inch / 4}}
	assert.Equal(t, 1, line(t, Of(in, Usual(length.Imperial)).Lines, "bullnose edge").Net)
	in.Walls[0].Trim = []trim.Piece{{Trim: edge, Long: 3 * inch}, {Trim: edge, Long: 3 * inch}}
	assert.Equal(t, 2, line(t, Of(in, Usual(length.Imperial)).Lines, "bullnose edge").Net)
}

// An edge of 84 in takes one bar of 8 ft; a second of 12 in comes out of what is
// left only without a kerf.
func TestBars(t *testing.T) {
	bar := survey.TrimFound{Name: "profile", Kind: survey.Profile, Width: inch / 8, Length: 96 * inch}
	in := twoByTwo()
	in.Room.Trims = []survey.TrimFound{bar}
	in.Walls[0].Trim = []trim.Piece{{Trim: bar, Long: 84 * inch}, {Trim: bar, Long: 12 * inch}}
	got := line(t, Of(in, Usual(length.Imperial)).Lines, "profile")
	assert.Equal(t, Line{Item: "profile", Unit: `bar of 8'-0"`, Net: 2, Count: 2, Because: "0 whole and 2 cut from 2"}, got)
	set := Usual(length.Imperial)
	set.Kerf = 0
	assert.Equal(t, 1, line(t, Of(in, set).Lines, "profile").Net)
}

// The joints beside trim are grouted like any other.
func TestTrimIsGrouted(t *testing.T) {
	in := twoByTwo()
	before := in.joints()
	edge := survey.TrimFound{Name: "edge", Kind: survey.Bullnose, Width: 2 * inch, Length: 6 * inch}
	in.Walls[0].Trim = []trim.Piece{{Trim: edge, Long: 6 * inch, Inner: 6 * inch, Whole: true}}
	assert.Equal(t, before+(8*inch).Times(inch/4), in.joints(), "6 in beside the tile and 2 in beside the next piece")
}
