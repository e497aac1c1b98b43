package drawing

import (
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// sizes writes in every piece that is still to be cut what it is cut to, unless
// that is said over its column.
func (b *board) sizes(f frame, w layout.Wall, said map[string]bool) {
	for _, p := range w.Pieces {
		switch {
		case p.Whole || said[p.ID] || b.kind(f, p) == Set:
		case toldByLine(&p):
			b.lineIn(f, &p)
		case len(b.cutSize(p)) > 0:
			b.sizeIn(f, p)
		}
	}
	for i := range w.Strips {
		for _, p := range w.Strips[i].Pieces {
			if !p.Whole && len(b.cutSize(p)) > 0 {
				b.sizeIn(f, p)
			}
		}
	}
}

// sizeIn puts a cut piece's size inside the piece where it fits: in one line, or
// in two.
func (b *board) sizeIn(f frame, p piece.Piece) {
	ground := cutInk(CutKind(p)).Fill
	l := Label{Tag: Tag{Kind: Size.on(ground), Wall: f.wall, Piece: p.ID}, Colour: textOn(ground)}
	face := f.rings(p.Visible)
	if p.Kind&piece.Hole != 0 {
		face = f.rings(p.Face) // beside the pipe
	}
	if !b.taper(f, p, l, ground) {
		b.fits(l, b.wordings(p), face, ground)
	}
}

// wordings are the ways to write a piece's size: in one line or in two.
func (b *board) wordings(p piece.Piece) [][]string {
	if lines := b.slanted(p); lines != nil {
		return lines
	}
	size := b.cutSize(p)
	if len(size) == 1 {
		return [][]string{size}
	}
	return [][]string{{size[0] + " × " + size[1]}, {size[0], "× " + size[1]}}
}

// cutSize is the size or the two sizes a piece is cut to, what a corner covers
// of it included. A height alone is marked by an arrow. A piece with a hole and
// nothing else to cut has none.
func (b *board) cutSize(p piece.Piece) []string {
	wide, high := uncovered(p)
	narrow, low := wide < p.Tile.Right-p.Tile.Left, high < p.Tile.Top-p.Tile.Bottom
	switch {
	case narrow && low:
		return []string{b.bare(wide), b.bare(high)}
	case low:
		return []string{"↕ " + b.bare(high)}
	case narrow:
		return []string{b.bare(wide)}
	}
	return nil
}

// uncovered are the least width and height of a piece before the tile of the
// next wall covers its end: what the saw cuts, where Wide and High are what is
// seen.
func uncovered(p piece.Piece) (wide, high length.Length) {
	cover := p.Face.Bounds().Width() - p.Visible.Bounds().Width()
	if cover <= 0 {
		return p.Wide, p.High
	}
	if p.Kind&piece.Notch == 0 {
		return p.Wide + cover, p.High
	}
	wide, high = p.Face.Bounds().Width(), p.Face.Bounds().Height()
	if across := p.Face.Across(); across.Found {
		wide = across.Least
	}
	if up := p.Face.Transposed().Across(); up.Found {
		high = up.Least
	}
	return wide, high
}

// fits tries the wordings level, then reading up, at falling sizes, and draws the
// first that has a place inside the face.
func (b *board) fits(l Label, wordings [][]string, face [][]Point, ground Colour) bool {
	for l.Size = b.texts.size; l.Size >= b.texts.least; l.Size -= px {
		for _, l.Up = range []bool{false, true} {
			for _, lines := range wordings {
				if l.Up && ambiguous(lines) {
					continue
				}
				if at, ok := b.room(l, lines, face); ok {
					b.stack(l, lines, at, ground)
					return true
				}
			}
		}
	}
	return false
}

// ambiguous tells whether a text on its side may be read from either side, as a 6 or a 9.
func ambiguous(lines []string) bool {
	return !slices.ContainsFunc(lines, func(line string) bool { return strings.Trim(line, "01689") != "" })
}

// stack draws lines of text round a middle, each on its plate.
func (b *board) stack(l Label, lines []string, mid Point, ground Colour) {
	for i, text := range lines {
		l.Text = text
		off := Micron(2*i-len(lines)+1) * leading(l.Size) / 2
		at := Point{mid.X, mid.Y + off}
		if l.Up {
			at = Point{mid.X + off, mid.Y}
		}
		b.plate(l, at, ground)
	}
}

// room finds where lines of text lie wholly inside a face and on no other text:
// its middle, or another of 25 places spread over it.
func (b *board) room(l Label, lines []string, face [][]Point) (Point, bool) {
	return b.roomIn(l, lines, face, b.vacant)
}

// roomIn finds it where a place is free in some other way.
func (b *board) roomIn(l Label, lines []string, face [][]Point, free func(box) bool) (Point, bool) {
	if len(face) == 0 {
		return Point{}, false
	}
	w, h := Micron(0), leading(l.Size)*Micron(len(lines))
	for _, text := range lines {
		w = max(w, TextWidth(text, l.Size)+2*clearance)
	}
	if l.Up {
		w, h = h, w
	}
	lo, hi := extent(face)
	if hi.X-lo.X < w || hi.Y-lo.Y < h {
		return Point{}, false
	}
	eighths := []Micron{4, 2, 6, 1, 7}
	for _, v := range eighths {
		for _, u := range eighths {
			at := Point{lo.X + (hi.X-lo.X)*u/8, lo.Y + (hi.Y-lo.Y)*v/8}
			text := box{Point{at.X - w/2, at.Y - h/2}, Point{at.X + w/2, at.Y + h/2}}
			if clear(face, text.from, text.to) && free(text) {
				return at, true
			}
		}
	}
	return Point{}, false
}

// extent is the smallest upright box round the rings, which must not be empty.
func extent(face [][]Point) (lo, hi Point) {
	lo, hi = face[0][0], face[0][0]
	for _, ring := range face {
		for _, p := range ring {
			lo = Point{min(lo.X, p.X), min(lo.Y, p.Y)}
			hi = Point{max(hi.X, p.X), max(hi.Y, p.Y)}
		}
	}
	return lo, hi
}

// clear tells whether the box a, b lies inside the face: no edge runs through
// it and its middle is inside.
func clear(face [][]Point, a, b Point) bool {
	mid, in := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, false
	for _, ring := range face {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if crosses(p, q, a, b) {
				return false
			}
			if (p.Y > mid.Y) != (q.Y > mid.Y) && (mid.X < p.X+(q.X-p.X)*(mid.Y-p.Y)/(q.Y-p.Y)) {
				in = !in
			}
		}
	}
	return in
}

// crosses tells whether the segment p, q has a part inside the open box a, b.
func crosses(p, q, a, b Point) bool {
	if max(p.X, q.X) <= a.X || min(p.X, q.X) >= b.X || max(p.Y, q.Y) <= a.Y || min(p.Y, q.Y) >= b.Y {
		return false
	}
	var left, right bool
	for _, c := range corners(a, b) {
		side := (q.X-p.X)*(c.Y-p.Y) - (q.Y-p.Y)*(c.X-p.X)
		left, right = left || side > 0, right || side < 0
	}
	return left && right
}
