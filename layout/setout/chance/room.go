// Package chance draws rooms for random tests: with everything that a room may
// have, columns, free ends and heads, several openings, legs, leans, rakes, small
// and large tile, both systems, one to four walls. Sketch draws the rooms of cases worked
// by hand.
package chance

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"pgregory.net/rapid"
)

const mm = length.Millimetre

// draw draws one room.
type draw struct {
	*rapid.T
}

func (d draw) length(name string, low, high int) length.Length {
	return length.Length(rapid.IntRange(low, high).Draw(d.T, name)) * mm
}

func (d draw) yes(name string) bool { return rapid.Bool().Draw(d.T, name) }

// Room draws a room with up to so many walls. Its tile is large beside its walls,
// so that a search through it is short.
func Room(t *rapid.T, walls int) survey.Room {
	d := draw{T: t}
	r := survey.Room{Units: length.Metric, Tape: mm, Joint: d.length("joint", 0, 5), Bed: 5 * mm, Sealant: 6 * mm,
		Tile: survey.TileSize{Width: d.length("tile width", 40, 400), Height: d.length("tile height", 40, 300), Thickness: 8 * mm},
		Bond: survey.BondRule{Kind: "stack", Den: 1, Plumb: d.yes("plumb")}}
	if den := rapid.IntRange(1, 3).Draw(t, "den"); den > 1 {
		r.Bond = survey.BondRule{Kind: "running", Num: 1, Den: int64(den), Plumb: r.Bond.Plumb, Hand: survey.Left}
	}
	if d.yes("inches") {
		r.Units, r.Tape = length.Imperial, length.Inch/8
		r.Joint = length.Length(rapid.IntRange(1, 4).Draw(t, "sixteenths")) * length.Inch / 16
	}
	r.Joints = []length.Length{r.Joint}
	n := rapid.IntRange(1, walls).Draw(t, "walls")
	for i := range n {
		r.Walls = append(r.Walls, d.wall(i, n))
	}
	for i := range r.Walls[1:] {
		if d.yes("turns") {
			d.turn(&r, i)
		}
	}
	return r
}

// House draws a room some of whose ceilings fall under a roof.
func House(t *rapid.T, walls int) survey.Room {
	r := Room(t, walls)
	for i := range r.Walls {
		if w := &r.Walls[i]; w.Head.Meets && rapid.IntRange(0, 2).Draw(t, "roof") == 0 {
			w.Head.Readings = draw{T: t}.roof(w.Width)
		}
	}
	return r
}

// turn makes the corner after a wall an outside one: a lap, a mitre or a profile.
func (d draw) turn(r *survey.Room, i int) {
	deep := r.Bed + r.Tile.Thickness
	o := survey.OutsideFound{Next: i + 1, How: rapid.SampledFrom([]survey.Kind{survey.Lap, survey.Mitre, survey.Profile}).Draw(d.T, "corner"), Angle: 90, Past: deep}
	its, left, right := o, deep, deep
	its.Next = i
	switch o.How {
	case survey.Lap:
		o.Laps = d.yes("laps")
		if its.Laps = !o.Laps; o.Laps {
			left = r.Bed - r.Joint
		} else {
			right = r.Bed - r.Joint
		}
	case survey.Profile:
		left -= 3*mm + r.Joint
		right = left
	}
	a, b := &r.Walls[i], &r.Walls[i+1]
	a.Right = survey.EndFound{Stops: survey.Span{From: a.Width + right, To: a.Width + right}, Beyond: -1, Outside: &o}
	b.Left = survey.EndFound{Stops: survey.Span{From: -left, To: -left}, Beyond: -1, Outside: &its}
}

func (d draw) wall(i, n int) survey.WallFound {
	name := string(rune('a' + i))
	w := survey.WallFound{Name: name, Letter: string(rune('A' + i)), Width: d.length("width", 300, 1300), Order: i}
	w.Left, w.Right = d.end(i > 0, "left", 0, 80*mm), d.end(i < n-1, "right", w.Width-80*mm, w.Width)
	if i > 0 {
		w.Left.Behind = 13 * mm
	}
	if i < n-1 {
		w.Right.Cover = 13 * mm
	}
	d.base(&w)
	if d.yes("ceiling") {
		w.Head = survey.HeadFound{Meets: true, Gap: 3 * mm, Readings: []survey.Reading{{At: 0, Value: 400 * mm}, {At: w.Width, Value: 400*mm + d.length("ceiling", -8, 8)}}}
	} else {
		w.Head = survey.HeadFound{Stops: survey.Span{From: 400 * mm, To: 400*mm + d.length("head range", 0, 150)}}
	}
	for k := range rapid.IntRange(0, 2).Draw(d.T, "openings") {
		w.Openings = append(w.Openings, d.opening(k, w))
	}
	if d.yes("pipe") {
		w.Openings = append(w.Openings, survey.OpeningFound{Kind: survey.Pipe, Name: "p", At: d.length("pipe", 20, 280), Up: d.length("pipe height", -500, 350), Diameter: d.length("diameter", 10, 150)})
	}
	return w
}

// roof is a ceiling that falls along a wall to one side, less or more than 45°, at times from a level part.
func (d draw) roof(width length.Length) []survey.Reading {
	eaves, ridge := d.length("eaves", -560, 380), length.Length(rapid.IntRange(0, 2).Draw(d.T, "ridge"))*width/4
	out := []survey.Reading{{At: 0, Value: 400 * mm}, {At: ridge, Value: 400 * mm}, {At: width, Value: eaves}}
	if ridge == 0 {
		out = out[1:]
	}
	even := 400*mm - (width - ridge) // neither more nor less than as steep as wide, where that ends over the base
	if rapid.IntRange(0, 3).Draw(d.T, "at 45°") == 0 && even >= -560*mm {
		out[len(out)-1].Value = even
	}
	if d.yes("falls to the left") {
		for i := range out {
			out[i].At = width - out[i].At
		}
		slices.Reverse(out)
	}
	return out
}

func (d draw) end(corner bool, name string, from, to length.Length) survey.EndFound {
	if !corner && d.yes(name+" stops") {
		at := from + length.Length(rapid.IntRange(0, 80).Draw(d.T, name+" at"))*mm
		if d.yes(name + " free") {
			return survey.EndFound{Stops: survey.Span{From: from, To: to}, Finish: survey.Trim, Beyond: -1}
		}
		return survey.EndFound{Stops: survey.Span{From: at, To: at}, Beyond: -1}
	}
	e := survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: -1}
	if d.yes(name + " leans") {
		e.Lean = []survey.Reading{{At: -600 * mm, Value: d.length("lean", -8, 8)}, {At: 600 * mm, Value: d.length("lean", -8, 8)}}
	}
	return e
}

func (d draw) base(w *survey.WallFound) {
	tub := survey.SegmentFound{Meets: survey.Tub, Gap: 3 * mm, Readings: []survey.Reading{{At: 0, Value: -600 * mm},
		{At: w.Width, Value: -600*mm + d.length("tub", -8, 8)}}}
	w.Base = []survey.SegmentFound{tub}
	if !d.yes("leg") {
		return
	}
	x := d.length("leg", 30, 150)
	floor := survey.SegmentFound{Meets: survey.Floor, Gap: 3 * mm, Sight: survey.Low, Readings: []survey.Reading{{At: 0, Value: -800 * mm}, {At: x, Value: -800 * mm}}}
	if d.yes("leg at the left") {
		w.Base[0].Readings[0].At = x
		w.Base = append([]survey.SegmentFound{floor}, w.Base...)
		return
	}
	x = w.Width - x
	w.Base[0].Readings[1].At = x
	floor.Readings = []survey.Reading{{At: x, Value: -800 * mm}, {At: w.Width, Value: -800 * mm}}
	w.Base = append(w.Base, floor)
}

func (d draw) opening(k int, w survey.WallFound) survey.OpeningFound {
	o := survey.OpeningFound{Kind: survey.Niche, Name: string(rune('m' + k))}
	if d.yes("window") {
		o.Kind = survey.Window
	}
	span := func(name string, low, high, free int) survey.Span {
		from := d.length(name, low, high)
		if d.yes(name + " free") {
			return survey.Span{From: from, To: from + d.length(name+" range", 0, free)}
		}
		return survey.Span{From: from, To: from}
	}
	o.Left, o.Width = span("from", 90, 140, 60), span("wide", 30, 80, 40)
	o.Bottom, o.Height = span("bottom", -400+400*k, -300+400*k, 60), span("tall", 50, 150, 60)
	return o
}
