package survey

import "coursewright/layout/length"

// Flats is the distance between two sides of a hexagon. Of a tile that is given
// with both, the smaller size; a tile given with the same size twice is given by its
// flats.
func Flats(t TileSize) length.Length { return min(t.Width, t.Height) }

// Weave is how many tiles stand side by side in one square of a basket weave.
func Weave(long, short, joint length.Length) length.Length {
	return max(1, (2*(long+joint)+short+joint)/(2*(short+joint)))
}
