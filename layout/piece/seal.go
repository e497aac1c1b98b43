package piece

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// sealed tells whether a remainder is only a strip along a boundary that meets
// something, nowhere wider than sealant may fill beyond the gap. Such a strip
// is not cut. It leaves bare wall where no boundary it lies along has a tile
// within reach.
func (c *cutter) sealed(row bond.Row, tile plane.Rect, part plane.Region) bool {
	found := false
	nearest := reach{}
	for _, side := range cutsOf(part) {
		b := c.rule.Sides[side]
		limit := c.rule.Sealant - b.Gap
		if !b.Meets || limit <= 0 || !thin(part, side, limit) {
			continue
		}
		if r := c.beyondStrip(row, tile, part, side); !found || r.distance < nearest.distance {
			nearest, found = r, true
		}
	}
	if found {
		c.note(nearest)
	}
	return found
}

// thin tells whether the part is nowhere wider than limit, measured away from
// the edges that lie on side.
func thin(part plane.Region, side plane.Side, limit length.Length) bool {
	box := part.Bounds()
	if box.Width() > limit && box.Height() > limit && part.Area2() > 2*(box.Width()+box.Height()).Times(limit) {
		return false
	}
	upright := false
	for _, ring := range part {
		for i, c := range ring {
			if c.On == side {
				upright = upright || plane.Steep(c, ring[(i+1)%len(ring)])
			}
		}
	}
	if upright {
		return part.Across().Most <= limit
	}
	return part.Transposed().Across().Most <= limit
}

// beyondStrip is how far the next tile is from the side that a sealed strip
// lies along.
func (c *cutter) beyondStrip(row bond.Row, tile plane.Rect, part plane.Region, side plane.Side) reach {
	worst := reach{}
	bed := c.rule.Joint
	for _, ring := range part {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.On != side {
				continue
			}
			gap := c.rule.Sides[side].Gap
			switch {
			case plane.Steep(a, b) && b.Y < a.Y: // a left end: the next tile is to the right
				worst.farther(gap+tile.Right+row.Pitch-row.Width-min(a.X, b.X), a.Point)
			case plane.Steep(a, b):
				worst.farther(gap+max(a.X, b.X)-(tile.Left-row.Pitch+row.Width), a.Point)
			case b.X > a.X: // a base: the next tile is above
				worst.farther(gap+row.High+bed-min(a.Y, b.Y), a.Point)
			default:
				worst.farther(gap+max(a.Y, b.Y)-(row.Low-bed), a.Point)
			}
		}
	}
	return worst
}

// reach is the greatest distance met so far, and where.
type reach struct {
	distance length.Length
	at       plane.Point
}

func (r *reach) farther(d length.Length, at plane.Point) {
	if d > r.distance {
		*r = reach{d, at}
	}
}

func (c *cutter) note(r reach) {
	if r.distance > c.rule.Sealant {
		c.bare = append(c.bare, r.at)
	}
}

// ends notes bare wall where an end of the band stands in a joint.
func (c *cutter) ends(b *Band, row bond.Row) {
	for _, ring := range b.Solid {
		for i, a := range ring {
			d := ring[(i+1)%len(ring)]
			if a.On == 0 || !c.rule.Sides[a.On].Meets || !plane.Steep(a, d) || max(a.Y-d.Y, d.Y-a.Y) <= c.rule.Sealant {
				continue // a short stretch belongs to the strip over a base or under a head
			}
			gap := c.rule.Sides[a.On].Gap
			if d.Y < a.Y {
				x := min(a.X, d.X)
				if into := length.Mod(x-row.First, row.Pitch); into >= row.Width {
					c.note(reach{gap + row.Pitch - into, a.Point})
				}
				continue
			}
			x := max(a.X, d.X)
			if into := length.Mod(x-row.First-1, row.Pitch) + 1; into > row.Width {
				c.note(reach{gap + into - row.Width, a.Point})
			}
		}
	}
}

// beds notes bare wall where a base or head stands in the joint between two rows.
func (c *cutter) beds(solid plane.Region, rows []bond.Row) {
	for _, ring := range solid {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.On == 0 || !c.rule.Sides[a.On].Meets || plane.Steep(a, b) || a.X == b.X {
				continue
			}
			c.bed(a, b, rows)
		}
	}
}

// bed looks at one edge. Frame has bent the region at the rows' edges, so an
// edge in a joint lies in it whole.
func (c *cutter) bed(a, b plane.Corner, rows []bond.Row) {
	low, high := min(a.Y, b.Y), max(a.Y, b.Y)
	gap := c.rule.Sides[a.On].Gap
	for k := 1; k < len(rows); k++ {
		under, over := rows[k-1].High, rows[k].Low
		if low < under || high > over {
			continue
		}
		switch {
		case b.X > a.X && low < over:
			c.note(reach{gap + over - low, a.Point})
		case b.X < a.X && high > under:
			c.note(reach{gap + high - under, a.Point})
		}
	}
}
