package chance

import (
	"fmt"
	"strconv"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Sketch is a room of whole millimetres on one line, for cases worked by hand, as
//
//	"1000x600 300x100+2 1/2 left=0..80 niche=200..260,300,100,150 | 800x600"
//
// of a wall its width and height, of the first wall tile and joint too, and what else it
// has, in any order: the offset of the bond, columns, ends and a head that stop, the
// heights of the base and the ceiling at both ends (base=0,-8 ceiling=600,604), the gap
// all round, a leg of floor 200 lower at the left (leg=150), how far to the right corners
// stand at the base and at the top of the wall (leanleft=0,4 leanright=-3,3), what the next
// wall's tile covers at the right (cover=13), openings by left edge, width, bottom and
// height, and pipe=x,y,diameter. The base is a tub at 0, corners and ceiling are met
// without a gap, sealant fills 6, the tape shows millimetres. It panics on what it does
// not know.
func Sketch(line string) survey.Room {
	r := survey.Room{Units: length.Metric, Tape: mm, Bed: 5 * mm, Sealant: 6 * mm, Bond: survey.BondRule{Kind: survey.Stack, Den: 1}}
	r.Tile.Thickness = 8 * mm
	for i, part := range strings.Split(line, "|") {
		words := strings.Fields(part)
		if i == 0 {
			tile, joint, _ := strings.Cut(words[1], "+")
			r.Tile.Width, r.Tile.Height = both(tile, "x")
			r.Joint = whole(joint)
			r.Joints = []length.Length{r.Joint}
			words = append(words[:1], words[2:]...)
		}
		r.Walls = append(r.Walls, sketched(&r, i, words))
	}
	return r
}

func sketched(r *survey.Room, i int, words []string) survey.WallFound {
	width, high := both(words[0], "x")
	w := survey.WallFound{Name: string(rune('a' + i)), Letter: string(rune('A' + i)), Width: width, Order: i,
		Left: survey.EndFound{Meets: true, Beyond: -1}, Right: survey.EndFound{Meets: true, Beyond: -1},
		Head: survey.HeadFound{Meets: true, Readings: level(width, high, high)},
		Base: []survey.SegmentFound{{Meets: survey.Tub, Readings: level(width, 0, 0)}}}
	for _, word := range words[1:] {
		key, value, _ := strings.Cut(word, "=")
		sketch(r, &w, key, value)
	}
	return w
}

func sketch(room *survey.Room, wall *survey.WallFound, key, value string) {
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
	case "leanleft":
		wall.Left.Lean = leaning(wall, value)
	case "leanright":
		wall.Right.Lean = leaning(wall, value)
	case "cover":
		wall.Right.Cover = whole(value)
	case "leg":
		x := whole(value)
		wall.Base[0].Readings[0].At = x
		floor := survey.SegmentFound{Meets: survey.Floor, Sight: survey.Low, Readings: []survey.Reading{{At: 0, Value: -200 * mm}, {At: x, Value: -200 * mm}}}
		wall.Base = append([]survey.SegmentFound{floor}, wall.Base...)
	case "niche", "window", "pipe":
		wall.Openings = append(wall.Openings, openingAt(survey.Kind(key), strings.Split(value, ",")))
	default:
		num, den, is := strings.Cut(key, "/")
		if !is {
			panic("no such word in a sketch: " + key)
		}
		room.Bond = survey.BondRule{Kind: survey.Running, Num: int64(whole(num) / mm), Den: int64(whole(den) / mm), Hand: survey.Left, Plumb: room.Bond.Plumb}
	}
}

// leaning are the readings of a corner at the base and at the top of a wall, before a
// head that stops is known.
func leaning(wall *survey.WallFound, value string) []survey.Reading {
	low, high := both(value, ",")
	return []survey.Reading{{At: 0, Value: low}, {At: wall.Head.Readings[0].Value, Value: high}}
}

func openingAt(kind survey.Kind, at []string) survey.OpeningFound {
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
