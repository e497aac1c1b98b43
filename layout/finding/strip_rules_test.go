package finding

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
)

// upright stands a strip 6 in wide with its left edge so many inches from the left end,
// from 40 in under the level line to 40 in over it.
func upright(in *Input, left length.Length, thick length.Length) {
	w := &in.Walls[0]
	opens(in, survey.OpeningFound{Kind: survey.PlumbStrip, Name: "slate", Strip: &survey.StripFound{Low: true, High: true}}, left, -40, left+6, 40)
	w.Strips = append(w.Strips, plan.Strip{Opening: len(w.Found.Openings) - 1,
		Box:  plane.Rect{Left: left * inch, Right: (left + 6) * inch, Bottom: -40 * inch, Top: 40 * inch},
		Face: plan.Face{Tile: survey.TileSize{Width: 2 * inch, Height: 2 * inch, Thickness: thick}}})
}

// stripCases are those of TestRules for strips.
func stripCases() []ruleCase {
	valve := func(in *Input, at, wide length.Length) {
		opens(in, survey.OpeningFound{Kind: survey.Pipe, Name: "valve", At: at, Up: 2 * inch, Diameter: wide}, 0, 0, 0, 0)
	}
	return []ruleCase{
		{"a thick strip", StripStandsProud, func(in *Input) { upright(in, 20, in.Room.Tile.Thickness+inch/8) }, []string{`The tile of strip slate is 1/8" thicker than the field.`}},
		{"a thin strip", StripStandsProud, func(in *Input) { upright(in, 20, in.Room.Tile.Thickness-inch/16) }, []string{`The tile of strip slate is 1/16" thinner than the field.`}},
		{"a strip as thick", StripStandsProud, func(in *Input) { upright(in, 20, in.Room.Tile.Thickness+inch/32) }, nil},
		{"a hole in the strip", PipeAtStripEdge, func(in *Input) { upright(in, 20, 0); valve(in, 23*inch, 4*inch) }, nil},
		{"a hole over its edge", PipeAtStripEdge, func(in *Input) { upright(in, 20, 0); valve(in, 25*inch, 4*inch) }, []string{"The hole for valve reaches over the edge of strip slate."}},
		// Found on a shower with a strip from base to head: four pieces that nobody can cut were
		// listed on the saw's sheet, and no finding spoke of them.
		{"a strip that ends in scraps", SmallPieceInAStrip, func(in *Input) {
			upright(in, 20, 0)
			for n, high := range []length.Length{7 * inch / 16, 3 * inch / 8, 2 * inch} {
				p := tile("B-S1-0"+string(rune('1'+n)), 1, 20, -40, 2, 2)
				p.Least, p.Unworkable = high, high < inch/2
				in.Walls[0].Strips[0].Pieces = append(in.Walls[0].Strips[0].Pieces, p)
			}
		}, []string{`The strip slate has 2 small pieces; the smallest, B-S1-02, is 3/8".`}},
		{"tile cut beside it", CutBesideAStrip, func(in *Input) {
			upright(in, 20, 0)
			in.Walls[0].Start.Cut = &plan.Cut{Beside: []string{"slate"}, Figures: plan.Figures{Its: "9 slivers", Than: "none"}}
		}, []string{"Tile is cut beside strip slate: whole tile there would give 9 slivers instead of none."}},
		{"of which the joint lines say no more", EdgeOffTheJointLines, func(in *Input) {
			upright(in, 20, 0)
			in.Walls[0].Start.Cut = &plan.Cut{Beside: []string{"slate"}}
		}, nil},
		{"whole tile beside it", CutBesideAStrip, func(in *Input) { upright(in, 20, 0) }, nil},
		{"a strip of whole tiles", SmallPieceInAStrip, func(in *Input) { upright(in, 20, 0) }, nil},
		{"a strip on the valve's middle", StripBesideAValve, func(in *Input) { upright(in, 20, 0); valve(in, 23*inch, inch) }, nil},
		{"a strip beside it", StripBesideAValve, func(in *Input) { upright(in, 20, 0); valve(in, 22*inch+inch/2, inch) }, []string{`The middle of strip slate stands 1/2" to the right of valve.`}},
		{"a valve elsewhere", StripBesideAValve, func(in *Input) { upright(in, 20, 0); valve(in, 40*inch, inch) }, nil},
	}
}

// Found on a shower whose sheets told the strip to let a niche move.
func TestAStripIsToldWhatAStripMayDo(t *testing.T) {
	in := quiet()
	upright(&in, 20, 0)
	in.Walls[0].Found.Openings[len(in.Walls[0].Found.Openings)-1].Strip = &survey.StripFound{}
	said := 0
	for _, f := range Judge(in) {
		if f.Rule == EdgeOffTheJointLines {
			said++
			assert.NotContains(t, f.Do, "niche")
			assert.Contains(t, f.Do, "columns")
		}
	}
	assert.Equal(t, 1, said)
}
