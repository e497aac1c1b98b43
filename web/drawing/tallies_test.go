package drawing

import (
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A course of a pattern has one height on all walls, though its lowest tile stands on one of them alone and is not the
// first there: double herringbone once had a course at −10 7/8" on one wall and at −11 1/8" on another.
func TestACourseOfAPatternHasOneHeightOnAllWalls(t *testing.T) {
	laid := func(left, bottom, right, top length.Length) piece.Piece {
		tile := plane.Rect{Left: left, Bottom: bottom, Right: right, Top: top}
		return piece.Piece{Course: 5, Tile: tile, Outline: tile.Ring(0), Face: plane.Region{tile.Ring(0)}}
	}
	wall := func(pieces ...piece.Piece) (w layout.Wall) {
		w.Pieces = pieces
		w.Shape.Region = plane.Region{plane.Rect{Right: 100, Bottom: -100, Top: 100}.Ring(0)}
		return w
	}
	one, other := wall(laid(0, 3, 10, 13), laid(11, 0, 40, 8)), wall(laid(0, 5, 10, 9))
	b := &board{plan: layout.Plan{Walls: []layout.Wall{one, other}}}
	for _, w := range b.plan.Walls {
		courses := b.tallies(w)
		require.Len(t, courses, 1)
		assert.Equal(t, length.Length(0), courses[0].bottom)
		assert.Equal(t, length.Length(8), courses[0].top)
	}
}
