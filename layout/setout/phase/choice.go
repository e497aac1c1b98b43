package phase

import (
	"container/heap"
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// choice is all ways to place the free marks of a wall at one phase: the options of every
// axis. What the wall gives where no free mark comes and what an option of each axis gives add
// up, so the ways are taken in the order of what they cannot beat.
type choice struct {
	w          *Wall
	line, edge length.Length
	origin     plane.Point
	apart      *tally      // of the pieces that no free mark can touch, once they are all cut
	stands     merit.Merit // what they are sure to give
	cut        int         // how much of them was cut: nothing, the corners, all
	axes       []ranked
}

// ranked are the options of an axis, the best first as far as they were asked for. Before one is
// given its corners are cut.
type ranked struct {
	given []*option
	wait  queue[*option]
}

// choose lists the options of every axis.
func (w *Wall) choose(x *stretch, h *hunt) *choice {
	c := &choice{w: w, line: h.line, edge: x.edge, origin: w.Pattern.Origin(h.line, x.edge)}
	c.stand(x.merit)
	for _, a := range w.axes {
		options := w.options(a, c.origin, coarsely)
		r := ranked{wait: queue[*option]{before: func(a, b *option) bool { return w.order.Better(&a.merit, &b.merit) }}}
		for i := range options {
			r.wait.items = append(r.wait.items, &options[i])
		}
		heap.Init(&r.wait)
		c.axes = append(c.axes, r)
		w.Work += len(options) / 64
	}
	return c
}

// least is what no way of the phase can beat.
func (c *choice) least() merit.Merit {
	m := c.stands
	for i := range c.axes {
		m = m.Plus(&c.axes[i].wait.first().merit)
	}
	return m
}

// stand notes what the wall is sure to give where no free mark comes.
func (c *choice) stand(m merit.Merit) {
	c.stands = m
	c.stands.Openings = 0 // the options say it
	if c.w.movesExposed() {
		c.stands.Exposed = 0
	}
}

// All of the tiles that no free mark can touch are cut.
const allCut = 2

// closer cuts more of the tiles that no free mark can touch: first those in the corners and at the
// pipes, then all, which shows what wall is bare there.
func (c *choice) closer() {
	w := c.w
	g, t := w.ground(w.outer), &tally{w: w}
	zones := g.zones
	if c.cut++; c.cut < allCut {
		w.atBest(t, c.line, c.edge, 0, 0, w.inner)
		zones = g.turns
	}
	g.layer.Cover.Clear()
	w.eachIn(g, zones, c.origin, func(set bond.Set) {
		if w.touched(w.boxOf(&set), 0) || c.cut < allCut && w.standsAlone(&set) {
			return
		}
		g.layer.Cut(set, func(p *piece.Piece) { t.piece(p, set.Tile) })
		w.Work++
	})
	if c.cut == allCut {
		for _, gap := range g.layer.Cover.Gaps() {
			if !w.touched(between(gap.From, gap.To, 1), w.far()) {
				t.sights[boolean(gap.Low)].Bare += gap.Length
			}
		}
		c.apart = t
	}
	m := t.merit()
	w.lines.sure(&m, c.line, c.edge, 0, 0)
	c.stand(m)
}

// touched tells whether a free mark may come into a box, or nearer than so much to it.
func (w *Wall) touched(box plane.Rect, far length.Length) bool {
	return w.touchedBut(nil, box, far)
}

// boxOf is round a tile where it stands.
func (w *Wall) boxOf(set *bond.Set) plane.Rect {
	b := w.Pattern.Tiles[set.Tile].Box
	return plane.Rect{Left: b.Left + set.At.X, Bottom: b.Bottom + set.At.Y, Right: b.Right + set.At.X, Top: b.Top + set.At.Y}
}

// movesExposed tells whether the exposed end of the wall is free.
func (w *Wall) movesExposed() bool {
	l, r := w.Found.Left.Meets, w.Found.Right.Meets
	return l != r && (l && w.moves(survey.SideRight) || r && w.moves(survey.SideLeft))
}

// option is the nth best option of an axis, or nil.
func (c *choice) option(axis, n int) *option {
	r := &c.axes[axis]
	for len(r.given) <= n && !r.wait.empty() {
		o := r.wait.take()
		if o.cut {
			r.given = append(r.given, o)
			continue
		}
		c.cutCorners(c.w.axes[axis], o)
		r.wait.add(o)
	}
	if n >= len(r.given) {
		return nil
	}
	return r.given[n]
}

// cutCorners works an option out with the tiles cut that only its axis can touch, but for those
// that its own edges cut alone, and with what wall is bare there.
func (c *choice) cutCorners(a *axis, o *option) {
	w := c.w
	p := w.outer
	p.Openings = slices.Clone(p.Openings)
	a.set(&p, o)
	g, t := w.ground(p), &tally{w: w}
	for _, e := range a.edges {
		e.bounds(t, c.origin, &p, a)
	}
	far := w.far()
	near := wider(a.hull, 2*far)
	g.layer.Cover.Clear()
	w.eachIn(g, g.hard, c.origin, func(set bond.Set) {
		box := w.boxOf(&set)
		if !near.Overlaps(box) || w.touchedBut(a, box, 0) {
			return
		}
		count := wider(box, rounded).Overlaps(a.hull)
		for _, e := range a.edges {
			count = count && !e.takes(w, &set, &p, a)
		}
		g.layer.Cut(set, func(p *piece.Piece) {
			if count {
				t.piece(p, set.Tile)
			}
		})
		w.Work++
	})
	for _, gap := range g.layer.Cover.Gaps() {
		if box := between(gap.From, gap.To, 1); !w.touchedBut(a, box, far) {
			t.sights[boolean(gap.Low)].Bare += within(gap, wider(a.hull, far))
		}
	}
	// Other runs are those of edges that stand, and have their least elsewhere too.
	t.runs = slices.DeleteFunc(t.runs, func(r run) bool {
		return !slices.ContainsFunc(r.edges[:r.n], func(e piece.Edge) bool { return e.Side() == a.on })
	})
	m := t.merit()
	m.Exposed, m.Openings, m.Near = o.merit.Exposed, o.merit.Openings, o.merit.Near
	o.merit, o.cut = m, true
	w.Work += 2
}

// within is how much of a bare stretch lies in a box.
func within(gap piece.Gap, box plane.Rect) length.Length {
	b := between(gap.From, gap.To, 1)
	if !b.Overlaps(box) {
		return 0
	}
	all, in := b.Right-b.Left-2, min(b.Right, box.Right)-max(b.Left, box.Left)-2
	if gap.Edge.Across() {
		all, in = b.Top-b.Bottom-2, min(b.Top, box.Top)-max(b.Bottom, box.Bottom)-2
	}
	return min(gap.Length, max(0, min(all, in)))
}

// touchedBut tells whether the marks of another axis may come into a box, or nearer.
func (w *Wall) touchedBut(a *axis, box plane.Rect, far length.Length) bool {
	box = wider(box, far+rounded)
	return slices.ContainsFunc(w.axes, func(b *axis) bool { return b != a && b.hull.Overlaps(box) })
}

// far is how far from a stretch of boundary a tile may stand that covers some of it.
func (w *Wall) far() length.Length { return w.reach() + max(w.rule.Joint, w.rule.Sealant) }

func wider(r plane.Rect, by length.Length) plane.Rect {
	return plane.Rect{Left: r.Left - by, Bottom: r.Bottom - by, Right: r.Right + by, Top: r.Top + by}
}

// bound is what a way to place the marks cannot beat.
func (c *choice) bound(pick []int) merit.Merit {
	m := c.stands
	for axis, n := range pick {
		m = m.Plus(&c.option(axis, n).merit)
	}
	return m
}

// placed are the marks of a way, and whether no opening stands in another.
func (c *choice) placed(pick []int) (survey.Placed, bool) {
	p := c.w.outer
	p.Openings = slices.Clone(p.Openings)
	for axis, n := range pick {
		c.w.axes[axis].set(&p, c.option(axis, n))
	}
	return p, apart(p.Openings)
}

// next lists the ways that come after one: with one axis, from the last that was changed on,
// placed the next best. So every way is listed once, after one that it does not beat.
func (c *choice) next(x *stretch) (out []*stretch) {
	for axis := x.last; axis < len(x.pick); axis++ {
		if c.option(axis, x.pick[axis]+1) == nil {
			continue
		}
		pick := slices.Clone(x.pick)
		pick[axis]++
		out = append(out, &stretch{edge: x.edge, marks: 1, merit: c.bound(pick), choice: c, pick: pick, last: axis})
	}
	return out
}

// apart tells whether no opening stands in another.
func apart(all []survey.Edges) bool {
	for i, a := range all {
		for _, b := range all[:i] {
			if a.Left < b.Right && b.Left < a.Right && a.Bottom < b.Top && b.Bottom < a.Top {
				return false
			}
		}
	}
	return true
}

// closely is what a way cannot beat with the tiles in corners cut that its marks may touch. It
// stops cutting, and is not done, once that comes after another merit.
func (c *choice) closely(s Setting, other *merit.Merit) (m merit.Merit, done bool) {
	w := c.w
	t := *c.apart
	t.runs = slices.Clone(t.runs)
	w.besideTables(&t, s)
	g := w.ground(s.Placed)
	g.layer.Cover.Clear()
	done = true
	w.eachIn(g, g.turns, c.origin, func(set bond.Set) {
		if done && w.touched(w.boxOf(&set), 0) && !w.alone(set, &s.Placed) {
			g.layer.Cut(set, func(p *piece.Piece) { t.piece(p, set.Tile) })
			w.Work++
			done = other == nil || !t.after(other)
		}
	})
	m = t.merit()
	w.lines.add(&m, s, g.box)
	return m, done
}

// looked is how many options of an axis are counted in the end, where it is not proven that
// none is better.
const looked = 6

// placeMarks moves the marks of one axis of a wall after another to where they serve the
// phase best, until none is better or each was moved twice. What stands afterwards is no
// worse than what stood before.
func (s *solver) placeMarks(w *Wall, c Counted) Counted {
	for range 2 {
		better := false
		for _, a := range w.axes {
			options := w.options(a, w.Pattern.Origin(c.Line, c.Edge), finely)
			slices.SortStableFunc(options, func(a, b option) int { order, _ := w.order.Compare(&a.merit, &b.merit); return order })
			for i := range options[:min(looked, len(options))] {
				if s.ended = s.ended || s.ctx.Err() != nil; s.ended {
					return c
				}
				p := c.Placed
				p.Openings = slices.Clone(p.Openings)
				if a.set(&p, &options[i]); !apart(p.Openings) {
					continue
				}
				if n := w.Count(Setting{c.Line, c.Edge, p}); s.order.Better(&n.Merit, &c.Merit) {
					c, better = n, true
				}
			}
		}
		if !better {
			break
		}
	}
	return c
}
