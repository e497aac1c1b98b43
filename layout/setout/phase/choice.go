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
	apart      *tally           // of the pieces that no free mark can touch, as far as they are cut
	cover      *piece.Covered   // what these cover
	stands     merit.Merit      // what they are sure to give
	cut        int              // how much of them was cut: nothing, the corners, all
	order      []int            // in which order the boundaries are cut, after the corners
	zone, seen int              // how many of them are cut, and of what is cut next how many tiles
	axes       []ranked         // those whose options are listed
	ended      bool             // ends and the head are listed, and the best cut in their corners
	others     map[*axis]*tally // see beside
}

// choose begins a choice with nothing cut, and no option listed.
func (w *Wall) choose(x *stretch, h *hunt) *choice {
	return &choice{w: w, line: h.line, edge: x.edge, origin: w.Pattern.Origin(h.line, x.edge), apart: &tally{w: w, surely: true}, stands: x.merit}
}

// list lists the options of the next axis, once all that no free mark can touch is cut: few
// phases are still worth it then.
func (c *choice) list() {
	w, a := c.w, c.w.axes[len(c.axes)]
	options := w.options(a, c.origin, coarsely)
	r := ranked{wait: queue[*option]{before: func(x, y *option) bool {
		order := x.compare(w.order, y)
		if a.opening < 0 {
			order, _ = w.order.Compare(x.alone, y.alone)
		}
		return order < 0 || order == 0 && x.cut > y.cut // one that is cut shows what the best may give
	}}}
	r.small = c.along(a)
	r.wait.items = make([]*option, 0, len(options))
	for i := range options {
		r.small.add(w, a, &options[i])
		c.setAlone(a, &options[i])
		r.wait.items = append(r.wait.items, &options[i])
	}
	heap.Init(&r.wait)
	c.axes = append(c.axes, r)
	w.Work += len(options) / 64
	c.unsay()
}

// unsay leaves out of what stands what the options that are listed say.
func (c *choice) unsay() {
	for _, a := range c.w.axes[:len(c.axes)] {
		switch {
		case a.opening >= 0:
			c.stands.Openings = 0
		case c.w.movesExposed():
			c.stands.Exposed = 0
		}
	}
}

// least is what no way of the phase can beat.
func (c *choice) least() merit.Merit {
	m := c.stands
	for i := range c.axes {
		c.leastOf(i, 0).addTo(&m)
	}
	for i := range c.axes {
		m = c.later(m, c.axes[i].wait.first(), func(other int) *option { return c.leastOf(other, 0) }, i, len(c.axes))
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
		out = append(out, &stretch{edge: x.edge, marks: 1, merit: c.bound(pick, axis), choice: c, pick: pick, last: axis})
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

// closely is what a way cannot beat with the tiles cut that its marks may touch, but for those that
// an edge surely cuts alone and that cover nothing. It stops cutting, and is not done, once that comes after
// another merit.
func (c *choice) closely(s Setting, other *merit.Merit) (m merit.Merit, done bool) {
	w := c.w
	t := c.apart.copyTo(&w.closer)
	w.besideTables(t, s)
	g := w.ground(s.Placed)
	g.layer.Cover.ClearAtMost()
	g.layer.Cover.Take(c.cover)
	done = true
	g.marked.each(&w.Pattern, g.box, c.origin, func(set bond.Set, zone int) {
		if !done || !w.touched(w.boxOf(&set), 0) {
			return
		}
		count := !w.taken(&set, &s.Placed)
		if zone >= len(g.hard) && !count {
			return
		}
		g.layer.Cut(set, func(p *piece.Piece) {
			if count {
				t.piece(p, set.Tile)
			}
		})
		w.Work++
		done = other == nil || !t.after(other)
	})
	if done {
		for _, gap := range g.layer.Cover.Sure() {
			if w.touched(between(gap.From, gap.To, 1), w.far()) {
				t.sights[boolean(gap.Low)].Bare += gap.Length
			}
		}
	}
	m = t.merit()
	w.lines.add(&m, s, g.box)
	if done && w.alike.seen {
		m.Mirror = t.mirror()
	}
	return m, done
}
