package count

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// tiled is a feature with tiles of one class laid against it.
type tiled struct {
	*feature
	first length.Length // where a tile begins, seen from the edge
	least length.Length // what is sure of the least that is left of one; absent where nothing is
}

// tiled lays tiles against the edge, one of which begins at a place of the wall.
func (f *feature) tiled(at length.Length) tiled {
	return tiled{f, f.first(at), absent}
}

// first is where a tile begins, seen from the edge.
func (f *feature) first(at length.Length) length.Length {
	if f.facing == piece.OnRight || f.facing == piece.Over {
		return -at - f.deep
	}
	return at
}

// cut is what becomes of the tile that an edge falls in.
type cut uint8

const (
	unsure cut = iota // the edge passes from one tile into another
	uncut             // it coincides with the tile's own edge, or stands in a joint
	kept              // a piece is left
	sealed            // only a strip for sealant is left
)

// slot is one place of a tile that the edge may cut: at v0 at one end of the
// slot and at v1 at the other.
func (t *tiled) slot(v0, v1 length.Length) (is cut, least length.Length, bare bool) {
	a, b := length.Mod(v0-t.first, t.pitch()), length.Mod(v1-t.first, t.pitch())
	if length.DivFloor(v0-t.first, t.pitch()) != length.DivFloor(v1-t.first, t.pitch()) {
		return unsure, 0, false
	}
	low, high := min(a, b), max(a, b)
	switch {
	case low >= t.deep: // in a joint
		return uncut, 0, t.meets && t.pitch()-high > t.fills()
	case high >= t.deep:
		return unsure, 0, false
	case high == 0:
		return uncut, 0, false
	case t.meets && t.reach > 0 && t.deep-low <= t.reach:
		return sealed, 0, t.deep-high+t.joint > t.fills()
	}
	least = max(0, t.deep-high-t.hidden)
	if v0 != v1 {
		least += 2 // a leaning edge is rounded where it is cut
	}
	return kept, least, false
}

// leaves is no more than the edge leaves of any tile that it cuts on its way from v0 to v1: a whole
// tile where it cuts none.
func (t *tiled) leaves(v0, v1 length.Length) length.Length {
	low, high := min(v0, v1), max(v0, v1)
	is, least, _ := t.slot(low, high)
	if a := length.Mod(low-t.first, t.pitch()); is == unsure && a >= t.deep && high-low+a-t.pitch() < t.deep {
		// It comes out of a joint, into one tile.
		is, least = kept, max(0, t.left(high)-t.hidden)
	}
	switch {
	case is == uncut, is == sealed:
		return t.deep
	case is == unsure:
		return 0
	case t.drift() > 0:
		return max(0, least-4) // for rounding, where it is cut
	}
	return least
}

// left is what is left of the tile that v falls in, from v to its far side: less
// than nothing in a joint.
func (t *tiled) left(v length.Length) length.Length { return t.deep - length.Mod(v-t.first, t.pitch()) }

// alike tells whether what the edge leaves of every tile differs by no more than the
// edge drifts: all of it falls in one tile, or in one joint, and sealant takes none.
func (t *tiled) alike() bool {
	is, _, _ := t.slot(t.low, t.high)
	sealed := t.meets && t.reach > 0 && t.left(t.high) <= t.reach
	return is == uncut || is == kept && !sealed
}

// known tells whether what is left of every tile is known to within the drift of the
// edge. Whole says that some tile is left whole.
func (t *tiled) known(whole bool) bool {
	return (t.least != absent || whole && t.drift() == 0) && t.alike()
}

// lower notes that no more than so much is left of some tile.
func (t *tiled) lower(size length.Length) {
	if t.least == absent || size < t.least {
		t.least = size
	}
}

// spans are those of a straight edge that nothing comes near that may cut the same tiles
// in another way: where all of the edge falls in one row, nothing in that row.
func (t *tiled) spans(e *straight, obstacles []obstacle) []span {
	if is, _, _ := t.slot(e.v0, e.v1); is != kept {
		return t.feature.spans[e.first:e.last]
	}
	low := min(e.v0, e.v1)
	return t.clean(e, obstacles, low-length.Mod(low-t.first, t.pitch())+t.deep)
}
