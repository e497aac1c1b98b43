package niche

import (
	"math"
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// triangle is the region of a top in the corner of two walls: between them and its
// finished front, and what of that is left to tile. Nothing lies along its back.
func (c *crown) triangle(f *plan.Face) {
	corner := c.top.Corner
	f.Outline = plane.Region{corner.Inset(0, 0)}
	f.Shape.Solid = plane.Region{corner.Inset(c.keeps(true), c.gap)}
	f.Shape.Region, f.Shape.Visible = f.Shape.Solid, f.Shape.Solid
	f.Soft = []plane.Side{survey.SideLeft, survey.SideRight}
}

// inCorner lays a top in a corner: tile by tile, because hardly one of its cuts is
// square. Its bond goes on from the wall as far as law 5 says; with a tile or a bond of
// its own it begins so that a tile or a joint is in the middle of its front, or in line
// with the corner, or else at any mark of the tape. Of these that is taken which leaves
// fewest pieces that are too small, then fewest slivers, then, but at a mark of the tape,
// fewest that are cut; of equal ones the first.
func (c *crown) inCorner(f *plan.Face) {
	room := c.roomOf(f)
	room.Bond = c.returned(f)
	f.Bond = room.Bond
	pattern := bond.For(room, c.setout.Hand)
	rule := piece.RuleFor(room, survey.WallFound{}, f.Shape.Sides)
	best := [3]int{math.MaxInt}
	for _, begin := range c.begins(f, room) {
		at := *c
		at.skip, at.start = begin.skip, begin.edge
		line, edge := at.phase(f)
		pieces, gaps := piece.Lay(f.Shape, pattern, pattern.Origin(line, edge), rule)
		if poor := poorly(pieces, begin.tape); slices.Compare(poor[:], best[:]) < 0 {
			best, c.skip = poor, at.skip
			f.Pieces, f.Gaps, f.Line, f.Start.Edge = pieces, gaps, line, edge
		}
	}
}

// begin is where the tile of a top in a corner may begin: after how many courses of the
// wall's bond, or, of a tile or bond of its own in courses, with which edge.
type begin struct {
	skip int
	edge *length.Length
	tape bool // at any mark of it
}

// begins lists them, the best known first.
func (c *crown) begins(f *plan.Face, room survey.Room) (all []begin) {
	switch {
	case !room.Bond.Coursed():
		return []begin{{}}
	case !f.Own:
		for skip := range int(max(1, room.Bond.Den)) {
			all = append(all, begin{skip: skip})
		}
		return all
	}
	add := func(edge length.Length, tape bool) { all = append(all, begin{edge: &edge, tape: tape}) }
	box, tile, joint := f.Shape.Solid.Bounds(), f.Tile.Width, f.Joint
	for _, middle := range []length.Length{(box.Left + box.Right).Half(), c.top.Corner.Peak.X} {
		add(middle-tile.Half(), false)
		add(middle+joint.Half(), false)
	}
	step := max(c.room.Tape, (tile+joint)/mostBegins+1)
	for edge := box.Left; edge < box.Left+tile+joint; edge += step {
		add(edge, true)
	}
	return all
}

// mostBegins bounds how many marks of the tape are tried.
const mostBegins = 64

// poorly is how many pieces are too small to work, how many are slivers, and how many are
// cut; at a mark of the tape those count as more than all others.
func poorly(pieces []piece.Piece, tape bool) (poor [3]int) {
	for i := range pieces {
		for n, is := range []bool{pieces[i].Unworkable, pieces[i].Sliver, !pieces[i].Whole} {
			if is {
				poor[n]++
			}
		}
	}
	if tape {
		poor[2] = math.MaxInt
	}
	return poor
}

// slant lets the ends of a top in a corner lean, as the top stands turned over, its
// front for a head: the trim along the front is cut to the walls at its ends.
func (c *crown) slant(upside *survey.WallFound) {
	corner := c.top.Corner
	if corner == nil {
		return
	}
	p := corner.Peak
	lean := func(e *survey.EndFound, by length.Length) {
		e.Lean = []survey.Reading{{At: -p.Y, Value: by}, {At: 0, Value: 0}}
		long := plane.Distance(plane.Point{}, plane.Point{X: by, Y: p.Y})
		e.Gap = length.Length(c.gap.Times(long) / length.Area(p.Y)) // along the front
	}
	lean(&upside.Left, p.X)
	lean(&upside.Right, p.X-corner.Wide)
}
