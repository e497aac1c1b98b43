package mosaic

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// lines are those of the sides of a tile at which another sheet begins, to its right and
// over it, in the middle of the joint and inside the wall.
func (l lattice) lines(p *piece.Piece, c cell, base int, size survey.SheetSize, region plane.Region) (out [][2]plane.Point) {
	here, _ := l.sheet(c, base, size)
	for _, n := range l.beside() {
		if there, _ := l.sheet(cell{c.x + n.x, c.y + n.y}, base, size); there != here {
			by := plane.Point{X: length.Length(n.x)*l.u.X + length.Length(n.y)*l.v.X, Y: length.Length(n.x)*l.u.Y + length.Length(n.y)*l.v.Y}
			from, to := between(p, by)
			out = append(out, inside(region, from, to)...)
		}
	}
	return out
}

// beside are the neighbours of a tile of which it is not the neighbour in its turn.
func (l lattice) beside() []cell {
	switch {
	case l.plain:
		return []cell{{1, 0}, {0, 1}}
	case l.u.Y == 0:
		return []cell{{1, 0}, {0, 1}, {-1, 1}}
	}
	return []cell{{0, 1}, {1, 0}, {1, -1}}
}

// between is the line half way between a tile and the one that stands by from it: the
// tile's own side, moved out and drawn out to where it meets those of its other sides.
func between(p *piece.Piece, by plane.Point) (from, to plane.Point) {
	ring := p.Outline
	if ring == nil {
		ring = p.Tile.Ring(0)
	}
	centre := plane.Point{X: (p.Tile.Left + p.Tile.Right).Half(), Y: (p.Tile.Bottom + p.Tile.Top).Half()}
	middle := plane.Point{X: centre.X + by.X.Half(), Y: centre.Y + by.Y.Half()}
	best, near := 0, length.Length(-1)
	for i, c := range ring {
		d := ring[(i+1)%len(ring)]
		off := plane.Distance(middle, plane.Point{X: (c.X + d.X).Half(), Y: (c.Y + d.Y).Half()})
		if near < 0 || off < near {
			best, near = i, off
		}
	}
	a, b := ring[best].Point, ring[(best+1)%len(ring)].Point
	if p.Outline == nil { // the joints may be of two widths on the two sides of a corner
		gap := plane.Point{X: by.X.Abs() - p.Tile.Width(), Y: by.Y.Abs() - p.Tile.Height()}
		if by.Y == 0 {
			return plane.Point{X: p.Tile.Right + gap.X.Half(), Y: p.Tile.Bottom - gap.X.Half()}, plane.Point{X: p.Tile.Right + gap.X.Half(), Y: p.Tile.Top + gap.X.Half()}
		}
		return plane.Point{X: p.Tile.Left - gap.Y.Half(), Y: p.Tile.Top + gap.Y.Half()}, plane.Point{X: p.Tile.Right + gap.Y.Half(), Y: p.Tile.Top + gap.Y.Half()}
	}
	side := plane.Distance(centre, plane.Point{X: (a.X + b.X).Half(), Y: (a.Y + b.Y).Half()})
	out := func(q plane.Point) plane.Point {
		scale := func(l length.Length) length.Length {
			return length.Length(length.DivFloor(l*plane.Distance(centre, middle), max(1, side)))
		}
		return plane.Point{X: centre.X + scale(q.X-centre.X), Y: centre.Y + scale(q.Y-centre.Y)}
	}
	return out(a), out(b)
}

// inside are the parts of a line that lie in a region.
func inside(r plane.Region, from, to plane.Point) (out [][2]plane.Point) {
	line := plane.Through(from, to)
	stops := []plane.Point{from, to}
	for _, ring := range r {
		for i, c := range ring {
			d := ring[(i+1)%len(ring)]
			if sc, sd := line.Side(c.Point), line.Side(d.Point); sc > 0 && sd < 0 || sc < 0 && sd > 0 {
				stops = append(stops, plane.Crossing(c.Point, d.Point, line))
			}
		}
	}
	along := func(p plane.Point) length.Area {
		return line.D.X.Times(p.X-from.X) + line.D.Y.Times(p.Y-from.Y)
	}
	stops = slices.DeleteFunc(stops, func(p plane.Point) bool { return along(p) < 0 || along(p) > along(to) })
	slices.SortFunc(stops, func(a, b plane.Point) int { return cmp.Compare(along(a), along(b)) })
	for i := 1; i < len(stops); i++ {
		a, b := stops[i-1], stops[i]
		if a != b && r.Contains(plane.Point{X: (a.X + b.X).Half(), Y: (a.Y + b.Y).Half()}) {
			out = append(out, [2]plane.Point{a, b})
		}
	}
	return out
}
