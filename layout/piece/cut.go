package piece

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Cut makes the pieces of one wall, by row and then along it, and finds the
// bare places: boundary that meets something with no tile within the reach of
// sealant. Pieces carry no ID and no Course until Number gives them.
func Cut(shape survey.Shape, rows []bond.Row, rule Rule) (pieces []Piece, bare []Gap) {
	c := newCutter(shape, rows, rule)
	c.emit = func(p *Piece) { pieces = append(pieces, *p) }
	c.whole = func(row bond.Row, tile plane.Rect) {
		pieces = append(pieces, rule.wholeTile(row, tile))
	}
	c.all(rows)
	for i := range pieces {
		if rule.Plumb {
			pieces[i].turnBack()
		}
	}
	return pieces, c.cover.Gaps()
}

// Row cuts the band that one row covers of a wall and hands over each piece as it
// stands on the wall, only until the next one is cut, but for its outlines, which stay in the
// frame of the rows; a whole tile only by its box there. It is for counting many set-outs, of
// which the pieces are not kept.
func Row(band Band, row bond.Row, rule Rule, each func(*Piece), whole func(plane.Rect)) {
	c := &cutter{rule: rule}
	c.emit = func(p *Piece) {
		if rule.Plumb {
			p.turnSizes()
		}
		each(p)
	}
	c.whole = func(_ bond.Row, tile plane.Rect) { whole(tile) }
	c.row(&band, row)
}

// Solid is the face of a piece with the holes of pipes filled.
func (p *Piece) Solid() plane.Region { return p.solid }

type cutter struct {
	rule   Rule
	framed survey.Shape
	cover  *Cover
	emit   func(*Piece)
	whole  func(bond.Row, plane.Rect)
}

func newCutter(shape survey.Shape, rows []bond.Row, rule Rule) *cutter {
	return &cutter{rule: rule, framed: Frame(shape, rows, rule.Plumb), cover: NewCover(shape, rule)}
}

func (c *cutter) all(rows []bond.Row) {
	for _, row := range rows {
		band := Slice(c.framed, row.Low, row.High)
		c.row(&band, row)
	}
}

// row cuts one band into its pieces.
func (c *cutter) row(b *Band, row bond.Row) {
	if len(b.Solid) == 0 {
		return
	}
	b.bend(row)
	b.survey()
	from, to := cells(b.Solid, row)
	for i := from; i <= to; i++ {
		left := row.First + length.Length(i)*row.Pitch
		whole, empty := b.whole(left, left+row.Width)
		switch {
		case whole:
			tile := plane.Rect{Left: left, Bottom: row.Low, Right: left + row.Width, Top: row.High}
			c.cover.Rect(tile)
			c.whole(row, tile)
		case !empty:
			last := i
			for last < to && !b.certain(row, last+1) {
				last++
			}
			c.cells(b, row, i, last)
			i = last
		}
	}
}

// bend bends the band at the tile edges of its row.
func (b *Band) bend(row bond.Row) {
	from, to := cells(b.Solid, row)
	xs := make([]length.Length, 0, 2*(to-from+1))
	for i := from; i <= to; i++ {
		left := row.First + length.Length(i)*row.Pitch
		xs = append(xs, left, left+row.Width)
	}
	solid, visible, region := b.Solid, b.Visible, b.Region
	b.Solid = solid.BendX(xs)
	b.Visible, b.Region = b.Solid, b.Solid
	if !same(visible, solid) {
		b.Visible = visible.BendX(xs)
	}
	if !same(region, solid) {
		b.Region = region.BendX(xs)
	}
}

func (b *Band) certain(row bond.Row, i int) bool {
	left := row.First + length.Length(i)*row.Pitch
	whole, empty := b.whole(left, left+row.Width)
	return whole || empty
}

// cells cuts the tiles from index from to index to, which are not surely whole.
func (c *cutter) cells(b *Band, row bond.Row, from, to int) {
	left := row.First + length.Length(from)*row.Pitch
	right := row.First + length.Length(to)*row.Pitch + row.Width
	split(b.layers().keep(plane.RightOf(left), plane.LeftOf(right)), row, from, to, func(i int, cell layers) {
		left := row.First + length.Length(i)*row.Pitch
		tile := plane.Rect{Left: left, Bottom: row.Low, Right: left + row.Width, Top: row.High}
		for _, part := range ordered(cell.solid.Parts()) {
			c.part(row, tile, cell.at(part))
		}
	})
}

// ordered puts the parts of one tile from left to right, then upwards.
func ordered(parts []plane.Region) []plane.Region {
	if len(parts) < 2 {
		return parts
	}
	slices.SortStableFunc(parts, func(a, b plane.Region) int {
		p, q := a.Bounds(), b.Bounds()
		if p.Left != q.Left {
			return int(max(-1, min(1, p.Left-q.Left)))
		}
		return int(max(-1, min(1, p.Bottom-q.Bottom)))
	})
	return parts
}

// part makes a piece of one connected remainder of a tile, unless sealant
// takes it.
func (c *cutter) part(row bond.Row, tile plane.Rect, part layers) {
	if part.region.Area2() <= 0 || c.rule.sealed(part.solid) {
		return
	}
	p := Piece{Row: row.Course, Tile: tile, Face: part.region, Visible: part.visible, solid: part.solid}
	p.Whole = p.Face.Area2() == 2*tile.Width().Times(tile.Height())
	c.rule.measure(&p)
	c.cover.Region(part.solid)
	c.emit(&p)
}

// wholeTile is the piece of a tile that stands whole.
func (r Rule) wholeTile(row bond.Row, tile plane.Rect) Piece {
	face := plane.Region{tile.Ring(0)}
	p := Piece{Row: row.Course, Tile: tile, Face: face, Visible: face, solid: face, Whole: true}
	r.measure(&p)
	return p
}

// sealed tells whether a remainder is only a strip along a boundary that meets
// something, nowhere wider than sealant may fill beyond the gap. Such a strip
// is not cut.
func (r Rule) sealed(part plane.Region) bool {
	last := plane.Side(0)
	for _, ring := range part {
		for _, c := range ring {
			if c.On == 0 || c.On == last {
				continue
			}
			last = c.On
			b := r.Sides[last]
			if limit := r.Sealant - b.Gap; b.Meets && limit > 0 && thin(part, last, limit) {
				return true
			}
		}
	}
	return false
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
	return part.Upward().Most <= limit
}

// at is what the layers of a tile leave of one of its parts.
func (s layers) at(part plane.Region) layers {
	out := layers{part, part, part}
	if !same(s.visible, s.solid) {
		out.visible = near(s.visible, part)
	}
	if !same(s.region, s.solid) {
		out.region = near(s.region, part)
	}
	return out
}

// near keeps what lies at one part of a tile, which may have others; along a raked edge
// what is seen of a wall may also reach a little farther than what is there. It cuts one
// unit outside the part, so that no boundary of the part is taken for a factory edge.
func near(r, part plane.Region) plane.Region {
	box := part.Bounds()
	return r.KeepAll(plane.RightOf(box.Left-1), plane.LeftOf(box.Right+1), plane.Above(box.Bottom-1), plane.Below(box.Top+1))
}

// turnBack swaps x and y again of a piece cut in columns.
func (p *Piece) turnBack() {
	face, visible, solid := p.Face, p.Visible, p.solid
	p.Face = face.Transposed()
	if p.Visible = p.Face; !same(visible, face) {
		p.Visible = visible.Transposed()
	}
	if p.solid = p.Face; !same(solid, face) {
		p.solid = solid.Transposed()
	}
	p.turnSizes()
}

// turnSizes does so with all but its outlines.
func (p *Piece) turnSizes() {
	p.Tile = p.Tile.Transposed()
	p.Wide, p.High = p.High, p.Wide
	p.Across, p.Up = transposed(p.Up), transposed(p.Across)
}

func transposed(edges []Edge) []Edge {
	for i, e := range edges {
		edges[i] = e.Transposed()
	}
	return sorted(edges)
}
