package count

import (
	"fmt"
	"strconv"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

const mm = length.Millimetre

// sketch is a wall of whole millimetres on one line, as
//
//	"1000x600 300x100+2 1/2 left=0..80 niche=200..260,300,100,150"
//
// its width and height, its tile and joint, and what else it has, in any order: the
// offset of its bond, columns, ends and a head that stop, the heights of the base
// and the ceiling at both ends (base=0,-8 ceiling=600,604), gap, a leg of floor
// 200 lower (leg=150 at the left), openings by left edge, width, bottom and height,
// and pipe=x,y,diameter. The base is a tub at 0, corners and ceiling are met without
// a gap, sealant fills 6, the tape shows millimetres.
func sketch(line string) (survey.Room, survey.WallFound) {
	words := strings.Fields(line)
	size, tile, joint := words[0], words[1], "0"
	tile, joint, _ = strings.Cut(tile, "+")
	room := survey.Room{Units: length.Metric, Tape: mm, Joint: whole(joint), Bed: 5 * mm, Sealant: 6 * mm, Bond: survey.BondRule{Kind: survey.Stack, Den: 1}}
	room.Tile.Thickness = 8 * mm
	room.Tile.Width, room.Tile.Height = both(tile, "x")
	room.Joints = []length.Length{room.Joint}
	wall := survey.WallFound{Name: "wall", Letter: "A"}
	var high length.Length
	wall.Width, high = both(size, "x")
	wall.Left, wall.Right = survey.EndFound{Meets: true, Beyond: -1}, survey.EndFound{Meets: true, Beyond: -1}
	wall.Head = survey.HeadFound{Meets: true, Readings: level(wall.Width, high, high)}
	wall.Base = []survey.SegmentFound{{Meets: survey.Tub, Readings: level(wall.Width, 0, 0)}}
	for _, word := range words[2:] {
		key, value, _ := strings.Cut(word, "=")
		draw(&room, &wall, key, value)
	}
	room.Walls = []survey.WallFound{wall}
	return room, wall
}

// drawWall is the wall of a sketch, ready to be counted.
func drawWall(line string) *Wall {
	room, found := sketch(line)
	return NewWall(&room, found, survey.Left)
}

func draw(room *survey.Room, wall *survey.WallFound, key, value string) {
	switch key {
	case "columns":
		room.Bond.Plumb = true
	case "left":
		wall.Left = survey.EndFound{Stops: rangeOf(value), Beyond: -1}
	case "right":
		wall.Right = survey.EndFound{Stops: rangeOf(value), Beyond: -1}
	case "head":
		wall.Head = survey.HeadFound{Stops: rangeOf(value)}
	case "base":
		a, b := both(value, ",")
		wall.Base[0].Readings = level(wall.Width, a, b)
	case "ceiling":
		a, b := both(value, ",")
		wall.Head.Readings = level(wall.Width, a, b)
	case "gap":
		gap := whole(value)
		wall.Left.Gap, wall.Right.Gap, wall.Head.Gap, wall.Base[0].Gap = gap, gap, gap, gap
	case "leg":
		x := whole(value)
		wall.Base[0].Readings[0].At = x
		floor := survey.SegmentFound{Meets: survey.Floor, Sight: survey.Low, Readings: []survey.Reading{{At: 0, Value: -200 * mm}, {At: x, Value: -200 * mm}}}
		wall.Base = append([]survey.SegmentFound{floor}, wall.Base...)
	case "niche", "window", "pipe":
		wall.Openings = append(wall.Openings, opening(survey.Kind(key), strings.Split(value, ",")))
	default:
		num, den, is := strings.Cut(key, "/")
		if !is {
			panic("no such word in a sketch: " + key)
		}
		room.Bond = survey.BondRule{Kind: survey.Running, Num: int64(whole(num) / mm), Den: int64(whole(den) / mm), Hand: survey.Left, Plumb: room.Bond.Plumb}
	}
}

func opening(kind survey.Kind, at []string) survey.OpeningFound {
	if kind == survey.Pipe {
		return survey.OpeningFound{Kind: kind, Name: "p", At: whole(at[0]), Up: whole(at[1]), Diameter: whole(at[2])}
	}
	return survey.OpeningFound{Kind: kind, Name: "n", Left: rangeOf(at[0]), Width: rangeOf(at[1]), Bottom: rangeOf(at[2]), Height: rangeOf(at[3])}
}

func level(width, left, right length.Length) []survey.Reading {
	return []survey.Reading{{At: 0, Value: left}, {At: width, Value: right}}
}

func whole(s string) length.Length {
	n, err := strconv.Atoi(s)
	if err != nil {
		panic(fmt.Sprintf("no whole millimetres in a sketch: %q", s))
	}
	return length.Length(n) * mm
}

func both(s, between string) (a, b length.Length) {
	x, y, _ := strings.Cut(s, between)
	return whole(x), whole(y)
}

func rangeOf(s string) survey.Span {
	from, to, free := strings.Cut(s, "..")
	if !free {
		to = from
	}
	return survey.Span{From: whole(from), To: whole(to)}
}
