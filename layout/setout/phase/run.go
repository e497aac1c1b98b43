package phase

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// run is all pieces that the same boundary edges cut in the same direction, with
// its least share. Cut by more than four edges, they are told apart by the first four.
type run struct {
	edges [4]piece.Edge
	n     int
	least length.Length
	full  length.Length // of the tile that gives it
	low   bool

	narrowest length.Length // least width, which a wider tile may have than the one of least share
}

func (r *run) share() piece.Share { return piece.Part(r.least, r.full) }

// note takes a width of a tile if it is less of it: in whole marks of the tape first,
// because that is how runs compare.
func (r *run) note(least, full, tape length.Length) {
	r.narrowest = min(r.narrowest, least)
	if full == r.full {
		r.least = min(r.least, least)
		return
	}
	marks, have := piece.Part(least.FloorTo(tape), full), piece.Part(r.least.FloorTo(tape), r.full)
	if marks.Less(have) || !have.Less(marks) && piece.Part(least, full).Less(r.share()) {
		r.least, r.full = least, full
	}
}
