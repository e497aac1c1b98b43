package chance

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"

	"pgregory.net/rapid"
)

// Banded draws a room with up to so many walls, in level courses with a band of smaller or
// larger tile.
func Banded(t *rapid.T, walls int) survey.Room {
	room := Room(t, walls)
	room.Bond.Plumb = false
	in := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low, high).Draw(t, name)) * mm
	}
	b := survey.BandFound{Name: "band", Courses: rapid.IntRange(1, 3).Draw(t, "courses"), ToHead: rapid.IntRange(0, 3).Draw(t, "to head") == 0,
		Bond: survey.BondRule{Kind: survey.Stack, Den: 1},
		Tile: survey.TileSize{Width: in("band wide", 20, 200), Height: in("band high", 15, 60), Thickness: 6 * mm}}
	if rapid.Bool().Draw(t, "half bond") {
		b.Bond = survey.BondRule{Kind: survey.Running, Num: 1, Den: 2, Hand: survey.Left}
	}
	if rapid.Bool().Draw(t, "own joint") {
		b.Joint = 1 * mm
	}
	for i := range room.Walls {
		if i == 0 || rapid.Bool().Draw(t, "on wall") {
			b.Walls = append(b.Walls, i)
		}
	}
	from := in("band at", -300, 100)
	b.Bottom = survey.Span{From: from, To: from}
	if rapid.Bool().Draw(t, "band free") {
		b.Bottom.To += in("band range", 1, 90)
	}
	b.Near = b.Bottom.From + (b.Bottom.To - b.Bottom.From).Half()
	room.Bands = []survey.BandFound{b}
	return room.WithJoint(room.Joint)
}
