package drawing

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// taper writes the heights of a piece's two ends, each at its own end, and
// tells whether it did. It leaves alone those that end in a point, as
// at a corner that leans, or whose heights read the same.
func (b *board) taper(f frame, p piece.Piece, l Label, ground Colour) bool {
	if p.Kind&piece.Taper == 0 || p.Kind&piece.Notch != 0 || leans(p.Face) {
		return false
	}
	box := p.Visible.Bounds()
	lh, rh := upright(p.Visible, box.Left), upright(p.Visible, box.Right)
	left, right := b.bare(lh), b.bare(rh)
	if lh <= 0 || rh <= 0 || left == right {
		return false
	}
	for l.Size = b.texts.size; l.Size >= b.texts.least; l.Size -= px {
		if b.bothEnds(f, l, box, left, right, ground) {
			return true
		}
	}
	return false
}

// slanted are the ways to write the size of an upright tile that is cut at an angle: how
// long its upper edge is over how long its lower one is, or of one that ends in a point
// its length and its height. Nil for all others.
func (b *board) slanted(p piece.Piece) [][]string {
	if p.Kind&piece.Angle == 0 || p.Outline == nil || p.Kind&(piece.Notch|piece.Hole) != 0 || !boxed(p.Outline) {
		return nil
	}
	box := p.Face.Bounds()
	over, under := levelAt(p.Face, box.Top), levelAt(p.Face, box.Bottom)
	switch {
	case over == 0 && under == 0:
		return nil
	case over == 0 || under == 0:
		long, high := b.bare(max(over, under)), b.bare(box.Height())
		return [][]string{{long + " × " + high}, {long, "× " + high}}
	}
	return [][]string{{b.bare(over), b.bare(under)}}
}

// boxed tells whether the edges of a tile are level and plumb.
func boxed(outline plane.Ring) bool {
	for i, c := range outline {
		if d := outline[(i+1)%len(outline)]; c.X != d.X && c.Y != d.Y {
			return false
		}
	}
	return true
}

// levelAt is how long a face is along its edges at a height.
func levelAt(face plane.Region, y length.Length) (sum length.Length) {
	for _, ring := range face {
		for i, c := range ring {
			if d := ring[(i+1)%len(ring)]; c.Y == y && d.Y == y {
				sum += (d.X - c.X).Abs()
			}
		}
	}
	return sum
}

// leans tells whether an end of a face is neither level nor plumb but steep: its
// heights are then not those at its outermost points.
func leans(face plane.Region) bool {
	for _, ring := range face {
		for i, c := range ring {
			d := ring[(i+1)%len(ring)]
			if c.X != d.X && plane.Steep(c, d) {
				return true
			}
		}
	}
	return false
}

// bothEnds draws the two heights where both fit side by side.
func (b *board) bothEnds(f frame, l Label, face plane.Rect, left, right string, ground Colour) bool {
	lo, hi := f.at(face.Left, face.Top), f.at(face.Right, face.Bottom)
	lw, rw := TextWidth(left, l.Size), TextWidth(right, l.Size)
	if lw+rw+2*l.Size > hi.X-lo.X || leading(l.Size)+clearance > hi.Y-lo.Y {
		return false
	}
	y := (lo.Y + hi.Y) / 2
	if !b.vacant(box{Point{lo.X + l.Size/4, y - l.Size*5/8}, Point{hi.X - l.Size/4, y + l.Size*5/8}}) {
		return false
	}
	b.stack(l, []string{left}, Point{lo.X + lw/2 + l.Size/2, y}, ground)
	b.stack(l, []string{right}, Point{hi.X - rw/2 - l.Size/2, y}, ground)
	return true
}

// upright is how high a face stands at x, one of its ends: 0 where only one
// corner reaches it.
func upright(face plane.Region, x length.Length) length.Length {
	var low, high length.Length
	found := false
	for _, ring := range face {
		for _, c := range ring {
			if c.X != x {
				continue
			}
			if !found {
				low, high, found = c.Y, c.Y, true
			}
			low, high = min(low, c.Y), max(high, c.Y)
		}
	}
	return high - low
}
