package bench

import (
	"strconv"

	"coursewright/layout/length"
	"coursewright/layout/plan"
)

// Slide is what the slider of one wall needs. Its whole numbers count steps of
// the tape; Per of them make the unit.
type Slide struct {
	Wall, Is, Says, Text, StepText string
	Min, Max, Value, Per           string
	Left, Right                    string // what the nudge buttons do
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
		Wall: w.Found.Name, Is: is, Says: middleOf(w.Start), Text: middleOf(w.Start) + " at " + b.Tape(w.Start.X), StepText: step.Format(b.System(), 0),
		Min: whole(length.DivFloor(low, step)), Max: whole(length.DivFloor(low+period, step)), Value: whole(k),
		Per:  b.per(),
		Left: pin(k - 1), Right: pin(k + 1),
	}
}

// middleOf is what a start is told by where it slides. What is struck on the wall is a
// tile's edge, half a joint or half a tile beside it.
func middleOf(s plan.Start) string {
	if s.OnTile {
		return "middle of a tile"
	}
	return "middle of a joint"
}

// slip says how far a wall's start may slip before a sliver appears.
func (b Bench) slip(i int) string {
	s := b.Plan.Walls[i].Start
	if s.From >= s.To {
		return ""
	}
	from, to := s.X+s.From-s.Edge, s.X+s.To-s.Edge
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
