package drawing

// laidColour is the colour of whole tiles of the room's tile n, where its own have
// the first: a band's own in the look of the finished wall, and elsewhere a shade that
// tells it from the field.
func (b *board) laidColour(n int, first Colour) Colour {
	switch {
	case n == 0 || n > len(b.plan.Room.Bands):
		return first
	case first == White:
		return shades[(n-1)%len(shades)]
	}
	return Colour(b.plan.Room.Bands[n-1].Tile.Colour)
}
