package count

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// opened tells what two facing edges of a free opening give at best where they stand, wherever the other two go:
// the pieces beside them, joint lines, and how far the middle is from where it is wished.
type opened struct {
	before, after *besideEdge
	marks         func(Pair) marked // without the pieces
}

// marked is what the marks of an option give: of two it is the better that is less off the joint lines, then the nearer,
// whatever a job prefers.
type marked struct {
	off  int
	near length.Length
}

func (a marked) better(b marked) bool { return a.off < b.off || a.off == b.off && a.near < b.near }

func (o opened) given(at Pair) merit.Merit {
	m, marks := o.before.given(at.Low).Plus(o.after.given(at.High)), o.marks(at)
	m.Openings, m.Near = marks.off, marks.near
	return m
}

// openedLevel tells it of the plumb edges, and openedUpright of the level ones.
func (p *Places) openedLevel(i int, edge length.Length) opened {
	o, tiles := p.w.typed.Openings[i], p.w.level(edge)
	return opened{p.beside(i, tiles, piece.OnRight), p.beside(i, tiles, piece.OnLeft), func(at Pair) (m marked) {
		if o.Left.Free() || o.Width.Free() {
			m.off = tiles.off(at.Low, at.High)
			if wish, is := p.marks.wishX(o, p.w.box()); is && (o.Near.X != nil || p.w.fixedEnds()) {
				m.near = p.w.mark((at.Low + at.High - wish).Abs().Half())
			}
		}
		return m
	}}
}

func (p *Places) openedUpright(i int, line length.Length) opened {
	o, tiles := p.w.typed.Openings[i], p.w.upright(line)
	return opened{p.beside(i, tiles, piece.Over), p.beside(i, tiles, piece.Under), func(at Pair) (m marked) {
		if o.Bottom.Free() || o.Height.Free() {
			m.off = tiles.off(at.Low, at.High)
			if o.Near.Y != nil {
				m.near = p.w.mark((at.Low + at.High - 2**o.Near.Y).Abs().Half())
			}
		}
		return m
	}}
}

// besideEdge is an edge of a free opening with the tiles that it cuts.
type besideEdge struct {
	*Places
	opening  int
	tiles    grid
	edge     piece.Edge
	facing   piece.Facing
	from, to length.Length // how far it reaches, wherever the opening goes
	tile     length.Length // along it
	inside   int           // tiles of each class that it surely cuts, and no other edge of the opening
	touched  int           // those that it surely cuts
	known    []besidePlace
}

type besidePlace struct {
	at    length.Length
	merit *merit.Merit
}

// beside is the edge of a free opening that faces its tile so.
func (p *Places) beside(i int, tiles grid, facing piece.Facing) *besideEdge {
	o := p.w.found.Openings[i]
	e := &besideEdge{Places: p, opening: i, tiles: tiles, facing: facing,
		edge: piece.EdgeOf(survey.SideBase+plane.Side(len(p.w.found.Base)+i), facing),
		from: o.Bottom.From, to: o.Bottom.To + o.Height.To, tile: p.w.room.Tile.Height}
	along, across, deep := o.Height, o.Width, p.w.room.Tile.Width // along the edge, and to the other one
	if facing >= piece.Under {
		along, across = across, along
		e.from, e.to, e.tile, deep = o.Left.From, o.Left.To+o.Width.To, p.w.room.Tile.Width, p.w.room.Tile.Height
	}
	classes := len(tiles.shifts)
	e.inside = int(max(0, along.From-e.tile) / ((e.tile + p.w.room.Joint) * length.Length(classes)))
	if across.From >= deep { // else one tile may reach from edge to edge round the corner
		e.touched = touchedBy(along.From, e.tile, p.w.room.Joint) / classes
	}
	return e
}

// given is what is sure of the pieces beside the edge where it stands at x. It is worked
// out once.
func (e *besideEdge) given(x length.Length) *merit.Merit {
	for i := range e.known {
		if e.known[i].at == x {
			return e.known[i].merit
		}
	}
	m := e.at(x)
	e.known = append(e.known, besidePlace{x, &m})
	return &m
}

func (e *besideEdge) at(x length.Length) merit.Merit {
	s := sure{w: e.w, meter: e.meter}
	if max(e.inside, e.touched) == 0 {
		return s.m
	}
	low, facing := e.edge.Low(e.w.rule.Sides), e.w.frame.facing(e.facing)
	for class := range e.tiles.shifts {
		size := e.left(x, class)
		if size >= e.tiles.tile {
			continue
		}
		// The tile that is cut reaches from the edge as far as size leaves of it.
		n := 0
		if e.boundary.alone(e.opening, e.facing, x, e.from, e.to, 0, size, 0) {
			n = e.inside
		}
		// A piece round a corner is in the runs of both its edges, and is counted by the plumb one.
		round := e.touched > n && e.boundary.alone(e.opening, e.facing, x, e.from, e.to, e.tile+e.w.room.Joint, size, e.tiles.tile-size)
		if round && e.facing <= piece.OnRight {
			n = e.touched
		}
		if n > 0 || round {
			s.grade(low, facing, size, n)
			s.m.Work += n * e.w.effort(facing, false)
			s.runs = append(s.runs, Run{Edges: []piece.Edge{e.edge}, Class: class, Least: size, Low: low})
		}
	}
	return s.merit()
}

// left is what the edge leaves of the tile of a class in which x falls.
func (e *besideEdge) left(x length.Length, class int) length.Length {
	if e.facing == piece.OnRight || e.facing == piece.Over {
		return e.tiles.before(x, class)
	}
	return e.tiles.after(x, class)
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
// far as round beyond it, and beside it as far as past. There an edge that crosses does no harm where it stands
// clear of the opening.
func (b *boundary) alone(i int, f piece.Facing, x, from, to, round, deep, past length.Length) bool {
	end := x + past
	if f == piece.OnLeft || f == piece.Under {
		end = x - past
	}
	reach := b.w.besideAt(f, end, from-round, to+round, past+deep)
	clear := b.w.besideAt(f, x, from-b.w.margin(), to+b.w.margin(), deep)
	own := b.own(i)
	for n, o := range b.obstacles {
		crosses := round > 0 && o.edge >= 0 && o.edge.Across() != (f <= piece.OnRight) && !touch(o.Rect, clear)
		if n != own && touch(o.Rect, reach) && !crosses {
			return false
		}
	}
	return b.onWall(b.w.besideAt(f, x, from, to, deep)) // else the opening reaches beyond the wall there, and cuts nothing
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
