package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/web/drawing/sample"
)

// What is written in a piece is what the saw cuts, as the cut list has it: the
// strip that the tile of the next wall covers is part of it.
func TestASizeCountsWhatACornerCovers(t *testing.T) {
	p := sample.Plan()
	covered, written := map[string]string{}, 0
	for _, w := range p.Walls {
		for _, x := range w.Pieces {
			box := x.Face.Bounds()
			plain := x.Kind&(piece.Notch|piece.Hole|piece.Taper) == 0
			if plain && len(x.Face) == 1 && x.High == x.Tile.Top-x.Tile.Bottom && box.Width() > x.Visible.Bounds().Width() && box.Width() < x.Tile.Right-x.Tile.Left {
				covered[x.ID] = box.Width().FloorTo(length.Imperial.Step()).Tape(length.Imperial)
			}
		}
	}
	require.NotEmpty(t, covered, "a corner covers some of them")
	for _, e := range Elevation(p, 1, Options{}).Elements {
		if l, ok := e.(Label); ok && l.Kind == Size && covered[l.Piece] != "" {
			written++
			assert.Equal(t, covered[l.Piece], l.Text, l.Piece)
		}
	}
	assert.Positive(t, written)
	names := Elevation(p, 1, Options{Handles: true}).Pieces.Names
	for id, wide := range covered {
		if names[id] != "" {
			assert.Contains(t, names[id], " "+wide+" × ", "as it is told")
		}
	}
}

// A cut is written no larger than its place, so that one by a hair does not
// read as a whole tile.
func TestASizeIsRoundedDown(t *testing.T) {
	b := board{plan: sample.Plan()}
	whole := piece.Piece{Wide: 6 * length.Inch, High: 3 * length.Inch}
	whole.Tile.Right, whole.Tile.Top = whole.Wide, whole.High
	cut := whole
	cut.Wide -= length.Inch / 40
	assert.Equal(t, []string{`5 15/16"`}, b.cutSize(cut))
}
