package drawing

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"coursewright/web/drawing/sample"
)

// What is written is what the saw cuts, as the cut list has it: the strip that the
// tile of the next wall covers is part of it.
func TestASizeCountsWhatACornerCovers(t *testing.T) {
	p := sample.Plan()
	b := newBoard(p, wallTexts)
	w, sizes := p.Walls[0], map[string]bool{}
	require.True(t, w.Found.Right.Cover > 0 || w.Found.Right.Behind > 0)
	for _, x := range p.Walls[1].Pieces {
		box := x.Face.Bounds()
		if slices.Equal(x.Cuts, []plane.Side{survey.SideRight}) && len(x.Face) == 1 && x.Kind == piece.Cross && box.Width() > x.Visible.Bounds().Width() {
			sizes[b.bare(box.Width())] = true
		}
	}
	require.NotEmpty(t, sizes, "a corner covers some of them")
	text := b.columnsOf(frame{wall: 1}, p.Walls[1]).right
	for size := range sizes {
		assert.Contains(t, text, size)
	}
}

// Equal end columns are said once: no piece of them bears a size, and a column
// that leans says the least and the largest.
func TestEndColumnsAreSaidOnce(t *testing.T) {
	p := alcove(t, strings.Clone)
	b := newBoard(p, wallTexts)
	for i, w := range p.Walls {
		c := b.columnsOf(frame{wall: i}, w)
		require.NotEmpty(t, c.said, w.Found.Name)
		s := Elevation(p, i, Options{})
		for _, l := range append(labels(s, Size), labels(s, Size.on(Ramp1))...) {
			assert.False(t, c.said[l.Piece], "%s in %s", l.Text, l.Piece)
		}
		assert.NotEmpty(t, labels(s, Column), "the columns of %s have their sizes over them", w.Found.Name)
	}
}

func TestAColumnThatLeansSaysTheLeastAndTheLargest(t *testing.T) {
	b := newBoard(sample.Plan(), wallTexts)
	assert.Equal(t, "3 1/2–3 3/4", b.lotText(lot{least: 7 * length.Inch / 2, most: 15 * length.Inch / 4}))
	assert.Equal(t, "3 1/2", b.lotText(lot{least: 7 * length.Inch / 2, most: 7 * length.Inch / 2}))
	assert.Equal(t, "whole", b.lotText(lot{}))
	var some lot
	for _, l := range []lot{{whole: true}, {least: 5 * length.Inch, most: 5 * length.Inch}, {least: 4 * length.Inch, most: 9 * length.Inch / 2}} {
		some.add(l)
	}
	assert.Equal(t, "4 to whole", b.lotText(some), "from the least that is cut")
}

// A cut is written no larger than its place, so that one by a hair does not
// read as a whole tile.
func TestASizeIsRoundedDown(t *testing.T) {
	b := board{plan: sample.Plan()}
	whole := piece.Piece{Wide: 6 * length.Inch, High: 3 * length.Inch}
	whole.Tile.Right, whole.Tile.Top = whole.Wide, whole.High
	cut := whole
	cut.Wide -= length.Inch / 40
	assert.Equal(t, []string{"5 15/16"}, b.cutSize(cut))
	cut = whole
	cut.High -= length.Inch / 40
	assert.Equal(t, []string{"↕ 2 15/16"}, b.cutSize(cut), "a height is marked")
}
