package phase

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// ground is a wall with its marks placed, on which any phase may be laid.
type ground struct {
	placed survey.Placed
	shape  survey.Shape
	layer  *piece.Layer
	zones  zones        // where tiles meet a boundary: all others are whole or outside, and cover none
	turns  zones        // where two boundaries meet, and the pipes
	hard   []plane.Rect // the turns, then where tiles meet a boundary that may be left bare
	marked zones        // the hard ones, then all zones, as far as free marks may touch tiles there
	by     map[*axis]*zonesBy

	meets    [][]int // of every zone the boundaries of the cover of which it holds all that covers them
	meetsFar []int   // and the others
	box      plane.Rect
}

// zonesBy are the turns and the hard zones as far as the marks of one axis may touch tiles there.
type zonesBy struct{ turns, hard zones }

// touchedBy are the zones in which an axis may touch tiles.
func (g *ground) touchedBy(w *Wall, a *axis) *zonesBy {
	z := g.by[a]
	if z == nil {
		here := func(boxes []plane.Rect) zones {
			return zones{boxes: slices.DeleteFunc(w.touchedIn(boxes, []*axis{a}), func(r plane.Rect) bool { return r == nowhere })}
		}
		z = &zonesBy{turns: here(g.turns.boxes), hard: here(g.hard)}
		if g.by == nil {
			g.by = map[*axis]*zonesBy{}
		}
		g.by[a] = z
	}
	return z
}

// mostGrounds is how many placings of a wall's marks are kept.
const mostGrounds = 1024

// groundKey finds a ground again: where the ends, the head and the last free opening stand.
type groundKey struct {
	left, right, head length.Length
	last              survey.Edges
}

// ground is the wall with its marks placed; the last ones are kept.
func (w *Wall) ground(p survey.Placed) *ground {
	if w.shape != nil && same(w.shape.placed, p) {
		return w.shape
	}
	key := groundKey{p.Left, p.Right, p.Head, survey.Edges{}}
	if n := len(w.axes); n > 0 && w.axes[n-1].opening >= 0 {
		key.last = p.Openings[w.axes[n-1].opening]
	}
	if g := w.known[key]; g != nil && same(g.placed, p) {
		w.shape = g
		return g
	}
	p.Openings = slices.Clone(p.Openings)
	s := w.Found.Shape(w.room.Units, p)
	g := &ground{placed: p, shape: s, layer: piece.NewLayer(s, w.Pattern, w.rule), box: s.Solid.Bounds()}
	far := max(w.rule.Joint, w.rule.Sealant) + 16
	var all, turns []plane.Rect
	zone := func(a, b plane.Point) {
		all = append(all, plane.Rect{Left: min(a.X, b.X) - far, Bottom: min(a.Y, b.Y) - far, Right: max(a.X, b.X) + far, Top: max(a.Y, b.Y) + far})
	}
	for _, r := range []plane.Region{s.Solid, s.Visible} {
		for _, ring := range r {
			for i, c := range ring {
				zone(c.Point, ring[(i+1)%len(ring)].Point)
				if c.On != 0 && w.rule.Sides[c.On].Meets {
					g.hard = append(g.hard, all[len(all)-1])
				}
				turns = append(turns, plane.Rect{Left: c.X - 1, Bottom: c.Y - 1, Right: c.X + 1, Top: c.Y + 1})
			}
		}
	}
	for _, pipe := range w.rule.Pipes {
		r := pipe.Radius + pipe.Radius/64 + 2
		zone(plane.Point{X: pipe.Centre.X - r, Y: pipe.Centre.Y - r}, plane.Point{X: pipe.Centre.X + r, Y: pipe.Centre.Y + r})
		turns = append(turns, all[len(all)-1])
	}
	all, turns = once(all), once(turns)
	g.hard = slices.Concat(turns, once(g.hard))
	g.zones, g.turns, g.marked = zones{boxes: all}, zones{boxes: turns}, zones{boxes: w.touchedIn(slices.Concat(g.hard, all), w.axes)}
	g.findMeets()
	w.shape = g
	if w.known == nil || len(w.known) >= mostGrounds {
		w.known = map[groundKey]*ground{}
	}
	w.known[key] = g
	w.Work += 20
	return g
}

// findMeets finds in which zone all stands that covers a boundary.
func (g *ground) findMeets() {
	g.meets = make([][]int, len(g.zones.boxes))
	for n, box := range g.layer.Cover.Boxes() {
		if k := slices.IndexFunc(g.zones.boxes, func(z plane.Rect) bool { return z.Holds(box) }); k >= 0 {
			g.meets[k] = append(g.meets[k], n)
		} else {
			g.meetsFar = append(g.meetsFar, n)
		}
	}
}

// once are boxes, each once.
func once(boxes []plane.Rect) []plane.Rect {
	out := boxes[:0]
	for _, b := range boxes {
		if !slices.Contains(out, b) {
			out = append(out, b)
		}
	}
	return out
}

func same(a, b survey.Placed) bool {
	return a.Left == b.Left && a.Right == b.Right && a.Head == b.Head && slices.Equal(a.Openings, b.Openings)
}
