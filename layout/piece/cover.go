package piece

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Gap is a stretch of a boundary that meets something, with no tile within the
// reach of sealant: bare wall. From and To are its ends on the region's edge.
type Gap struct {
	Edge     Edge
	From, To plane.Point
	Length   length.Length // plumb along ends and steps, level along base and head
	Low      bool          // out of sight: the edge is, or the stretch is no more than the corner with one that is
}

// Cover keeps the stretches of boundary from which a kept piece is near enough
// for sealant, square to the wall's frame. A piece covers a joint further on
// either side, or as far as sealant reaches if that is more: the mouth of a
// joint is no bare wall.
type Cover struct {
	rule   Rule
	bounds []bound
	slack  length.Length // a stretch no longer is not bare: what rounding leaves
	atMost bool          // all is covered that may be where boundaries that slant are rounded otherwise
}

// bound is one straight edge of the region that meets something. In its own
// frame u runs along it and v away from it, into the region.
type bound struct {
	edge     Edge
	from, to uv
	reach    length.Length // from the edge to the farthest tile that sealant still reaches
	box      plane.Rect    // what a piece must touch to cover any of it
	covered  []stretch
	low      bool
	bends    [2]bool // whether the boundary that it meets at from, and at to, slants
	lowEnds  [2]bool // whether the boundary that it meets at from, and at to, is out of sight
}

type uv struct{ u, v length.Length }

// seenFrom gives a point in the frame of an edge that faces so.
func seenFrom(f Facing, p plane.Point) uv {
	switch f {
	case OnLeft:
		return uv{p.Y, p.X}
	case OnRight:
		return uv{p.Y, -p.X}
	case Under:
		return uv{p.X, p.Y}
	}
	return uv{p.X, -p.Y}
}

// point is seenFrom backwards.
func (f Facing) point(a uv) plane.Point {
	switch f {
	case OnLeft:
		return plane.Point{X: a.v, Y: a.u}
	case OnRight:
		return plane.Point{X: -a.v, Y: a.u}
	case Under:
		return plane.Point{X: a.u, Y: a.v}
	}
	return plane.Point{X: a.u, Y: -a.v}
}

// NewCover is the cover of a wall on which nothing stands yet.
func NewCover(shape survey.Shape, rule Rule) *Cover {
	c := &Cover{rule: rule}
	solid := shape.Solid
	if rule.Plumb {
		solid = solid.Transposed()
	}
	for _, ring := range solid {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.On != 0 && rule.Sides[a.On].Meets && a.Point != b.Point {
				n := len(ring)
				c.add(ring[(i+n-1)%n], a, b, ring[(i+2)%n])
			}
		}
	}
	return c
}

// Slant is how much farther than its width sealant reaches from the straight boundary edge a–b, square to
// the wall's frame as the gap is: what it fills is measured square to the edge.
func Slant(sealant length.Length, a, b plane.Point) length.Length {
	wide, high := (b.X - a.X).Abs(), (b.Y - a.Y).Abs()
	if wide == 0 || high == 0 {
		return 0
	}
	return sealant*plane.Distance(a, b)/max(wide, high) - sealant
}

// low tells whether the edge from c to d lies on a boundary out of sight.
func (r Rule) low(c, d plane.Corner) bool {
	return c.On != 0 && r.wallEdge(EdgeOf(c.On, facing(c, d))).Low(r.Sides)
}

// add adds the boundary from a to b, with the corners before and after it.
func (c *Cover) add(before, a, b, after plane.Corner) {
	f := facing(a, b)
	e := bound{edge: EdgeOf(a.On, f), from: seenFrom(f, a.Point), to: seenFrom(f, b.Point), reach: c.rule.Sealant - c.rule.Sides[a.On].Gap + Slant(c.rule.Sealant, a.Point, b.Point)}
	e.low, e.lowEnds = c.rule.low(a, b), [2]bool{c.rule.low(before, a), c.rule.low(b, after)}
	e.bends = [2]bool{slants(before, a), slants(b, after)}
	if e.from.u > e.to.u {
		e.from, e.to = e.to, e.from
		e.lowEnds[0], e.lowEnds[1] = e.lowEnds[1], e.lowEnds[0]
		e.bends[0], e.bends[1] = e.bends[1], e.bends[0]
	}
	far := max(c.rule.Joint, e.reach) + 2
	e.box = plane.Rect{Left: min(a.X, b.X) - far, Right: max(a.X, b.X) + far, Bottom: min(a.Y, b.Y) - far, Top: max(a.Y, b.Y) + far}
	c.bounds = append(c.bounds, e)
}

// slants tells whether the boundary from a to b is neither level nor plumb.
func slants(a, b plane.Corner) bool { return a.X != b.X && a.Y != b.Y }

// Clear takes all tile away again.
func (c *Cover) Clear() {
	for i := range c.bounds {
		c.bounds[i].covered = c.bounds[i].covered[:0]
	}
	c.atMost = false
}

// ClearAtMost is Clear for what pieces cover at most, however boundaries that slant are rounded: see Sure.
func (c *Cover) ClearAtMost() {
	c.Clear()
	c.atMost = true
}

// Rect covers what tile in an upright rectangle covers.
func (c *Cover) Rect(tile plane.Rect) {
	if c == nil {
		return
	}
	for i := range c.bounds {
		if c.bounds[i].box.Overlaps(tile) {
			c.bounds[i].piece(plane.Region{tile.Ring(0)}, c.rule.Joint)
		}
	}
}

// Region covers what a piece covers.
func (c *Cover) Region(solid plane.Region) {
	if c == nil {
		return
	}
	box := solid.Bounds()
	for i := range c.bounds {
		if c.bounds[i].box.Overlaps(box) {
			c.bounds[i].piece(solid, c.rule.Joint)
		}
	}
}

func (e *bound) piece(solid plane.Region, joint length.Length) {
	f := e.edge.Facing()
	beside := max(joint, e.reach)
	for _, ring := range solid {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.Point == b.Point || facing(a, b) != f {
				continue
			}
			p, q := seenFrom(f, a.Point), seenFrom(f, b.Point)
			if p.u > q.u {
				p, q = q, p
			}
			e.opposite(p, q, beside)
		}
	}
}

// rounding is how far an edge of a piece may stand off because slanted edges are
// rounded where they cross.
const rounding = 4

// slop is how far a piece's edge may seem to lie behind the boundary that cut it,
// because a leaning edge is rounded wherever a tile crosses it.
const slop = 2

// opposite notes the stretches from which the edge p–q of a piece is near enough: before its one end,
// across from it and after its other.
func (e *bound) opposite(p, q uv, beside length.Length) {
	e.along(uv{p.u - beside, p.v}, p)
	e.along(p, q)
	e.along(q, uv{q.u + beside, q.v})
}

// along notes the stretch from which p–q is near enough.
func (e *bound) along(p, q uv) {
	from, to := max(e.from.u, p.u), min(e.to.u, q.u)
	if from >= to {
		return
	}
	away := func(u length.Length) length.Length { return at(p, q, u) - at(e.from, e.to, u) }
	d0, d1 := away(from), away(to)
	crossing := func() length.Length {
		if p.v == q.v {
			return e.where(p.v - e.reach)
		}
		return from + length.Length(length.DivFloor((e.reach-d0)*(to-from), d1-d0))
	}
	switch {
	case d0 < -slop && d1 < -slop, d0 > e.reach && d1 > e.reach:
		return
	case d0 > e.reach:
		from = max(from, crossing())
	case d1 > e.reach:
		to = min(to, crossing())
	}
	if from < to {
		e.covered = append(e.covered, stretch{from, to})
	}
}

// where is the place on a slanting edge at which it is at v. It is worked out from
// the whole edge, so that it does not depend on which tile asks.
func (e *bound) where(v length.Length) length.Length {
	rise := e.to.v - e.from.v
	if rise == 0 {
		return e.from.u
	}
	n := (v - e.from.v) * (e.to.u - e.from.u)
	if rise < 0 {
		n, rise = -n, -rise
	}
	return e.from.u + length.Length(length.DivFloor(n, rise))
}

// at is the height of the straight edge p–q at u, to the nearest unit.
func at(p, q uv, u length.Length) length.Length {
	if p.v == q.v || p.u == q.u {
		return p.v
	}
	return p.v + length.Length(length.DivFloor(2*(u-p.u)*(q.v-p.v)+(q.u-p.u), 2*(q.u-p.u)))
}

// Gaps are the stretches that nothing covers, by edge and then along it.
func (c *Cover) Gaps() []Gap { return c.gaps(false) }

// Sure are the gaps as far as they are bare however the ends of slanted boundaries are rounded,
// which moves the end of a gap by as much more as the boundary slants less. What pieces cover is to be taken at most.
func (c *Cover) Sure() []Gap { return c.gaps(true) }

func (c *Cover) gaps(sure bool) []Gap {
	plumb := c.rule.Plumb
	var out []Gap
	for i := range c.bounds {
		out = c.gapsOf(out, &c.bounds[i], sure)
	}
	for i := range out {
		if g := &out[i]; plumb {
			g.Edge = g.Edge.Transposed()
			g.From, g.To = plane.Point{X: g.From.Y, Y: g.From.X}, plane.Point{X: g.To.Y, Y: g.To.X}
		}
	}
	slices.SortStableFunc(out, func(a, b Gap) int { return cmp.Compare(a.Edge, b.Edge) })
	return out
}

// gapsOf adds the stretches of one boundary that nothing covers.
func (c *Cover) gapsOf(out []Gap, e *bound, sure bool) []Gap {
	u := e.from.u
	add := func(to length.Length) {
		if to > u+c.slack {
			out = append(out, e.gap(u, min(to, e.to.u), c.rule.Joint))
			if g := &out[len(out)-1]; sure {
				g.Length = max(0, g.Length-e.doubt(u, to))
			}
		}
	}
	e.covered = merge(e.covered)
	for _, s := range e.covered {
		add(s.from)
		u = max(u, s.to)
	}
	add(e.to.u)
	return out
}

// SureOf are the sure gaps along the nth boundary, seen as it stands on a wall without columns.
func (c *Cover) SureOf(n int) []Gap { return c.gapsOf(nil, &c.bounds[n], true) }

// Boxes are, boundary by boundary, what a piece touches that covers any of it.
func (c *Cover) Boxes() (out []plane.Rect) {
	for i := range c.bounds {
		out = append(out, c.bounds[i].box)
	}
	return out
}

// doubt is by how much a gap may be shorter where the ends of its boundary are rounded otherwise
// by two units, as one is where it meets a boundary that slants.
func (e *bound) doubt(from, to length.Length) (most length.Length) {
	rise := (e.to.v - e.from.v).Abs()
	if rise == 0 {
		if e.bends[0] && from <= e.from.u {
			most += 2
		}
		if e.bends[1] && to >= e.to.u {
			most += 2
		}
		return most
	}
	return 4 * (1 + (e.to.u-e.from.u)/rise)
}

// gap is a bare stretch. One at the corner with a boundary out of sight, no longer
// than the strip for sealant there with its joint, is bare because of that boundary.
func (e *bound) gap(from, to, joint length.Length) Gap {
	f := e.edge.Facing()
	corner := to-from <= max(0, e.reach)+joint && (from == e.from.u && e.lowEnds[0] || to == e.to.u && e.lowEnds[1])
	return Gap{Edge: e.edge, Length: to - from, Low: e.low || corner,
		From: f.point(uv{from, at(e.from, e.to, from)}), To: f.point(uv{to, at(e.from, e.to, to)})}
}
