package plan_test

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"

	"github.com/stretchr/testify/assert"
)

// No tile of a course reaches below its bottom, some tile reaches down to it, and pieces of courses have none.
func TestCoursesOfAPatternStandOnTheirLowestTiles(t *testing.T) {
	laid := func(course int, bottom, top length.Length) piece.Piece {
		tile := plane.Rect{Right: 10, Bottom: bottom, Top: top}
		return piece.Piece{Course: course, Tile: tile, Outline: tile.Ring(0)}
	}
	one := plan.Wall{Pieces: []piece.Piece{laid(1, 2, 9), laid(1, 0, 4), {Course: 3, Tile: plane.Rect{Right: 10, Top: 10}}}}
	other := plan.Wall{Pieces: []piece.Piece{laid(1, 0, 6), laid(2, 5, 11)}}
	assert.Equal(t, map[int]plan.Course{1: {Bottom: 0, Top: 6}, 2: {Bottom: 5, Top: 11}}, plan.PatternCourses(one, other))
	assert.Empty(t, plan.PatternCourses())
}
