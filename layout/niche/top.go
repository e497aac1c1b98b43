package niche

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// crown is the top of a wall in the making, with where its edges are open: those are
// made as the front is, the others keep a soft joint from a wall.
type crown struct {
	box
	top               *survey.TopFound
	bond              *count.Top // where the wall's bond goes on upon it, or nil
	left, right, back bool       // open
}

// topOf lays the top of a wall, or gives nil where its head has none.
func topOf(room survey.Room, s plan.Setout, wall int, w *plan.Wall) *plan.Top {
	found := w.Found.Head.Top
	if found == nil {
		return nil
	}
	head := w.Start.Placed.Head
	front := w.Found.TopFront(room, head)
	laid, at, edge := s.At(room, wall, w.Start.At(0), head-1)
	on := *w
	on.Start.Edge = edge
	c := crown{top: found, bond: count.NewTop(&laid, w.Found, s.Hand), left: !w.Found.Left.Meets, right: !w.Found.Right.Meets, back: found.Open()}
	c.box = box{room: laid, setout: at, wall: &on, gap: room.Joint, letter: w.Found.Letter + "-T", lies: &found.Face,
		over: overLine(room, s, wall, head-1)}
	if found.Gap != nil {
		c.gap = *found.Gap
	}
	flat, begins := w.Found.FlatTop(laid, w.Start.Placed)
	c.hole = survey.Edges{Left: begins, Right: begins + flat.Width, Bottom: head, Top: head}
	f := c.face(front)
	if found.Face.Slab > 0 {
		c.slab(&f)
		if found.Corner != nil {
			f.Pieces[0].Face = f.Shape.Region
		}
	} else {
		c.lay(&f, flat)
	}
	c.number(&f)
	c.mitred(&f)
	c.trim(&f)
	f.Runs = plan.FindRuns(c.roomOf(&f), f.Wall)
	return &plan.Top{Face: f, Found: found, Front: front, Skip: c.skip, Less: c.less, Rise: found.Rise(found.Deepest(), room.Units)}
}

// lay cuts the top as the bond goes on: from the course after the wall's highest, or,
// where that leaves something poor, from another. One with a tile or bond of its own
// begins where that is best by the order of merit. The front row is whole, or cut where that leaves less
// that is poor.
func (c *crown) lay(f *plan.Face, flat survey.WallFound) {
	switch own := c.roomOf(f); {
	case c.top.Corner != nil:
		c.inCorner(f)
		return
	case c.bond != nil:
		on := c.bond.At(count.Setting{Line: c.line(), Edge: c.wall.Start.Edge, Placed: c.wall.Start.Placed})
		c.skip, c.less = on.Skip, on.Front
	case f.Own && own.Bond.Coursed():
		edge, less := count.BestOnTop(&own, flat, c.top, c.setout.Hand)
		c.start, c.less = &edge, less
	}
	c.cut(f)
}

// face is the top before anything is laid on it.
func (c *crown) face(front length.Length) plan.Face {
	found := c.top.Face
	f := plan.Face{Is: survey.WallTop, Tile: c.room.Tile, Joint: c.room.Joint, Bond: c.room.Bond, Own: found.Own(), Slab: found.Slab > 0,
		Origin: plane.Point{X: c.hole.Left, Y: front}}
	f.Found = survey.WallFound{Name: c.top.Of(c.wall.Found.Name), Letter: c.letter, Order: c.wall.Found.Order,
		Left: survey.EndFound{Beyond: -1}, Right: survey.EndFound{Beyond: -1}}
	if found.Tile != nil {
		f.Tile, f.Joint = *found.Tile, found.Joint
	}
	if found.Bond != nil {
		f.Bond = *found.Bond
	}
	c.sides(&f)
	if c.top.Corner != nil {
		c.triangle(&f)
	} else {
		c.region(&f)
	}
	f.Found.Width = f.Outline.Bounds().Width()
	return f
}

// keeps is how far the tile keeps from an edge that is open, or from a wall.
func (c *crown) keeps(open bool) length.Length {
	if open {
		return c.top.Behind(c.room)
	}
	return c.gap
}

// region is the top between the walls and finished edges round it, and what of that is
// left to tile. The back may run at a slant.
func (c *crown) region(f *plan.Face) {
	wide := c.hole.Right - c.hole.Left
	ring := func(left, right, front, back length.Length) plane.Region {
		corner := func(x, y length.Length, on plane.Side) plane.Corner {
			return plane.Corner{Point: plane.Point{X: x, Y: y}, On: on}
		}
		return plane.Region{{corner(left, front, survey.SideBase), corner(right, front, survey.SideRight),
			corner(right, c.deep(right, wide)-back, survey.SideHead), corner(left, c.deep(left, wide)-back, survey.SideLeft)}}
	}
	f.Outline = ring(0, wide, 0, 0)
	f.Shape.Solid = ring(c.keeps(c.left), wide-c.keeps(c.right), c.keeps(true), c.keeps(c.back))
	f.Shape.Region, f.Shape.Visible = f.Shape.Solid, f.Shape.Solid
}

// deep is how deep the top is so far from its left end, to the nearest unit.
func (c *crown) deep(x, wide length.Length) length.Length {
	return survey.At([]survey.Reading{{At: 0, Value: c.top.Left}, {At: wide, Value: c.top.Right}}, x)
}

// sides names what stands round the top, and which soft joints are counted here: that
// at the back is counted where a wall of the room stands on a seat.
func (c *crown) sides(f *plan.Face) {
	c.bound(f, "left", "right", "back", "front")
	open := [...]bool{true, c.left, c.right, c.back, true}
	for i, is := range open {
		side := &f.Shape.Sides[i]
		switch {
		case i == 0:
		case is:
			side.Kind, side.Meets, side.Gap, side.Trim = survey.OutsideCorner, false, 0, c.strip(plane.Side(i))
			if c.top.How == survey.Bullnose && c.top.Laps {
				side.Kind = survey.Bullnose
			}
		case plane.Side(i) != survey.SideHead || !c.stoodOn():
			f.Soft = append(f.Soft, plane.Side(i))
		}
	}
}

// stoodOn tells whether tile of the room stands on a seat.
func (c *crown) stoodOn() bool {
	for _, w := range c.room.Walls {
		for _, s := range w.Base {
			if s.Meets == survey.Seat {
				return true
			}
		}
	}
	return false
}

// strip is the trim along an open edge of the top, or nil: a profile along its front
// stands on the wall.
func (c *crown) strip(side plane.Side) *survey.TrimFound {
	switch {
	case c.top.How == survey.Profile && side != survey.SideBase, c.top.How == survey.Bullnose && c.top.Laps:
		return c.top.Strip
	}
	return nil
}

// mitred marks the open edges that are mitred as those of a wall are: its head is the
// back of the top.
func (c *crown) mitred(f *plan.Face) {
	laid := f.Shape.Region.Bounds()
	f.Start.Placed = survey.Placed{Left: laid.Left, Right: laid.Right, Head: laid.Top}
	if c.top.How != survey.Mitre {
		return
	}
	edge := survey.OutsideFound{Next: -1, How: survey.Mitre, Angle: 90}
	if c.left {
		f.Found.Left.Outside = &edge
	}
	if c.right {
		f.Found.Right.Outside = &edge
	}
	if c.back {
		f.Found.Head.Top = c.top
	}
}

// trim lays the trim along the open edges. It is laid as round a wall whose head is the
// front of the top and whose base is its back.
func (c *crown) trim(f *plan.Face) {
	if c.top.Strip == nil {
		return
	}
	laid, wide := f.Shape.Region.Bounds(), f.Found.Width
	end := func(side plane.Side, at length.Length, open bool) survey.EndFound {
		if !open {
			return survey.EndFound{Meets: true, Gap: c.gap, Beyond: -1}
		}
		return survey.EndFound{Stops: survey.Span{From: at, To: at}, Trim: c.strip(side), Beyond: -1}
	}
	upside := survey.WallFound{Letter: f.Found.Letter, Width: wide, Left: end(survey.SideLeft, laid.Left, c.left), Right: end(survey.SideRight, laid.Right, c.right)}
	c.slant(&upside)
	upside.Head = survey.HeadFound{Stops: survey.Span{From: -laid.Bottom, To: -laid.Bottom}, Trim: c.strip(survey.SideBase)}
	back := survey.SegmentFound{Meets: survey.Corner, Gap: c.gap, Readings: []survey.Reading{{At: 0, Value: -c.top.Left}, {At: wide, Value: -c.top.Right}}}
	if c.back && c.strip(survey.SideHead) != nil {
		back.Cove, back.Gap = c.top.Strip, c.keeps(true)
		back.Rise = back.Gap
	}
	upside.Base = []survey.SegmentFound{back}
	placed := survey.Placed{Left: laid.Left, Right: laid.Right, Head: -laid.Bottom}
	stack := f.Bond.Coursed() && f.Bond.Num == 0
	f.Trim = trim.Of(upside, placed, trim.Tile{Units: c.room.Units, Width: f.Tile.Width, Height: f.Tile.Height, Joint: c.room.Joint,
		Start: f.Start.Edge, Plumb: stack})
	for i := range f.Trim {
		f.Trim[i].ID = fmt.Sprintf("T-%s-%02d", f.Found.Letter, i+1)
		f.Trim[i].Face = over(f.Trim[i].Face)
	}
}

// over is a region turned over, heights into depths.
func over(r plane.Region) plane.Region {
	out := make(plane.Region, len(r))
	for i, ring := range r {
		n := len(ring)
		for k := range ring {
			c := ring[n-1-k]
			c.Y, c.On = -c.Y, ring[(2*n-2-k)%n].On // the edge from a corner is the one that came to it
			out[i] = append(out[i], c)
		}
	}
	return out
}
