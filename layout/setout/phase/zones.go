package phase

import (
	"math/bits"
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/plane"
)

// zones are boxes on a wall whose tiles are asked for, phase after phase. From the second time on it is known
// which copies of the tiles may be in which box.
type zones struct {
	boxes []plane.Rect
	near  [][]nearBy // by box
	asked bool
}

// nearBy is a copy of a tile, where the lattice has not moved, that may be in a box of the zones.
type nearBy struct {
	place, tile int
	at          plane.Point
	box         plane.Rect
	in          uint64 // the boxes in which it may be
}

// mostKnown is how many boxes there are at most whose tiles are known.
const mostKnown = 64

// eachIn gives every tile in some zones of the wall, once, without its outline.
func (w *face) eachIn(g *ground, z *zones, origin plane.Point, each func(bond.Set)) {
	z.each(&w.Pattern, g.box, origin, func(set bond.Set, _ int) { each(set) })
}

// each gives every tile in the zones and in a box round them, with the first zone that it is in.
func (z *zones) each(p *bond.Pattern, round plane.Rect, origin plane.Point, each func(set bond.Set, zone int)) {
	if !z.asked || len(z.boxes) > mostKnown {
		z.asked = true
		eachAsked(p, z.boxes, round, origin, each)
		return
	}
	if z.near == nil {
		z.find(p)
	}
	move := p.Phase(origin)
	for n := range z.near {
		z.eachKnown(1<<n-1, n, round, move, func(set bond.Set) { each(set, n) })
	}
}

// eachKnown gives every tile in the nth of zones whose tiles are known, but for those in some others.
func (z *zones) eachKnown(but uint64, n int, round plane.Rect, move plane.Point, each func(bond.Set)) {
	zone := &z.boxes[n]
	for k := range z.near[n] {
		c := &z.near[n][k]
		box := plane.Rect{Left: c.box.Left + move.X, Bottom: c.box.Bottom + move.Y, Right: c.box.Right + move.X, Top: c.box.Top + move.Y}
		if zone.Overlaps(box) && !z.within(c.in&but, &box) && round.Overlaps(box) {
			each(bond.Set{Place: c.place, Tile: c.tile, At: plane.Point{X: c.at.X + move.X, Y: c.at.Y + move.Y}})
		}
	}
}

// eachOf gives every tile in the nth of some zones that is in none of those seen before.
func (z *zones) eachOf(p *bond.Pattern, round plane.Rect, seen []int, n int, origin plane.Point, each func(bond.Set)) {
	if len(z.boxes) > mostKnown {
		boxes := make([]plane.Rect, 0, len(seen)+1)
		for _, i := range append(slices.Clone(seen), n) {
			boxes = append(boxes, z.boxes[i])
		}
		eachAsked(p, boxes, round, origin, func(set bond.Set, zone int) {
			if zone == len(seen) {
				each(set)
			}
		})
		return
	}
	if z.near == nil {
		z.find(p)
	}
	before := uint64(0)
	for _, i := range seen {
		before |= 1 << i
	}
	z.eachKnown(before, n, round, p.Phase(origin), each)
}

// within tells whether a tile is in one of some boxes.
func (z *zones) within(some uint64, tile *plane.Rect) bool {
	for ; some != 0; some &= some - 1 {
		if z.boxes[bits.TrailingZeros64(some)].Overlaps(*tile) {
			return true
		}
	}
	return false
}

// find lists which copies of the tiles may be in which box, wherever the lattice moves in the box of phases.
func (z *zones) find(p *bond.Pattern) {
	from := func(box plane.Rect) plane.Rect {
		box.Left, box.Bottom = box.Left-p.Reach, box.Bottom-p.Rise
		return box
	}
	z.near = make([][]nearBy, len(z.boxes))
	for n, zone := range z.boxes {
		if zone.Empty() {
			continue
		}
		p.Each(plane.Point{}, from(zone), func(place int, at plane.Point) {
			tile := p.Places[place].Tile
			c := nearBy{place: place, tile: tile, at: at, box: p.Tiles[tile].BoxAt(at)}
			for i, other := range z.boxes {
				if !other.Empty() && from(other).Overlaps(c.box) {
					c.in |= 1 << i
				}
			}
			z.near[n] = append(z.near[n], c)
		})
	}
}

// eachAsked is each for boxes of which nothing is known.
func eachAsked(p *bond.Pattern, boxes []plane.Rect, round plane.Rect, origin plane.Point, each func(set bond.Set, zone int)) {
	for n, zone := range boxes {
		p.Each(origin, zone, func(place int, at plane.Point) {
			tile := p.Places[place].Tile
			box := p.Tiles[tile].BoxAt(at)
			for _, before := range boxes[:n] {
				if before.Overlaps(box) {
					return
				}
			}
			if round.Overlaps(box) {
				each(bond.Set{Place: place, Tile: tile, At: at}, n)
			}
		})
	}
}
