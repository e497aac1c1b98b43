package survey

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Shape is what one wall leaves for tile once its marks are placed.
type Shape struct {
	Region  plane.Region // outline less openings, pipes and gaps
	Solid   plane.Region // the region without the pipes' holes, for measuring
	Visible plane.Region // the solid region less the lap cover at its ends
	Sides   []Boundary   // what plane.Side n means, at index n; index 0 is the factory edge
}

// Boundary is one thing that edges of a region lie on.
type Boundary struct {
	Name  string // "left", "right", "base", "head", "niche NAME", "window NAME", "pipe NAME"
	Part  Part
	Kind  Kind
	Meets bool // it meets something, so sealant may fill up to the limit
	Gap   length.Length
	Trim  *TrimFound    // set in pieces along it, or nil
	Under length.Length // the soft joint under a cove that stands along it
	Low   bool          // out of sight: what it cuts is judged after all that is seen

	Within bool // an edge of a band, for the band's own tile
}

// Front names the plumb side of a step of the base: "tub's front", "seat's front".
func (b Boundary) Front() string { return string(b.Kind) + "'s front" }

// The sides every wall has. Each further segment of base and each opening
// follow in the order of the job file.
const (
	SideFactory plane.Side = iota
	SideLeft
	SideRight
	SideHead
	SideBase // the first segment of base
)

// PipeClear is how far tile stays clear of a pipe's diameter all round:
// ANSI A108.02 4.3 on penetrations, at least 1/8 in, under an escutcheon.
func PipeClear(units length.System) length.Length {
	if units == length.Metric {
		return 3 * length.Millimetre
	}
	return length.Inch / 8
}

// Shape is the wall's region with its marks placed. It is empty where the
// boundaries leave nothing.
func (w WallFound) Shape(units length.System, p Placed) Shape {
	return w.Drilled(units, w.Undrilled(p))
}

// Drilled is a shape of the wall with the holes for its pipes.
func (w WallFound) Drilled(units length.System, s Shape) Shape {
	first := SideBase + plane.Side(len(w.Base))
	for i, o := range w.Openings {
		if o.Kind == Pipe {
			ring := plane.Circle(plane.Point{X: o.At, Y: o.Up}, o.Diameter+2*PipeClear(units), 0)
			s.Region = s.Region.Less(ring, first+plane.Side(i))
		}
	}
	return s
}

// Undrilled is the shape before any hole is drilled for a pipe.
func (w WallFound) Undrilled(p Placed) Shape {
	s := Shape{Sides: w.Sides()}
	s.Solid = w.outline(p, w.leftEdge(p, false), w.rightEdge(p, false))
	s.Visible = s.Solid
	if w.Left.Cover > 0 || w.Right.Cover > 0 {
		s.Visible = w.outline(p, w.leftEdge(p, true), w.rightEdge(p, true))
	}
	first := SideBase + plane.Side(len(w.Base))
	for i, o := range w.Openings {
		if o.Kind == Pipe {
			continue
		}
		e := p.Openings[i]
		s.Region = s.Solid
		s = s.Less(plane.Rect{Left: e.Left, Bottom: e.Bottom, Right: e.Right, Top: e.Top}, first+plane.Side(i))
	}
	s.take(w)
	s.Region = s.Solid
	return s
}

// Less is the shape without an opening whose edges lie on a side.
func (s Shape) Less(opening plane.Rect, on plane.Side) Shape {
	same := func(a, b plane.Region) bool { return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0]) }
	ring, out := opening.Ring(0), s
	out.Solid = s.Solid.Less(ring, on)
	out.Visible, out.Region = out.Solid, out.Solid
	if !same(s.Visible, s.Solid) {
		out.Visible = s.Visible.Less(ring, on)
	}
	if !same(s.Region, s.Solid) {
		out.Region = s.Region.Less(ring, on)
	}
	return out
}

// Sides lists the boundaries of the wall: what plane.Side n means, at index n.
func (w WallFound) Sides() []Boundary {
	sides := []Boundary{{Name: "factory"}, w.Left.boundary("left", LeftEnd), w.Right.boundary("right", RightEnd),
		{Name: "head", Part: Part{Is: HeadEdge}, Kind: kindOf(w.Head.Meets, Ceiling, finishOf(w.Head.Finish, w.Head.Trim)), Meets: w.Head.Meets, Gap: w.Head.Gap, Trim: w.Head.Trim, Low: w.Head.Sight == Low}}
	for i, b := range w.Base {
		sides = append(sides, b.boundary(i))
	}
	for i, o := range w.Openings {
		sides = append(sides, Boundary{Name: o.Key(), Part: Part{OpeningEdge, i}, Kind: o.Kind, Low: o.Sight == Low})
	}
	for i, t := range w.Taken {
		edge := Boundary{Name: "band " + t.Name, Part: Part{BandEdge, i}}
		sides = append(sides, edge)
		edge.Within = true
		sides = append(sides, edge)
	}
	return sides
}

func (e EndFound) boundary(name string, is PartIs) Boundary {
	return Boundary{Name: name, Part: Part{Is: is}, Kind: kindOf(e.Meets, Corner, e.turnedOr(finishOf(e.Finish, e.Trim))), Meets: e.Meets, Gap: e.Gap, Trim: e.Trim, Low: e.Sight == Low}
}

func (s SegmentFound) boundary(i int) Boundary {
	b := Boundary{Name: "base", Part: Part{BaseSegment, i}, Kind: s.Meets, Meets: s.Meets != "", Gap: s.Gap, Low: s.Sight == Low}
	if s.Cove != nil { // tile stands on the cove, and that over the base
		b.Meets, b.Gap, b.Under, b.Trim = false, 0, s.Foot(), s.Cove
	}
	return b
}

func kindOf(meets bool, what, finish Kind) Kind {
	if meets {
		return what
	}
	return finish
}

// chain is a boundary as a string of corners.
type chain []plane.Corner

const beyond = 60 * length.Metre // farther out than any wall

func (w WallFound) leftEdge(p Placed, visible bool) chain {
	e := w.Left
	if !e.Meets {
		return plumb(p.Left, SideLeft)
	}
	in := e.Gap + e.Behind
	if visible {
		in = max(in, e.Cover)
	}
	return e.edge(0, in, SideLeft)
}

func (w WallFound) rightEdge(p Placed, visible bool) chain {
	e := w.Right
	if !e.Meets {
		return plumb(p.Right, SideRight)
	}
	in := e.Gap + e.Behind
	if visible {
		in = max(in, e.Cover)
	}
	return e.edge(w.Width, -in, SideRight)
}

func plumb(x length.Length, on plane.Side) chain {
	return chain{{Point: plane.Point{X: x, Y: -beyond}, On: on}, {Point: plane.Point{X: x, Y: beyond}, On: on}}
}

// edge is a corner as it leans, moved by in; below the lowest reading and above
// the highest the corner is taken as plumb. From the bottom upwards.
func (e EndFound) edge(x, in length.Length, on plane.Side) chain {
	if len(e.Lean) == 0 {
		return plumb(x+in, on)
	}
	c := chain{{Point: plane.Point{X: x + in + e.Lean[0].Value, Y: -beyond}, On: on}}
	for _, r := range e.Lean {
		c = append(c, plane.Corner{Point: plane.Point{X: x + in + r.Value, Y: r.At}, On: on})
	}
	last := e.Lean[len(e.Lean)-1]
	return append(c, plane.Corner{Point: plane.Point{X: x + in + last.Value, Y: beyond}, On: on})
}

// profile is the base with its gaps from left to right. At a step the higher
// segment keeps its gap to the side too, as the front of a tub does.
func (w WallFound) profile() chain {
	var c chain
	first, last := w.bonded()
	for i := first; i <= last; i++ {
		s, on := w.Base[i], SideBase+plane.Side(i)
		from, to := s.Readings[0].At, s.Readings[len(s.Readings)-1].At
		if i == first {
			from = -beyond
		} else {
			from = w.Step(i-1, from)
		}
		if i == last {
			to = beyond
		} else {
			to = w.Step(i, to)
		}
		c = append(c, s.top(from, to, on)...)
		if i < last && w.Rises(i) {
			c[len(c)-1].On = on + 1
		}
	}
	return c
}

// Rises tells whether the base goes up from segment i to the next.
func (w WallFound) Rises(i int) bool {
	a, b := w.Base[i], w.Base[i+1]
	return a.Readings[len(a.Readings)-1].Value+a.Gap < b.Readings[0].Value+b.Gap
}

// Step is where the edge between segment i and the next stands, whose readings meet at x:
// in front of the higher of the two, whatever stands on that.
func (w WallFound) Step(i int, x length.Length) length.Length {
	a, b := w.Base[i], w.Base[i+1]
	switch {
	case w.Rises(i):
		return x - b.Foot()
	case a.Readings[len(a.Readings)-1].Value+a.Gap > b.Readings[0].Value+b.Gap:
		return x + a.Foot()
	}
	return x
}

// top is the segment's edge from one x to another, held level outside its readings.
func (s SegmentFound) top(from, to length.Length, on plane.Side) chain {
	corner := func(x length.Length) plane.Corner {
		return plane.Corner{Point: plane.Point{X: x, Y: At(s.Readings, x) + s.Gap}, On: on}
	}
	c := chain{corner(from)}
	for _, r := range s.Readings {
		if from < r.At && r.At < to {
			c = append(c, corner(r.At))
		}
	}
	return append(c, corner(to))
}

// head is the top edge from left to right.
func (w WallFound) head(p Placed) chain {
	if !w.Head.Meets {
		return chain{{Point: plane.Point{X: -beyond, Y: p.Head}, On: SideHead}, {Point: plane.Point{X: beyond, Y: p.Head}, On: SideHead}}
	}
	s := SegmentFound{Gap: -w.Head.Gap, Readings: w.Head.Readings}
	return s.top(-beyond, beyond, SideHead)
}

// At is the value at a place, straight between readings and held level outside
// them, to the nearest unit.
func At(readings []Reading, at length.Length) length.Length {
	last := len(readings) - 1
	switch {
	case at <= readings[0].At:
		return readings[0].Value
	case at >= readings[last].At:
		return readings[last].Value
	}
	i := 1
	for readings[i].At < at {
		i++
	}
	a, b := readings[i-1], readings[i]
	run := b.At - a.At
	n := 2*int64(at-a.At)*int64(b.Value-a.Value) + int64(run)
	return a.Value + length.Length(length.DivFloor(length.Length(n), 2*run))
}

// outline joins base, right end, head and left end into one ring.
func (w WallFound) outline(p Placed, left, right chain) plane.Region {
	area := between(w.profile(), w.head(p))
	area = trim(area, left, true)
	return trim(area, right, false).Straight()
}

// between is the region over the base and under the head, far beyond the ends.
func between(base, head chain) plane.Region {
	ring := plane.Ring(append(chain{}, base...))
	ring[len(ring)-1].On = 0
	for i := len(head) - 1; i >= 0; i-- {
		c := head[i]
		c.On = SideHead
		if i == 0 {
			c.On = 0
		}
		ring = append(ring, c)
	}
	return plane.Region{ring}
}

// trim cuts the area off along an end, stretch by stretch between its
// readings, and joins what is kept.
func trim(area plane.Region, end chain, keepRight bool) plane.Region {
	if len(end) == 2 && end[0].X == end[1].X {
		if keepRight {
			return area.LessLeft(end[0].X, end[0].On)
		}
		return area.LessRight(end[0].X, end[0].On)
	}
	for i := 1; i < len(end); i++ {
		area = area.Less(outside(end[i-1], end[i], keepRight), end[0].On)
	}
	return area
}

// outside is the strip beyond one stretch of an end.
func outside(a, b plane.Corner, keepRight bool) plane.Ring {
	if keepRight {
		return plane.Ring{{Point: plane.Point{X: -2 * beyond, Y: a.Y}}, a, b, {Point: plane.Point{X: -2 * beyond, Y: b.Y}}}
	}
	return plane.Ring{a, {Point: plane.Point{X: 2 * beyond, Y: a.Y}}, {Point: plane.Point{X: 2 * beyond, Y: b.Y}}, b}
}
