package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// OfBoth is what no set-out with the start on the course line can beat, wherever
// the free marks go.
func (w *Wall) OfBoth(line, edge length.Length) merit.Merit {
	m := w.Edges(line, edge)
	w.addLevelMarks(&m, edge)
	w.addUprightMarks(&m, line)
	return m
}

// Fixed is what measured marks give with a start on a line.
func (w *Wall) Fixed(line, edge length.Length) merit.Merit {
	var m merit.Merit
	x, y := w.level(edge), w.upright(line)
	for _, o := range w.typed.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		if !o.Left.Free() && !o.Width.Free() {
			_, built := off(x, false, o.Left.From, o.Left.From+o.Width.From)
			m.Built += built
		}
		if !o.Bottom.Free() && !o.Height.Free() {
			_, built := off(y, false, o.Bottom.From, o.Bottom.From+o.Height.From)
			m.Built += built
		}
	}
	return m
}

// ExposedAt is 1 where an exposed end that stops at x has no tile edge there.
func (w *Wall) ExposedAt(edge, x length.Length, right bool) int {
	p := survey.Placed{Left: x, Right: x}
	if end := w.Found.Left; right == end.Meets {
		return w.exposed(w.level(edge), p)
	}
	return 0
}

// LevelPair is what the plumb edges of a free opening give at best, wherever its
// level edges go: joint lines, the runs beside it, and how far the middle is from
// where it is wished. UprightPair is the same of its level edges.
func (w *Wall) LevelPair(i int, edge length.Length, p Pair) merit.Merit {
	o := w.typed.Openings[i]
	m := w.beside(i, w.level(edge), p, piece.OnRight, piece.OnLeft)
	if o.Left.Free() || o.Width.Free() {
		m.Openings = w.level(edge).off(p.Low, p.High)
		if wish, is := w.wishX(o, w.Bounds()); is && (o.Near.X != nil || w.FixedEnds()) {
			m.Near = w.mark((p.Low + p.High - wish).Abs().Half())
		}
	}
	return m
}

// UprightPair is what the level edges of a free opening give at best.
func (w *Wall) UprightPair(i int, line length.Length, p Pair) merit.Merit {
	o := w.typed.Openings[i]
	m := w.beside(i, w.upright(line), p, piece.Over, piece.Under)
	if o.Bottom.Free() || o.Height.Free() {
		m.Openings = w.upright(line).off(p.Low, p.High)
		if o.Near.Y != nil {
			m.Near = w.mark((p.Low + p.High - 2**o.Near.Y).Abs().Half())
		}
	}
	return m
}

// beside is what is sure of the pieces beside two facing edges of a free opening
// that stand at p: the edges face tile as low and high say.
func (w *Wall) beside(i int, g grid, p Pair, low, high piece.Facing) merit.Merit {
	o := w.Found.Openings[i]
	s := sure{w: w}
	along, across := o.Height, o.Width // along the edges, and from one to the other
	from, to, tile, deep := o.Bottom.From, o.Bottom.To+o.Height.To, w.room.Tile.Height, w.room.Tile.Width
	if low == piece.Over {
		along, across = across, along
		from, to, tile, deep = o.Left.From, o.Left.To+o.Width.To, w.room.Tile.Width, w.room.Tile.Height
	}
	classes := len(g.shifts)
	inside := int(max(0, along.From-tile) / ((tile + w.room.Joint) * length.Length(classes)))
	touched := 0
	if across.From >= deep { // else one tile may reach from edge to edge round the corner
		touched = w.touchedBy(along.From, tile) / classes
	}
	if max(inside, touched) == 0 {
		return s.m
	}
	side := survey.SideBase + plane.Side(len(w.Found.Base)+i)
	for _, e := range [...]struct {
		at     length.Length
		facing piece.Facing
		left   func(length.Length, int) length.Length
	}{{p.Low, low, g.before}, {p.High, high, g.after}} {
		n := 0
		if w.alone(i, e.facing, e.at, from, to, 0) {
			n = inside
		}
		// A piece round a corner is in the run, but may be counted by the other edge.
		if n == 0 && (touched == 0 || !w.alone(i, e.facing, e.at, from, to, tile+w.room.Joint)) {
			continue
		}
		edge := piece.EdgeOf(side, e.facing)
		for class := range g.shifts {
			if size := e.left(e.at, class); size < g.tile {
				s.grade(edge.Low(w.rule.Sides), w.rowFacing(e.facing), size, n)
				s.runs = append(s.runs, Run{Edges: []piece.Edge{edge}, Class: class, Least: size, Low: edge.Low(w.rule.Sides)})
			}
		}
	}
	return s.merit()
}

// touchedBy is how many tiles of one size at least, one beside the other, a stretch
// touches wherever it lies.
func (w *Wall) touchedBy(stretch, tile length.Length) int {
	pitch := tile + w.room.Joint
	n := int(stretch / pitch)
	if stretch%pitch > w.room.Joint {
		n++
	}
	return n
}

// rowFacing is a facing of the wall in the frame of the rows.
func (w *Wall) rowFacing(f piece.Facing) piece.Facing {
	if w.plumb {
		return f ^ 2
	}
	return f
}

// alone tells whether nothing else cuts the tile beside an edge of an opening that
// faces tile so and stands at x, wherever it may be between from and to: nor, round
// the corners of the opening, the tile that reaches as far as round beyond it. There
// an edge that crosses does no harm where it stands clear of the opening.
func (w *Wall) alone(i int, f piece.Facing, x, from, to, round length.Length) bool {
	reach := w.besideAt(f, x, from-round, to+round)
	clear := w.besideAt(f, x, from-w.margin(), to+w.margin())
	own := -1 // an opening that is pinned has no range of its own
	if k := slices.Index(w.free, i); k >= 0 {
		own = w.hullOf[k]
	}
	for n, o := range w.obstacles {
		crosses := round > 0 && o.edge >= 0 && o.edge.Across() != (f <= piece.OnRight) && !touch(o.Rect, clear)
		if n != own && touch(o.Rect, reach) && !crosses {
			return false
		}
	}
	return true
}

// besideAt is the box of a tile's depth beside an edge of an opening, in the frame of
// the rows.
func (w *Wall) besideAt(f piece.Facing, x, from, to length.Length) plane.Rect {
	wide, high := w.room.Tile.Width+w.room.Joint, w.room.Tile.Height+w.room.Joint
	var r plane.Rect
	switch f {
	case piece.OnRight:
		r = plane.Rect{Left: x - wide, Right: x, Bottom: from, Top: to}
	case piece.OnLeft:
		r = plane.Rect{Left: x, Right: x + wide, Bottom: from, Top: to}
	case piece.Over:
		r = plane.Rect{Left: from, Right: to, Bottom: x - high, Top: x}
	case piece.Under:
		r = plane.Rect{Left: from, Right: to, Bottom: x, Top: x + high}
	}
	if w.plumb {
		return r.Transposed()
	}
	return r
}

// touch tells whether two rectangles share at least a point.
func touch(a, b plane.Rect) bool {
	return a.Left <= b.Right && a.Right >= b.Left && a.Bottom <= b.Top && a.Top >= b.Bottom
}

// Edges is what is sure of the pieces that the edges of the wall cut, without
// those of free openings.
func (w *Wall) Edges(line, edge length.Length) merit.Merit {
	along, across := w.phases(line, edge)
	ends, beds := w.endsAt(along, w.rowsAt(across)), w.bedsAt(across)
	return ends.Plus(&beds)
}

// Standing is what is sure of the pieces that the edges cut which stand.
func (w *Wall) Standing(line, edge length.Length) merit.Merit {
	along, across := w.phases(line, edge)
	ends, _ := w.standingEnds(along, w.rowsAt(across))
	beds := w.bedsAt(across)
	return ends.Plus(&beds)
}

// AtEnd is what is sure of an end of the wall that is placed at x: the pieces beside
// it where it is free, and whether it is exposed.
func (w *Wall) AtEnd(right bool, x, line, edge length.Length) merit.Merit {
	var m merit.Merit
	if !w.plumb && w.zoned(right) {
		m = w.atPlace(right, x, line, edge)
	}
	m.Exposed = w.ExposedAt(edge, x, right)
	return m
}

// AtHead is what is sure of the pieces beside a free head that is placed at y.
func (w *Wall) AtHead(y, line, edge length.Length) merit.Merit {
	if !w.plumb || !w.zoned(true) {
		return merit.Merit{Part: true}
	}
	return w.atPlace(true, y, line, edge)
}

func (w *Wall) atPlace(right bool, x, line, edge length.Length) merit.Merit {
	along, across := w.phases(line, edge)
	_, bands := w.standingEnds(along, w.rowsAt(across))
	return w.zone(right, x, along, bands)
}

// addLevelMarks adds what the marks along the wall give at best.
func (w *Wall) addLevelMarks(m *merit.Merit, edge length.Length) {
	x := w.level(edge)
	if !w.movesEnd() {
		m.Exposed += w.exposed(x, w.outer)
	} else if w.plumb {
		m.Exposed += w.leastExposed(x)
	}
	if w.FixedEnds() {
		m.Find = w.find(x, w.Bounds())
	}
	for i, o := range w.typed.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		if o.Left.Free() || o.Width.Free() {
			if o := w.LevelOptions(i, edge); len(o) > 0 {
				*m = m.Plus(&o[0].Merit)
			}
			continue
		}
		_, built := off(x, false, o.Left.From, o.Left.From+o.Width.From)
		m.Built += built
	}
}

func (w *Wall) addUprightMarks(m *merit.Merit, line length.Length) {
	y := w.upright(line)
	for i, o := range w.typed.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		if o.Bottom.Free() || o.Height.Free() {
			if o := w.UprightOptions(i, line); len(o) > 0 {
				*m = m.Plus(&o[0].Merit)
			}
			continue
		}
		_, built := off(y, false, o.Bottom.From, o.Bottom.From+o.Height.From)
		m.Built += built
	}
}

// movesEnd tells whether the exposed end of the wall is free.
func (w *Wall) movesEnd() bool {
	if w.Found.Left.Meets {
		return w.moves(survey.SideRight)
	}
	return w.moves(survey.SideLeft)
}

// leastExposed is how many exposed ends stay off the lines at the best.
func (w *Wall) leastExposed(x grid) int {
	l, r := w.Found.Left, w.Found.Right
	switch {
	case !l.Meets && r.Meets && len(x.within(l.Stops, 0)) == 0:
		return 1
	case l.Meets && !r.Meets && len(x.within(r.Stops, x.tile)) == 0:
		return 1
	}
	return 0
}
