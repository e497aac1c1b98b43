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
	length0, from, to, repeat, size := o.Height.From, o.Bottom.From, o.Bottom.To+o.Height.To, w.room.Tile.Height+w.room.Joint, w.room.Tile.Height
	if low == piece.Over {
		length0, from, to, repeat, size = o.Width.From, o.Left.From, o.Left.To+o.Width.To, w.room.Tile.Width+w.room.Joint, w.room.Tile.Width
	}
	n := int(max(0, length0-size) / (repeat * length.Length(len(g.shifts))))
	if n == 0 {
		return s.m
	}
	side := survey.SideBase + plane.Side(len(w.Found.Base)+i)
	for _, e := range [...]struct {
		at     length.Length
		facing piece.Facing
		left   func(length.Length, int) length.Length
	}{{p.Low, low, g.before}, {p.High, high, g.after}} {
		if !w.alone(i, e.facing, e.at, from, to) {
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

// rowFacing is a facing of the wall in the frame of the rows.
func (w *Wall) rowFacing(f piece.Facing) piece.Facing {
	if w.plumb {
		return f ^ 2
	}
	return f
}

// alone tells whether nothing else cuts the tile beside an edge of an opening that
// faces tile so and stands at x, wherever it may be between from and to.
func (w *Wall) alone(i int, f piece.Facing, x, from, to length.Length) bool {
	far := w.room.Tile.Width + w.room.Joint
	r := plane.Rect{Left: x - far, Right: x, Bottom: from, Top: to}
	switch f {
	case piece.OnLeft:
		r.Left, r.Right = x, x+far
	case piece.Over:
		far = w.room.Tile.Height + w.room.Joint
		r = plane.Rect{Left: from, Right: to, Bottom: x - far, Top: x}
	case piece.Under:
		far = w.room.Tile.Height + w.room.Joint
		r = plane.Rect{Left: from, Right: to, Bottom: x, Top: x + far}
	}
	if w.plumb {
		r = r.Transposed()
	}
	own := -1 // an opening that is pinned has no range of its own
	if k := slices.Index(w.free, i); k >= 0 {
		own = w.hullOf[k]
	}
	for n, o := range w.obstacles {
		if n != own && o.Left <= r.Right && o.Right >= r.Left && o.Bottom <= r.Top && o.Top >= r.Bottom {
			return false
		}
	}
	return true
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
	if w.zoned(right) {
		along, across := w.phases(line, edge)
		_, bands := w.standingEnds(along, w.rowsAt(across))
		m = w.zone(right, x, along, bands)
	}
	m.Exposed = w.ExposedAt(edge, x, right)
	return m
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
