package drawing

import (
	"maps"
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

// jointsOf lists the joint lines of a wall as far as a mark of it may go: along the
// plumb and the level sides of its tiles.
func jointsOf(plan layout.Plan, w layout.Wall) JointLines {
	pattern := bond.For(plan.Room, plan.Setout.Hand)
	sides := make([]tileSides, len(pattern.Tiles))
	for i, t := range pattern.Tiles {
		sides[i] = sidesOf(t.Outline)
	}
	plumb, level := map[length.Length]bool{}, map[length.Length]bool{}
	for _, edge := range startsOf(w) {
		pattern.Each(pattern.Origin(plan.Setout.Line, edge), reachOf(w), func(place int, at plane.Point) {
			s := sides[pattern.Places[place].Tile]
			for _, x := range s.right {
				if w.Start.At(at.X+x) == edge {
					plumb[at.X+x] = true
				}
			}
			for _, y := range s.top {
				level[at.Y+y] = true
			}
		})
	}
	return JointLines{Width: plan.Room.Joint, Level: slices.Sorted(maps.Keys(level)), Plumb: slices.Sorted(maps.Keys(plumb))}
}

// startsOf are where the bond of a wall starts, and where it begins afresh beyond strips.
func startsOf(w layout.Wall) []length.Length {
	out := []length.Length{w.Start.Edge}
	for _, a := range w.Start.Anew {
		out = append(out, a.Edge)
	}
	return out
}

// tileSides are where a tile has a plumb right side and a level upper side.
type tileSides struct{ right, top []length.Length }

// sidesOf reads them off an outline, which runs counter-clockwise.
func sidesOf(outline plane.Ring) tileSides {
	var s tileSides
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		switch {
		case a.X == b.X && a.Y < b.Y:
			s.right = append(s.right, a.X)
		case a.Y == b.Y && a.X > b.X:
			s.top = append(s.top, a.Y)
		}
	}
	return s
}

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
