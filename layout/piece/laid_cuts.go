package piece

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

func isBox(r plane.Ring) bool {
	if len(r) != 4 {
		return false
	}
	for i, c := range r {
		if d := r[(i+1)%4]; c.X != d.X && c.Y != d.Y {
			return false
		}
	}
	return true
}

// measureLaid fills in sizes, share, cuts and kind of a piece of a pattern: its
// share is of its least width.
func (r *Rule) measureLaid(p *Piece, tile *bond.Tile, limits Limits, sizes bool) {
	if sizes {
		box := p.Visible.Bounds()
		p.Wide, p.High = box.Width(), box.Height()
	}
	if p.Whole && same(p.Face, p.Visible) {
		p.Least = tile.Least
	} else {
		if sizes && tile.Rect && isBox(p.Outline) {
			p.Wide, p.High = leastFaces(p.Visible)
		}
		p.Least = min(tile.Least, p.Visible.LeastWidth())
	}
	p.Share = Part(p.Least, tile.Least)
	if p.Whole {
		return
	}
	p.Kind = r.kindLaid(p, tile)
	if sizes || p.Kind&Hole != 0 {
		p.Cuts = cutsOf(p.Face)
	}
	p.Across, p.Up = edgesOf(p.solid, p.Across, p.Up)
	r.gradeBy(p, limits, limits, p.Least, p.Least)
	p.Awkward = p.Kind&Hole != 0 && r.awkward(p)
}

// kindLaid tells the cuts from the edges, in the tile's own frame: a straight cut
// runs along or square to an edge of the tile, a taper nearly so, any other is an
// angle cut.
func (r *Rule) kindLaid(p *Piece, tile *bond.Tile) Kind {
	var k Kind
	for _, ring := range p.Face {
		for i, c := range ring {
			if c.On == 0 {
				continue
			}
			if r.isPipe(c.On) {
				k |= Hole
				continue
			}
			k |= CutAlong(p.Outline, tile.Rect, c.Point, ring[(i+1)%len(ring)].Point)
		}
	}
	for _, ring := range p.Visible {
		if bitten(ring) {
			k |= Notch
		}
	}
	return k
}

// taper is how much a cut may slant, as a part of its length, to be scribed as a
// taper rather than marked as an angle cut: 1 in 8. Common practice, no source.
const taper = 8

// CutAlong is the kind of a straight cut from a to b in a tile with such an outline, which is a rectangle or not.
func CutAlong(outline plane.Ring, rect bool, a, b plane.Point) Kind {
	kind := Angle
	long := length.Area(0)
	for i, c := range outline {
		d := outline[(i+1)%len(outline)]
		e := plane.Point{X: d.X - c.X, Y: d.Y - c.Y}
		if l := length.Area(e.X)*length.Area(e.X) + length.Area(e.Y)*length.Area(e.Y); l > long {
			long = l
		}
	}
	for i, c := range outline {
		d := outline[(i+1)%len(outline)]
		e, f := plane.Point{X: d.X - c.X, Y: d.Y - c.Y}, plane.Point{X: b.X - a.X, Y: b.Y - a.Y}
		along := length.Area(e.X)*length.Area(f.X) + length.Area(e.Y)*length.Area(f.Y)
		off := length.Area(e.X)*length.Area(f.Y) - length.Area(e.Y)*length.Area(f.X)
		along, off = max(along, -along), max(off, -off)
		if off*taper >= along {
			continue
		}
		// Crossings are rounded to the unit, so that a straight cut may seem to slant by two.
		if off > 2*length.Area(e.X.Abs()+e.Y.Abs()) {
			return Taper
		}
		if l := length.Area(e.X)*length.Area(e.X) + length.Area(e.Y)*length.Area(e.Y); rect && l >= long {
			return Rip
		}
		kind = Cross
	}
	return kind
}

// LeastEffort is Effort of a piece of a pattern however slanted boundaries are rounded: a taper so short that
// it slants by a few units may as well be a straight cut.
func (p *Piece) LeastEffort() int {
	if p.Kind&Taper == 0 {
		return p.Effort()
	}
	for _, ring := range p.Face {
		for i, c := range ring {
			d := ring[(i+1)%len(ring)]
			if c.On != 0 && max((d.X-c.X).Abs(), (d.Y-c.Y).Abs()) > 0 && p.tapersBy(c.Point, d.Point) <= 2*rounding {
				if p.Kind&Cross != 0 {
					return p.Effort() - 2
				}
				return p.Effort() - 1
			}
		}
	}
	return p.Effort()
}

// tapersBy is by how much a cut from a to b slants to the edge of its tile that it runs along or square
// to most nearly.
func (p *Piece) tapersBy(a, b plane.Point) length.Length {
	least := length.Longest
	for i, c := range p.Outline {
		d := p.Outline[(i+1)%len(p.Outline)]
		if long := plane.Distance(c.Point, d.Point); long > 0 {
			x, y := (d.X-c.X).Times(b.X-a.X)+(d.Y-c.Y).Times(b.Y-a.Y), (d.X-c.X).Times(b.Y-a.Y)-(d.Y-c.Y).Times(b.X-a.X)
			least = min(least, length.Length(min(max(x, -x), max(y, -y)))/long)
		}
	}
	return least
}

// EffortAlong is what one straight cut of a tile in a direction costs at least, as
// Effort has it: a short taper may be rounded to a straight cut.
func EffortAlong(tile bond.Tile, d plane.Point) int {
	p := Piece{Kind: CutAlong(tile.Outline, tile.Rect, plane.Point{}, d)}
	if p.Kind == Taper {
		p.Kind = Cross
	}
	return p.Effort()
}
