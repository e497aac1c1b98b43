package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/piece"
)

func TestPiecesAreCountedWithWhatIsFoldedOut(t *testing.T) {
	face := Face{Wall: Wall{Pieces: []piece.Piece{{}, {Whole: true}}}}
	walls := []Wall{
		{Pieces: []piece.Piece{{Whole: true}, {}}, Insides: []Inside{{Faces: []Face{face}}}},
		{Strips: []Strip{{Face: face}}, Top: &Top{Face: face}},
	}
	cut, all := Count(walls)
	assert.Equal(t, 4, cut)
	assert.Equal(t, 8, all)
}
