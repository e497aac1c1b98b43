package piece

import (
	"slices"
	"strconv"

	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Edge is one boundary edge of a wall: a side of its shape, and where the
// boundary stands as seen from the tile.
type Edge int32

// Facing is where a boundary stands as seen from the tile that it cuts.
type Facing int32

// The four facings.
const (
	OnLeft Facing = iota
	OnRight
	Under
	Over
)

// EdgeOf is the edge of a side that faces tile so.
func EdgeOf(side plane.Side, f Facing) Edge { return Edge(side)<<2 | Edge(f) }

// Side is the side of the shape that the edge lies on.
func (e Edge) Side() plane.Side { return plane.Side(e >> 2) }

// Facing is where the boundary stands as seen from the tile.
func (e Edge) Facing() Facing { return Facing(e & 3) }

// Across tells whether pieces cut by the edge are measured by their width: a
// plumb or leaning edge. Others are measured by their height.
func (e Edge) Across() bool { return e.Facing() <= OnRight }

// Transposed is the edge with x and y swapped.
func (e Edge) Transposed() Edge { return e ^ 2 }

// IsBase tells whether the edge is a segment of base, to its level part, and
// IsStep whether it is the plumb side of a step of the base.
func (e Edge) IsBase(sides []survey.Boundary) bool { return !e.Across() && isBase(e.Side(), sides) }

// IsStep tells whether the edge is the plumb side of a step of the base.
func (e Edge) IsStep(sides []survey.Boundary) bool { return e.Across() && isBase(e.Side(), sides) }

// AtStep tells whether a boundary cuts the piece by the plumb side of a step of the base, and
// nowhere over its level part: beside a tub or at the front of a seat.
func (p *Piece) AtStep(side plane.Side, sides []survey.Boundary) bool {
	is := func(e Edge) bool { return e.Side() == side }
	over := slices.ContainsFunc(p.Up, func(e Edge) bool { return is(e) && e.IsBase(sides) })
	return !over && slices.ContainsFunc(p.Across, func(e Edge) bool { return is(e) && e.IsStep(sides) })
}

func isBase(s plane.Side, sides []survey.Boundary) bool {
	return s >= survey.SideBase && sides[s].Name == "base"
}

// Low tells whether the edge is out of sight. The plumb side of a step is
// always in plain sight.
func (e Edge) Low(sides []survey.Boundary) bool { return sides[e.Side()].Low && !e.IsStep(sides) }

// Name is the edge as the plan file names it: "left", "base 0", "step 0",
// "niche shelf left" and so on.
func (e Edge) Name(sides []survey.Boundary) string {
	side := sides[e.Side()]
	n := int(e.Side() - survey.SideBase)
	switch {
	case e.Side() < survey.SideBase:
		return side.Name
	case side.Part.Is == survey.BaseSegment && side.Name != "base": // of what lies on a wall or is folded out of it
		return side.Name
	case e.IsBase(sides):
		return "base " + strconv.Itoa(n)
	case e.IsStep(sides) && e.Facing() == OnRight: // it rises from the segment before
		return "step " + strconv.Itoa(n-1)
	case e.IsStep(sides):
		return "step " + strconv.Itoa(n)
	}
	if side.Within {
		return side.Name + " " + [...]string{OnLeft: "left", OnRight: "right", Under: "bottom", Over: "top"}[e.Facing()]
	}
	// The left edge of an opening stands on the right of the tile beside it.
	return side.Name + " " + [...]string{OnLeft: "right", OnRight: "left", Under: "top", Over: "bottom"}[e.Facing()]
}

// EdgeBetween is the boundary edge from one corner of a region to the next.
func EdgeBetween(c, d plane.Corner) Edge { return EdgeOf(c.On, facing(c, d)) }

// facing of an edge from c to d of an outer ring, or of a hole: what is inside
// lies to its left.
func facing(c, d plane.Corner) Facing {
	switch {
	case plane.Steep(c, d) && d.Y < c.Y:
		return OnLeft
	case plane.Steep(c, d):
		return OnRight
	case d.X > c.X:
		return Under
	}
	return Over
}
