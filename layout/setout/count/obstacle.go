package count

import (
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// obstacle is where something else than an edge of the wall may cut its tile: the
// box of another edge, or where a free mark may come to stand.
type obstacle struct {
	plane.Rect
	edge piece.Edge // the edge, one that stands or a free one, or pipe or free
}

// What an obstacle is that is no edge of the wall.
const (
	free piece.Edge = -1 - iota // a free opening may come to stand here
	pipe
)
