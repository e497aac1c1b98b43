package plan

import (
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// TilesOf lists the tiles that a piece of a wall, or of what is laid on it, may be cut from: the
// first of its bond and the further ones.
func TilesOf(room survey.Room, on *Face, p *piece.Piece) []survey.TileSize {
	laid := room.Laid(p.Laid)
	first, others := laid.Tile, laid.Bond.Others
	if on != nil && p.Laid == 0 {
		first, others = on.Tile, on.Bond.Others
	}
	return append([]survey.TileSize{first}, others...)
}

// TileOf is the tile that a piece is cut from.
func TileOf(room survey.Room, on *Face, p *piece.Piece) survey.TileSize {
	all := TilesOf(room, on, p)
	if p.Of >= len(all) {
		return all[0]
	}
	return all[p.Of]
}
