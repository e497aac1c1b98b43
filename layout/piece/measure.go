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
	p.Sliver = p.Wide < r.SliverAlong || p.High < r.SliverAcross
	if !p.Whole {
		p.Cuts = cutsOf(p.Face)
		p.Kind = r.kind(p)
	}
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
	if s := visible.Transposed().Across(); s.Found {
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
// turns inwards between a plumb and a level edge a notch, a pipe a hole, and
// any other edge a straight cut along or across the tile's length. On a square
// tile a plumb cut counts as across.
func (r Rule) kind(p *Piece) Kind {
	var k Kind
	for _, ring := range p.Face {
		for i, c := range ring {
			if c.On != 0 {
				k |= r.edgeKind(p, c, ring[(i+1)%len(ring)])
			}
		}
	}
	for _, ring := range p.Visible {
		if ring.Area2() > 0 && notched(ring) {
			k |= Notch
		}
	}
	return k
}

func (r Rule) edgeKind(p *Piece, c, d plane.Corner) Kind {
	dx, dy := d.X-c.X, d.Y-c.Y
	box := p.Face.Bounds()
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
