package drawing

import (
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// JointLines are those of one wall, which a mark snaps to while it is
// dragged. Level and Plumb hold where a joint begins, ascending: the upper edge
// of the tile under it, the right edge of the tile left of it.
type JointLines struct {
	Width length.Length
	Level []length.Length
	Plumb []length.Length
}

// jointsOf lists the joint lines of a wall as far as a mark of it may go.
func jointsOf(plan layout.Plan, w layout.Wall) JointLines {
	j := JointLines{Width: plan.Room.Joint}
	box := reachOf(w)
	along, across := span{box.Left, box.Right}, span{box.Bottom, box.Top}
	if !plan.Room.Bond.Coursed() {
		return j // a pattern has no line from end to end
	}
	line, edge := plan.Setout.Line, w.Start.Edge
	if plan.Room.Bond.Plumb {
		along, across, line, edge = across, along, edge, line
	}
	var ends, tops []length.Length
	phases := map[int]bool{}
	for _, r := range bond.Of(plan.Room, plan.Setout.Hand).Rows(line, edge, across.from, across.to) {
		tops = append(tops, r.High)
		if !phases[r.Phase] {
			ends = append(ends, endsOf(r, along)...)
		}
		phases[r.Phase] = true
	}
	j.Plumb, j.Level = ascending(ends), ascending(tops)
	if plan.Room.Bond.Plumb {
		j.Plumb, j.Level = j.Level, j.Plumb
	}
	return j
}

// endsOf lists where the tiles of a row end in a stretch.
func endsOf(r bond.Row, in span) []length.Length {
	var out []length.Length
	end := r.First + r.Width
	for x := in.from + length.Mod(end-in.from, r.Pitch); x <= in.to; x += r.Pitch {
		out = append(out, x)
	}
	return out
}

// span is a stretch of wall.
type span struct{ from, to length.Length }

// reachOf is how far the marks of a wall may go: its extents, and the ranges of
// its free ends and head.
func reachOf(w layout.Wall) plane.Rect {
	box := extents(w)
	widen := func(s survey.Span, from, to *length.Length) {
		*from, *to = min(*from, s.From), max(*to, s.To)
	}
	if e := w.Found.Left; !e.Meets {
		widen(e.Stops, &box.Left, &box.Right)
	}
	if e := w.Found.Right; !e.Meets {
		widen(e.Stops, &box.Left, &box.Right)
	}
	if e := w.Found.Head; !e.Meets {
		widen(e.Stops, &box.Bottom, &box.Top)
	}
	return box
}

func ascending(list []length.Length) []length.Length {
	slices.Sort(list)
	return slices.Compact(list)
}

// Side is the side of a joint at which a dragged mark stands.
type Side uint8

// The sides: where the tile before the joint ends, where the tile after it
// begins.
const (
	Ends Side = iota
	Begins
)

// String is the side's name in a drawing.
func (s Side) String() string { return [...]string{"ends", "begins"}[s] }

// Snap says to which side of the joints a handle goes along an axis, and from
// where its figure is counted: 0 but for sizes.
type Snap struct {
	Axis string // "x" or "y"
	Side Side
	From length.Length
}

// along are the snaps of a handle on the axes that it has.
func along(axes string, x, y Snap) []Snap {
	var out []Snap
	for _, s := range []Snap{x, y} {
		if strings.Contains(axes, s.Axis) {
			out = append(out, s)
		}
	}
	return out
}
