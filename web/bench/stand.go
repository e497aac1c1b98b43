package bench

import (
	"fmt"
	"strconv"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/page"
)

// Where courses stand: what the form offers to type over, by the plan as it is.

// setPath is the path of what stands on a wall.
func setPath(i int) string { return form.At("walls", i) + ".set" }

// setLine is what the closed section shows.
func setLine(b Bench) string {
	var out []string
	for _, w := range b.Typed.Walls {
		if w.Set != nil {
			out = append(out, w.Name+" up to course "+w.Set.Course)
		}
	}
	if out == nil {
		return "nothing stands yet"
	}
	return strings.Join(out, ", ")
}

// planned is a wall of the plan, if the plan is of the walls as typed.
func (b Bench) planned(i int) (layout.Wall, bool) {
	if i >= len(b.Plan.Walls) || i >= len(b.Typed.Walls) || b.Plan.Walls[i].Found.Name != b.Typed.Walls[i].Name ||
		b.Plan.Room.Bond.Plumb || len(b.Plan.Walls[i].Pieces) == 0 {
		return layout.Wall{}, false
	}
	return b.Plan.Walls[i], true
}

// standDo is the button that says a wall's courses stand as planned, up to the
// first full course of the room: that is the one set first, and its tiles can be
// measured whole. It is empty where the plan knows no such course.
func (b Bench) standDo(i int) string {
	w, ok := b.planned(i)
	if !ok {
		return ""
	}
	full, found := stages.FirstFull(b.Plan.Room, b.Plan.Setout.Line, b.Plan.Walls)
	p, whole := stages.StartTile(w, full)
	if !found || !whole {
		return ""
	}
	return b.standAs(i, p.Course, p.Tile.Top, p.Tile.Top, "left edge", p.Tile.Left)
}

// oneMoreDo is the button that says one course more stands, as far off the line
// as the one before. It is empty while what is typed does not read, and under
// the head.
func (b Bench) oneMoreDo(i int) string {
	w, ok := b.planned(i)
	if !ok || w.Found.Set == nil || len(b.Faults) > 0 {
		return ""
	}
	set, typed := w.Found.Set, b.Typed.Walls[i].Set
	room := b.Plan.Room
	at, err := page.Parse(b.Job, setPath(i)+".start.at")
	if typed == nil || err != nil || w.Pieces[len(w.Pieces)-1].Row <= set.Row {
		return ""
	}
	pitch, along := room.Tile.Height+room.Joint, room.Tile.Width+room.Joint
	at += room.Bond.Shift(1, b.Plan.Setout.Hand, along)
	for at > w.Found.Width {
		at -= along
	}
	return b.standAs(i, set.Course+1, set.Left+pitch, set.Right+pitch, typed.Start.Is, max(at, 0))
}

// standAs writes the button for a course whose top edge stands at two heights.
func (b Bench) standAs(i, course int, left, right length.Length, is string, at length.Length) string {
	hand := ""
	if b.Plan.Room.Bond.Num > 0 {
		hand = map[survey.Hand]string{survey.Left: "left", survey.Right: "right"}[b.Plan.Setout.Hand]
	}
	return "stand " + form.At("walls", i) + "=" +
		strings.Join([]string{strconv.Itoa(course), b.findable(left), b.findable(right), is, b.findable(at), hand}, ";")
}

// findable writes a length as it stands where a tape shows it, and else to 1/64
// in or 0.1 mm, to be typed over.
func (b Bench) findable(l length.Length) string {
	step := length.Inch / 64
	if b.System() == length.Metric {
		step = length.Millimetre / 10
	}
	return l.Plain(b.System(), step)
}

// standsText says what was made of the two heights of a wall.
func (b Bench) standsText(i int) string {
	left, err := page.Parse(b.Job, setPath(i)+".left")
	right, other := page.Parse(b.Job, setPath(i)+".right")
	if err != nil || other != nil {
		return ""
	}
	mean := (left + right).Half()
	middle := "; its middle is " + b.Near(mean.Abs()) + map[bool]string{true: " under", false: " over"}[mean < 0] + " the level line"
	switch off := right - left; {
	case off > 0:
		return fmt.Sprintf("%s higher at the right end%s.", b.Near(off), middle)
	case off < 0:
		return fmt.Sprintf("%s lower at the right end%s.", b.Near(-off), middle)
	}
	return "Level" + middle + "."
}

// heldBy says what keeps a start or the course line where it is: tile that stands, a pin of the job's own, or the set-out held.
func heldBy(set, own bool) string {
	switch {
	case set:
		return "as set"
	case own:
		return "pinned"
	}
	return "held"
}
