package bench

import (
	"strconv"

	"coursewright/layout/length"
	"coursewright/layout/stages"
)

// Slide is what the slider of one wall needs. Its numbers count steps of the tape; Per of
// them make the unit.
type Slide struct {
	Wall, Is, Text, StepText string
	Min, Max, Value, Per     string
	Shift                    string // steps from there to what is struck on the wall
	Left, Right              string // what the nudge buttons do
}

// slide lets a wall's start go one period of the bond, under its slide curve.
func (b Bench) slide(i int) Slide {
	w, step := b.Plan.Walls[i], b.TapeStep()
	low, period := b.slideFrom(i), b.Plan.Room.Tile.Width+b.Plan.Room.Joint
	if m := w.Start.Map; m != nil {
		low, period = w.Start.X-(w.Start.Edge-m.Edge), m.Reach
	}
	is := "joint"
	if w.Start.OnTile {
		is = "tile"
	}
	k := length.DivFloor(w.Start.X, step)
	pin := func(n int64) string {
		return "pin " + w.Found.Name + " " + is + "=" + (length.Length(n)*step).Plain(b.System(), 0)
	}
	whole := func(n int64) string { return strconv.FormatInt(n, 10) }
	return Slide{
		Wall: w.Found.Name, Is: is, Text: "START " + b.Tape(b.struckAt(i)), StepText: step.Format(b.System(), 0),
		Min: whole(length.DivFloor(low, step)), Max: whole(length.DivFloor(low+period, step)), Value: whole(k),
		Per:   b.per(),
		Shift: strconv.FormatFloat(float64(b.struckAt(i)-length.Length(k)*step)/float64(step), 'f', 4, 64),
		Left:  pin(k - 1), Right: pin(k + 1),
	}
}

// struckAt is where a wall starts as it is struck, in the answers and on every drawing: the
// left edge of the tile to start with, half a joint or half a tile from what is slid, and in
// most bonds in another course.
func (b Bench) struckAt(i int) length.Length {
	w := b.Plan.Walls[i]
	struck := stages.ToStrike(b.Plan.Room, b.Plan.Setout.Line, b.Plan.Walls)
	if edge, ok := stages.Strike(w, struck.Full); ok {
		return struck.From(w, edge)
	}
	return w.Start.Edge
}

// slip says how far a wall's start may slip before a sliver appears.
func (b Bench) slip(i int) string {
	s := b.Plan.Walls[i].Start
	if s.From >= s.To {
		return ""
	}
	at := b.struckAt(i)
	from, to := at+s.From-s.Edge, at+s.To-s.Edge
	return "no new sliver from " + b.Tape(from) + " to " + b.Tape(to)
}

// slideFrom is the start at the left end of the slide curve: the one of the
// curve's first point that lies within a period left of the wall's own start.
func (b Bench) slideFrom(i int) length.Length {
	s := b.Plan.Walls[i].Start
	period := b.Plan.Room.Tile.Width + b.Plan.Room.Joint
	if len(s.Slide) == 0 || period <= 0 {
		return s.X - period.Half()
	}
	return s.X - length.Mod(s.Edge-s.Slide[0].Edge, period)
}

// per is how many steps of the tape make the unit.
func (b Bench) per() string {
	return strconv.FormatInt(max(1, length.DivFloor(b.System().Unit(), b.TapeStep())), 10)
}
