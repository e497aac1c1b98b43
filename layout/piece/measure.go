package piece

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// measure fills in sizes, share, cuts and kind, in the frame of the rows.
func (r Rule) measure(p *Piece) {
	if p.Whole && len(p.Visible) == 1 && len(p.Visible[0]) == 4 && same(p.Face, p.Visible) {
		p.Wide, p.High = r.Along, r.Across
	} else {
		p.Wide, p.High = leastFaces(p.Visible)
	}
	p.Least, p.Share = p.Wide, Part(p.Wide, r.Along)
	if s := Part(p.High, r.Across); s.Less(p.Share) {
		p.Least, p.Share = p.High, s
	}
	if !p.Whole {
		p.Cuts = cutsOf(p.Face)
		p.Kind = r.kind(p)
		p.Across, p.Up = edgesOf(p.solid, nil, nil)
		r.grade(p)
		p.Awkward = p.Kind&Hole != 0 && r.awkward(p)
	}
}

// grade judges the piece in plain sight and out of it, each by the directions
// in which an edge of that sight cuts it. An edge out of sight takes the whole
// direction with it.
func (r Rule) grade(p *Piece) { r.gradeBy(p, r.Limits[0], r.Limits[1], p.Wide, p.High) }

// gradeBy judges by the limits and the sizes of each direction.
func (r Rule) gradeBy(p *Piece, across, up Limits, wide, high length.Length) {
	for way, edges := range [...][]Edge{p.Across, p.Up} {
		if len(edges) == 0 {
			continue
		}
		size, limits, low := wide, across, 0
		if way == 1 {
			size, limits = high, up
		}
		for _, e := range edges {
			if r.wallEdge(e).Low(r.Sides) {
				low = 1
			}
		}
		p.grades[low] = max(p.grades[low], limits.grade(size))
	}
	p.Unworkable = max(p.grades[0], p.grades[1]) == Hopeless
	p.Sliver = !p.Unworkable && max(p.grades[0], p.grades[1]) == Small
}

// wallEdge is an edge in the frame of the rows as it stands on the wall.
func (r Rule) wallEdge(e Edge) Edge {
	if r.Plumb {
		return e.Transposed()
	}
	return e
}

func (l Limits) grade(size length.Length) Grade {
	switch {
	case size < l.Unworkable:
		return Hopeless
	case size < l.Sliver:
		return Small
	}
	return Sound
}

// edgesOf lists the boundary edges of a piece, the plumb ones and the level ones, after others.
func edgesOf(solid plane.Region, across, up []Edge) (_, _ []Edge) {
	for _, ring := range solid {
		for i, c := range ring {
			if c.On == 0 {
				continue
			}
			e := EdgeOf(c.On, facing(c, ring[(i+1)%len(ring)]))
			if e.Across() {
				across = append(across, e)
			} else {
				up = append(up, e)
			}
		}
	}
	return sorted(across), sorted(up)
}

func sorted(edges []Edge) []Edge {
	if len(edges) < 2 {
		return edges
	}
	slices.Sort(edges)
	return slices.Compact(edges)
}

// awkward tells whether the rim of one of the holes is close to an edge of the
// piece, the tile's own or a cut one, or breaks through it.
func (r Rule) awkward(p *Piece) bool {
	for _, pipe := range r.Pipes {
		if !slices.Contains(p.Cuts, pipe.Side) {
			continue
		}
		for _, ring := range p.solid {
			for i, c := range ring {
				if plane.Within(pipe.Centre, c.Point, ring[(i+1)%len(ring)].Point, pipe.Radius+r.NearEdge) {
					return true
				}
			}
		}
	}
	return false
}

// leastFaces are wide and high of formats.md. Where no two plumb edges see each
// other, wide is the whole extent, and so with high; a piece that is hidden
// altogether has none.
func leastFaces(visible plane.Region) (wide, high length.Length) {
	box := visible.Bounds()
	wide, high = box.Width(), box.Height()
	if s := visible.Across(); s.Found {
		wide = s.Least
	}
	if s := visible.Upward(); s.Found {
		high = s.Least
	}
	return wide, high
}

func cutsOf(face plane.Region) []plane.Side {
	var cuts []plane.Side
	for _, ring := range face {
		for _, c := range ring {
			if c.On != 0 {
				cuts = append(cuts, c.On)
			}
		}
	}
	slices.Sort(cuts)
	return slices.Compact(cuts)
}

// kind tells the cuts from the edges: a raked edge is a taper, a corner that
// turns inwards between a plumb and a level edge a notch, an opening within the tile one too,
// a pipe a hole, and
// any other edge a straight cut along or across the tile's length. On a square
// tile a plumb cut counts as across.
func (r Rule) kind(p *Piece) Kind {
	var k Kind
	box := p.Face.Bounds()
	for _, ring := range p.Face {
		for i, c := range ring {
			if c.On != 0 {
				k |= r.edgeKind(box, c, ring[(i+1)%len(ring)])
			}
		}
	}
	for _, ring := range p.Visible {
		if bitten(ring) {
			k |= Notch
		}
	}
	return k
}

// edgeKind is the kind of cut along an edge of a piece that a box holds.
func (r Rule) edgeKind(box plane.Rect, c, d plane.Corner) Kind {
	dx, dy := d.X-c.X, d.Y-c.Y
	alongTheLength := r.Along >= r.Across
	switch {
	case r.isPipe(c.On):
		return Hole
	case dx != 0 && dy != 0:
		return Taper
	case dx == 0 && (c.X == box.Left || c.X == box.Right):
		return straight(!alongTheLength)
	case dy == 0 && (c.Y == box.Bottom || c.Y == box.Top):
		return straight(alongTheLength)
	}
	return 0
}

func straight(along bool) Kind {
	if along {
		return Rip
	}
	return Cross
}

func (r Rule) isPipe(s plane.Side) bool {
	return int(s) < len(r.Sides) && r.Sides[s].Kind == survey.Pipe
}

// bitten tells whether a ring of what is seen of a piece asks for more than straight cuts: it
// is the outline and notched, or an opening that lies wholly within the tile.
func bitten(r plane.Ring) bool { return r.Area2() < 0 || notched(r) }

// notched tells whether a ring turns inwards between a steep and a flat edge.
func notched(r plane.Ring) bool {
	n := len(r)
	for i, c := range r {
		a, b := r[(i+n-1)%n], r[(i+1)%n]
		turn := int64(c.X-a.X)*int64(b.Y-c.Y) - int64(c.Y-a.Y)*int64(b.X-c.X)
		if turn < 0 && plane.Steep(a, c) != plane.Steep(c, b) {
			return true
		}
	}
	return false
}
