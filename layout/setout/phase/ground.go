package phase

import (
	"slices"

	"coursewright/layout/bond"
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
	zones  []plane.Rect // where tiles meet a boundary: all others are whole or outside, and cover none
	turns  []plane.Rect // where two boundaries meet, and the pipes
	hard   []plane.Rect // the turns, then where tiles meet a boundary that may be left bare
	marked []plane.Rect // the hard ones, then all zones, as far as free marks may touch tiles there
	by     map[*axis]*zonesBy
	box    plane.Rect
}

// zonesBy are the turns and the hard zones as far as the marks of one axis may touch tiles there.
type zonesBy struct{ turns, hard []plane.Rect }

// touchedBy are the zones in which an axis may touch tiles.
func (g *ground) touchedBy(w *Wall, a *axis) *zonesBy {
	z := g.by[a]
	if z == nil {
		here := func(zones []plane.Rect) []plane.Rect {
			return slices.DeleteFunc(w.touchedIn(zones, []*axis{a}), func(r plane.Rect) bool { return r == nowhere })
		}
		z = &zonesBy{turns: here(g.turns), hard: here(g.hard)}
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
	s := w.Found.Shape(w.room.Units, p)
	g := &ground{placed: p, shape: s, layer: piece.NewLayer(s, w.Pattern, w.rule), box: s.Solid.Bounds()}
	far := max(w.rule.Joint, w.rule.Sealant) + 16
	zone := func(a, b plane.Point) {
		g.zones = append(g.zones, plane.Rect{Left: min(a.X, b.X) - far, Bottom: min(a.Y, b.Y) - far, Right: max(a.X, b.X) + far, Top: max(a.Y, b.Y) + far})
	}
	for _, r := range []plane.Region{s.Solid, s.Visible} {
		for _, ring := range r {
			for i, c := range ring {
				zone(c.Point, ring[(i+1)%len(ring)].Point)
				if c.On != 0 && w.rule.Sides[c.On].Meets {
					g.hard = append(g.hard, g.zones[len(g.zones)-1])
				}
				g.turns = append(g.turns, plane.Rect{Left: c.X - 1, Bottom: c.Y - 1, Right: c.X + 1, Top: c.Y + 1})
			}
		}
	}
	for _, pipe := range w.rule.Pipes {
		r := pipe.Radius + pipe.Radius/64 + 2
		zone(plane.Point{X: pipe.Centre.X - r, Y: pipe.Centre.Y - r}, plane.Point{X: pipe.Centre.X + r, Y: pipe.Centre.Y + r})
		g.turns = append(g.turns, g.zones[len(g.zones)-1])
	}
	g.zones, g.turns = slices.Compact(g.zones), slices.Compact(g.turns)
	g.hard = slices.Concat(g.turns, slices.Compact(g.hard))
	g.marked = w.touchedIn(slices.Concat(g.hard, g.zones), w.axes)
	w.shape = g
	if w.known == nil || len(w.known) >= mostGrounds {
		w.known = map[groundKey]*ground{}
	}
	w.known[key] = g
	w.Work += 20
	return g
}

func same(a, b survey.Placed) bool {
	return a.Left == b.Left && a.Right == b.Right && a.Head == b.Head && slices.Equal(a.Openings, b.Openings)
}

// eachIn gives every tile in some zones of the wall, once, without its outline.
func (w *Wall) eachIn(g *ground, zones []plane.Rect, origin plane.Point, each func(bond.Set)) {
	w.eachZone(g, zones, origin, func(set bond.Set, _ int) { each(set) })
}

// eachZone gives every tile in some zones, with the first that it is in.
func (w *Wall) eachZone(g *ground, zones []plane.Rect, origin plane.Point, each func(set bond.Set, zone int)) {
	for n, zone := range zones {
		w.Pattern.Each(origin, zone, func(place int, at plane.Point) {
			tile := w.Pattern.Places[place].Tile
			box := w.Pattern.Tiles[tile].BoxAt(at)
			for _, before := range zones[:n] {
				if before.Overlaps(box) {
					return
				}
			}
			if g.box.Overlaps(box) {
				each(bond.Set{Place: place, Tile: tile, At: at}, n)
			}
		})
	}
}
