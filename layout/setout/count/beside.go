package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// level is what the plumb edges of a free opening give at best, wherever its
// level edges go: joint lines, the runs beside it, and how far the middle is from
// where it is wished. upright is the same of its level edges.
func (p *Places) level(i int, edge length.Length, at Pair) merit.Merit {
	o := p.w.typed.Openings[i]
	m := p.beside(i, p.w.level(edge), at, piece.OnRight, piece.OnLeft)
	if o.Left.Free() || o.Width.Free() {
		m.Openings = p.w.level(edge).off(at.Low, at.High)
		if wish, is := p.marks.wishX(o, p.w.box()); is && (o.Near.X != nil || p.w.fixedEnds()) {
			m.Near = p.w.mark((at.Low + at.High - wish).Abs().Half())
		}
	}
	return m
}

// upright is what the level edges of a free opening give at best.
func (p *Places) upright(i int, line length.Length, at Pair) merit.Merit {
	o := p.w.typed.Openings[i]
	m := p.beside(i, p.w.upright(line), at, piece.Over, piece.Under)
	if o.Bottom.Free() || o.Height.Free() {
		m.Openings = p.w.upright(line).off(at.Low, at.High)
		if o.Near.Y != nil {
			m.Near = p.w.mark((at.Low + at.High - 2**o.Near.Y).Abs().Half())
		}
	}
	return m
}

// beside is what is sure of the pieces beside two facing edges of a free opening
// that stand at a place: the edges face tile as low and high say.
func (p *Places) beside(i int, g grid, at Pair, low, high piece.Facing) merit.Merit {
	o := p.w.found.Openings[i]
	s := sure{w: p.w, meter: p.meter}
	along, across := o.Height, o.Width // along the edges, and from one to the other
	from, to, tile, deep := o.Bottom.From, o.Bottom.To+o.Height.To, p.w.room.Tile.Height, p.w.room.Tile.Width
	if low == piece.Over {
		along, across = across, along
		from, to, tile, deep = o.Left.From, o.Left.To+o.Width.To, p.w.room.Tile.Width, p.w.room.Tile.Height
	}
	classes := len(g.shifts)
	inside := int(max(0, along.From-tile) / ((tile + p.w.room.Joint) * length.Length(classes)))
	touched := 0
	if across.From >= deep { // else one tile may reach from edge to edge round the corner
		touched = touchedBy(along.From, tile, p.w.room.Joint) / classes
	}
	if max(inside, touched) == 0 {
		return s.m
	}
	side := survey.SideBase + plane.Side(len(p.w.found.Base)+i)
	for _, e := range [...]struct {
		at     length.Length
		facing piece.Facing
		left   func(length.Length, int) length.Length
	}{{at.Low, low, g.before}, {at.High, high, g.after}} {
		edge := piece.EdgeOf(side, e.facing)
		for class := range g.shifts {
			size := e.left(e.at, class)
			if size >= g.tile {
				continue
			}
			// The tile that is cut reaches from the edge as far as size leaves of it.
			n := 0
			if p.boundary.alone(i, e.facing, e.at, from, to, 0, size) {
				n = inside
			}
			// A piece round a corner is in the runs of both its edges, and is counted by the plumb one.
			round := touched > n && p.boundary.alone(i, e.facing, e.at, from, to, tile+p.w.room.Joint, size)
			if round && low == piece.OnRight {
				n = touched
			}
			if n > 0 || round {
				facing := p.w.frame.facing(e.facing)
				s.grade(edge.Low(p.w.rule.Sides), facing, size, n)
				s.m.Work += n * p.w.effort(facing, false)
				s.runs = append(s.runs, Run{Edges: []piece.Edge{edge}, Class: class, Least: size, Low: edge.Low(p.w.rule.Sides)})
			}
		}
	}
	return s.merit()
}

// touchedBy is how many tiles of one size at least, one beside the other, a stretch
// touches wherever it lies.
func touchedBy(stretch, tile, joint length.Length) int {
	pitch := tile + joint
	n := int(stretch / pitch)
	if stretch%pitch > joint {
		n++
	}
	return n
}

// alone tells whether nothing else cuts the tile beside an edge of an opening that
// faces tile so and stands at x, wherever it may be between from and to, as deep as
// the tile reaches: nor, round the corners of the opening, the tile that reaches as
// far as round beyond it. There an edge that crosses does no harm where it stands
// clear of the opening.
func (b *boundary) alone(i int, f piece.Facing, x, from, to, round, deep length.Length) bool {
	reach := b.w.besideAt(f, x, from-round, to+round, deep)
	clear := b.w.besideAt(f, x, from-b.w.margin(), to+b.w.margin(), deep)
	own := -1 // an opening that is pinned has no range of its own
	if k := slices.Index(b.w.free, i); k >= 0 {
		own = b.hullOf[k]
	}
	for n, o := range b.obstacles {
		crosses := round > 0 && o.edge >= 0 && o.edge.Across() != (f <= piece.OnRight) && !touch(o.Rect, clear)
		if n != own && touch(o.Rect, reach) && !crosses {
			return false
		}
	}
	return b.onWall(reach) // else the opening reaches beyond the wall there, and cuts nothing
}

// onWall tells whether the middle of a box, in the frame of the rows, is wall.
func (b *boundary) onWall(r plane.Rect) bool {
	return b.w.field.Solid.Contains(b.w.frame.point(plane.Point{X: (r.Left + r.Right).Half(), Y: (r.Bottom + r.Top).Half()}))
}

// besideAt is the box beside an edge of an opening, so deep, in the frame of the rows.
func (w *facts) besideAt(f piece.Facing, x, from, to, deep length.Length) plane.Rect {
	var r plane.Rect
	switch f {
	case piece.OnRight:
		r = plane.Rect{Left: x - deep, Right: x, Bottom: from, Top: to}
	case piece.OnLeft:
		r = plane.Rect{Left: x, Right: x + deep, Bottom: from, Top: to}
	case piece.Over:
		r = plane.Rect{Left: from, Right: to, Bottom: x - deep, Top: x}
	case piece.Under:
		r = plane.Rect{Left: from, Right: to, Bottom: x, Top: x + deep}
	}
	return w.frame.rect(r)
}

// touch tells whether two rectangles share at least a point.
func touch(a, b plane.Rect) bool {
	return a.Left <= b.Right && a.Right >= b.Left && a.Bottom <= b.Top && a.Top >= b.Bottom
}
