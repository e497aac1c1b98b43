package bond

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// middles are the places across the lines, doubled, about which an opening may be centred so
// that it cuts alike on both sides, or nearly: by kind, each after every pitch.
type middles struct {
	tiles, joints, mirrors []length.Length
}

// middlesOf finds the middles of tiles, of joint lines, and the lines of symmetry. Where tiles
// come again across the lines after less than the least of them is wide, there are none to tell apart.
func middlesOf(p *Pattern, l *Lines) (m middles) {
	for _, t := range p.Tiles {
		if l.Pitch < t.Least/2 {
			return m
		}
	}
	add := func(list []length.Length, twice length.Length) []length.Length {
		twice = length.Mod(twice, 2*l.Pitch)
		for _, have := range list {
			if have == twice {
				return list
			}
		}
		return append(list, twice)
	}
	for _, t := range l.tiles {
		m.tiles = add(m.tiles, 2*t.from+t.size)
	}
	for _, at := range l.Begins {
		m.joints = add(m.joints, 2*at-l.joint)
	}
	first := l.tiles[0]
	for _, t := range l.tiles {
		for _, turn := range [...]length.Length{0, l.Pitch} {
			if twice := (2*first.from + first.size + 2*t.from + t.size).Half() + turn; p.mirrored(twice) {
				m.mirrors = add(m.mirrors, twice)
			}
		}
	}
	return m
}

// mirrored tells whether the pattern seen in a mirror that stands plumb at half of twice is the
// pattern again, to a few units.
func (p *Pattern) mirrored(twice length.Length) bool {
	over := func(a plane.Point) plane.Point { return plane.Point{X: -a.X, Y: a.Y} }
	if !p.inLattice(over(p.U)) || !p.inLattice(over(p.V)) {
		return false
	}
	for _, place := range p.Places {
		found := false
		for _, other := range p.Places {
			a, b := &p.Tiles[place.Tile], &p.Tiles[other.Tile]
			from, onto := a.BoxAt(place.At), b.BoxAt(other.At)
			found = found || a.mirrors(b) && p.inLattice(plane.Point{X: twice - from.Right - onto.Left, Y: from.Bottom - onto.Bottom})
		}
		if !found {
			return false
		}
	}
	return true
}

// near is how far corners may lie apart that are the same but for rounding.
const near = 6

// mirrors tells whether a tile seen in a mirror is the other, wherever they stand.
func (t *Tile) mirrors(other *Tile) bool {
	for _, c := range t.Outline {
		found := false
		for _, d := range other.Outline {
			found = found || (c.X-t.Box.Left-other.Box.Right+d.X).Abs() <= near && (c.Y-t.Box.Bottom-d.Y+other.Box.Bottom).Abs() <= near
		}
		if !found {
			return false
		}
	}
	return len(t.Outline) == len(other.Outline)
}

// inLattice tells whether a vector is a whole combination of U and V, to a few units.
func (p *Pattern) inLattice(v plane.Point) (is bool) {
	p.lattice(plane.Rect{Left: v.X - near, Right: v.X + near, Bottom: v.Y - near, Top: v.Y + near}, func(plane.Point) { is = true })
	return is
}

// Middles are the middle of a tile, of a joint line and the line of symmetry that are nearest to a
// place, doubled, as far as there are any.
func (l *Lines) Middles(twice length.Length) (out []length.Length) {
	for _, list := range [...][]length.Length{l.middles.mirrors, l.middles.tiles, l.middles.joints} {
		var best length.Length
		for i, at := range list {
			x := at + length.Length(length.DivFloor(twice-at+l.Pitch, 2*l.Pitch))*2*l.Pitch
			if i == 0 || (x-twice).Abs() < (best-twice).Abs() {
				best = x
			}
		}
		if len(list) > 0 {
			out = append(out, best)
		}
	}
	return out
}

// Centres are the middles of the tiles of the first places of the cell between two places, doubled.
func (l *Lines) Centres(places int, from, to length.Length) (out []length.Length) {
	for _, t := range l.tiles[:min(places, len(l.tiles))] {
		for x := from + length.Mod(2*t.from+t.size-from, 2*l.Pitch); x <= to; x += 2 * l.Pitch {
			out = append(out, x)
		}
	}
	return out
}

// Centre is the middle of the tile of a place that is nearest to a point, doubled, where the
// lattice's origin stands at origin.
func (p *Pattern) Centre(place int, origin, twice plane.Point) (best plane.Point) {
	at, box := p.Places[place].At, p.Tiles[p.Places[place].Tile].Box
	middle := plane.Point{X: 2*(origin.X+at.X) + box.Left + box.Right, Y: 2*(origin.Y+at.Y) + box.Bottom + box.Top}
	off := plane.Point{X: (twice.X - middle.X).Half(), Y: (twice.Y - middle.Y).Half()}
	first, far := true, length.Area(0)
	wide, high := p.U.X.Abs()+p.V.X.Abs(), p.U.Y.Abs()+p.V.Y.Abs()
	p.lattice(plane.Rect{Left: off.X - wide, Right: off.X + wide, Bottom: off.Y - high, Top: off.Y + high}, func(v plane.Point) {
		d := (v.X - off.X).Times(v.X-off.X) + (v.Y - off.Y).Times(v.Y-off.Y)
		if first || d < far {
			first, far, best = false, d, plane.Point{X: middle.X + 2*v.X, Y: middle.Y + 2*v.Y}
		}
	})
	return best
}
