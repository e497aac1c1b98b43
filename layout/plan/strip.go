package plan

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// Strip is a strip of other tile up a wall, as it will be laid: a flat wall of its
// own, in the coordinates of the wall it is on.
type Strip struct {
	Opening int        // of the wall's openings: what it takes from the field
	Box     plane.Rect // of its tile, between the joints beside it and up to base and head
	Face
}

// Anew is where the bond of a wall begins afresh, beyond a strip that parts it.
type Anew struct {
	From length.Length // the left end of the field there
	Edge length.Length // left edge of a tile of course 0
	Own  bool          // it does not go by the start of the wall: tile is cut beside a strip
}

// Cut says of a wall whose tile is cut beside strips what whole tile there would give.
type Cut struct {
	Beside []string // the strips
	Figures
}

// At is where the bond that stands at a place along the wall starts: the left edge of
// a tile of course 0.
func (s Start) At(x length.Length) length.Length {
	edge := s.Edge
	for _, a := range s.Anew {
		if x >= a.From {
			edge = a.Edge
		}
	}
	return edge
}

// All are the pieces that are set on the wall itself: those of the field, then those
// of its strips. What is inside its openings is not among them.
func (w *Wall) All() []piece.Piece {
	if len(w.Strips) == 0 {
		return w.Pieces
	}
	out := slices.Clone(w.Pieces)
	for i := range w.Strips {
		out = append(out, w.Strips[i].Pieces...)
	}
	return out
}
