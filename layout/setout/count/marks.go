package count

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Marks judges marks: where the edges of tiles stand to the ends of the wall and to
// its openings, and how easily the start is found again.
type Marks struct{ w *facts }

// add adds the terms that are read from where tile edges stand. Box holds
// the tile field.
func (m *Marks) add(to *merit.Merit, s Setting, box plane.Rect) {
	x, y := m.w.level(s.Edge), m.w.upright(s.Line)
	field := m.w.tiled.Placed(s.Placed)
	to.Exposed, to.Built = m.exposed(x, s.Placed), m.cutBeside(x)
	for i := range m.w.typed.Openings {
		o := &m.w.typed.Openings[i]
		if o.Kind == survey.Pipe {
			continue
		}
		e := s.Placed.Openings[i]
		n, built := off(x, o.Left.Free() || o.Width.Free(), e.Left, e.Right, o.TiledAcross(e, field))
		to.Openings, to.Built = to.Openings+n, to.Built+built
		n, built = off(y, o.Bottom.Free() || o.Height.Free(), e.Bottom, e.Top, o.TiledUp(e, field))
		to.Openings, to.Built = to.Openings+n, to.Built+built
	}
	to.Near = m.w.mark(m.near(s.Placed, box))
	to.Find = m.find(x, box)
}

// off is what one direction of an opening adds: to free openings off the lines
// where one of its marks is free, else edge by edge to built ones, of the edges that have tile beyond them.
func off(g grid, free bool, low, high length.Length, tiled survey.Sides) (n, built int) {
	if free {
		return g.off(low, high), 0
	}
	if tiled.Low && !g.ends(low) {
		built++
	}
	if tiled.High && !g.begins(high) {
		built++
	}
	return 0, built
}

// Fixed is what measured marks give with a start on a line, and a top whose ends are measured.
func (m *Marks) Fixed(line, edge length.Length) merit.Merit {
	sum := m.w.top.least(edge)
	x, y := m.w.level(edge), m.w.upright(line)
	sum.Built += m.cutBeside(x)
	for i := range m.w.typed.Openings {
		sum.Built += m.builtAcross(i, x) + m.builtUp(i, y)
	}
	return sum
}

// builtAcross counts the plumb edges of a measured opening that are off the lines wherever the ends of the wall
// stand, and builtUp the level ones.
func (m *Marks) builtAcross(opening int, x grid) (built int) {
	o := &m.w.typed.Openings[opening]
	if o.Kind == survey.Pipe || o.Left.Free() || o.Width.Free() {
		return 0
	}
	e := o.AsMeasured()
	_, built = off(x, false, e.Left, e.Right, o.TiledAcross(e, m.w.tiled.Least()))
	return built
}

func (m *Marks) builtUp(opening int, y grid) (built int) {
	o := &m.w.typed.Openings[opening]
	if o.Kind == survey.Pipe || o.Bottom.Free() || o.Height.Free() {
		return 0
	}
	e := o.AsMeasured()
	_, built = off(y, false, e.Bottom, e.Top, o.TiledUp(e, m.w.tiled.Least()))
	return built
}

// cutBeside counts the ends of a part of a wall at which it cuts tile beside a strip.
func (m *Marks) cutBeside(x grid) int {
	left, right := m.w.found.Left, m.w.found.Right
	return boolean(left.Goes != survey.Nowhere && !x.begins(left.Stops.From)) + boolean(right.Goes != survey.Nowhere && !x.ends(right.Stops.From))
}

// exposed counts the ends that stop, on a wall whose other end meets a corner,
// at which no class has a tile edge.
func (m *Marks) exposed(x grid, p survey.Placed) int {
	left, right := m.w.found.Exposed()
	if left && !x.begins(p.Left) || right && !x.ends(p.Right) {
		return 1
	}
	return 0
}

// ExposedAt is 1 where an exposed end that stops at x has no tile edge there.
func (m *Marks) ExposedAt(edge, x length.Length, right bool) int {
	p := survey.Placed{Left: x, Right: x}
	if isLeft, isRight := m.w.found.Exposed(); !right && isLeft || right && isRight {
		return m.exposed(m.w.level(edge), p)
	}
	return 0
}

// leastExposed is how many exposed ends stay off the lines at the best.
func (m *Marks) leastExposed(x grid) int {
	left, right := m.w.found.Exposed()
	if left && len(x.within(m.w.found.Left.Stops, 0)) == 0 || right && len(x.within(m.w.found.Right.Stops, x.tile)) == 0 {
		return 1
	}
	return 0
}

// near is how far the middles of free openings are from the places wished for:
// where nothing is said, a niche's from the middle of the tile field.
func (m *Marks) near(p survey.Placed, box plane.Rect) length.Length {
	var twice length.Length
	for i, o := range m.w.typed.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		e := p.Openings[i]
		if o.Left.Free() || o.Width.Free() {
			if wish, is := m.wishX(o, box); is {
				twice += (e.Left + e.Right - wish).Abs()
			}
		}
		if o.Near.Y != nil && (o.Bottom.Free() || o.Height.Free()) {
			twice += (e.Bottom + e.Top - 2**o.Near.Y).Abs()
		}
	}
	return twice.Half()
}

// wishX is twice the place wished for the middle of an opening along the wall.
func (m *Marks) wishX(o survey.OpeningFound, box plane.Rect) (twice length.Length, is bool) {
	switch {
	case o.Near.X != nil:
		return 2 * *o.Near.X, true
	case o.Kind == survey.Niche:
		return wished(box.Left+box.Right, o.Left, o.Width), true
	}
	return 0, false
}

// wished moves twice a wish to where the range lets the middle be.
func wished(twice length.Length, low, size survey.Span) length.Length {
	return min(max(twice, 2*low.From+size.From), 2*low.To+size.To)
}

// find tells how hard the start is to find again: 0 with a tile or a joint on the
// middle of the tile field, to a unit, 1 with a full tile at an end of it, 2
// anywhere else.
func (m *Marks) find(x grid, box plane.Rect) int {
	twice := box.Left + box.Right
	for _, s := range x.shifts {
		from := twice - 2*(x.first+s)
		for _, on := range [...]length.Length{x.tile, -m.w.room.Joint} {
			if length.Mod(from-on+1, 2*x.pitch) <= 2 {
				return 0
			}
		}
	}
	if x.begins(box.Left) || x.ends(box.Right) {
		return 1
	}
	return 2
}
