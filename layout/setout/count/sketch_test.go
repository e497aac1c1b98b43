package count

import (
	"coursewright/layout/length"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"
)

const mm = length.Millimetre

// sketch is a room of one wall as chance.Sketch has it, with the wall.
func sketch(line string) (survey.Room, survey.WallFound) {
	room := chance.Sketch(line)
	return room, room.Walls[0]
}

// drawWall is the wall of a sketch, ready to be counted.
func drawWall(line string) *Wall {
	room, found := sketch(line)
	return NewWall(&room, found, survey.Left)
}
