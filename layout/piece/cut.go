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
func Cut(shape survey.Shape, rows []bond.Row, rule Rule) (pieces []Piece, bare []plane.Point) {
	framed := Frame(shape, rows, rule.Plumb)
	c := cutter{rule: rule}
	c.beds(framed.Solid, rows)
	for _, row := range rows {
		band := Slice(framed, row.Low, row.High)
		c.row(&band, row)
	}
	if rule.Plumb {
		c.turnBack()
	}
	return c.pieces, c.bare
}

type cutter struct {
	rule   Rule
	pieces []Piece
	bare   []plane.Point
	whole  func(row bond.Row, tile plane.Rect) // counts whole tiles instead of making them, when set
}

// row cuts one band into its pieces.
func (c *cutter) row(b *Band, row bond.Row) {
	if len(b.Solid) == 0 {
		return
	}
	b.bend(row)
	b.survey()
	c.ends(b, row)
	from, to := cells(b.Solid, row)
	for i := from; i <= to; i++ {
		left := row.First + length.Length(i)*row.Pitch
		whole, empty := b.whole(left, left+row.Width)
		switch {
		case whole:
			c.uncut(row, plane.Rect{Left: left, Bottom: row.Low, Right: left + row.Width, Top: row.High})
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
	within := func(r plane.Region) plane.Region { return r.KeepAll(plane.RightOf(left), plane.LeftOf(right)) }
	split(within(b.Solid), row, from, to, func(i int, cell plane.Region) {
		left := row.First + length.Length(i)*row.Pitch
		tile := plane.Rect{Left: left, Bottom: row.Low, Right: left + row.Width, Top: row.High}
		for _, part := range ordered(cell.Parts()) {
			c.part(b, row, tile, part)
		}
	})
}

// ordered puts the parts of one tile from left to right, then upwards.
func ordered(parts []plane.Region) []plane.Region {
	if len(parts) > 1 {
		slices.SortStableFunc(parts, func(a, b plane.Region) int {
			p, q := a.Bounds(), b.Bounds()
			if p.Left != q.Left {
				return int(max(-1, min(1, p.Left-q.Left)))
			}
			return int(max(-1, min(1, p.Bottom-q.Bottom)))
		})
	}
	return parts
}

// part makes a piece of one connected remainder of a tile, unless sealant
// takes it.
func (c *cutter) part(b *Band, row bond.Row, tile plane.Rect, part plane.Region) {
	inTile := func(r plane.Region) plane.Region {
		return near(r.KeepAll(plane.RightOf(tile.Left), plane.LeftOf(tile.Right)), part)
	}
	p := Piece{Row: row.Course, Tile: tile, Face: part, Visible: part}
	if !same(b.Region, b.Solid) {
		if p.Face = inTile(b.Region); p.Face.Area2() <= 0 {
			return
		}
	}
	if c.sealed(row, tile, part) {
		return
	}
	if !same(b.Visible, b.Solid) {
		p.Visible = inTile(b.Visible)
	}
	p.Whole = p.Face.Area2() == 2*tile.Width().Times(tile.Height())
	c.rule.measure(&p)
	c.pieces = append(c.pieces, p)
}

// near keeps what lies at one part of a tile that has several. It cuts one unit
// outside the part, so that no boundary of the part is taken for a factory edge.
func near(r, part plane.Region) plane.Region {
	box := part.Bounds()
	return r.KeepAll(plane.RightOf(box.Left-1), plane.LeftOf(box.Right+1), plane.Above(box.Bottom-1), plane.Below(box.Top+1))
}

// uncut adds a whole tile.
func (c *cutter) uncut(row bond.Row, tile plane.Rect) {
	if c.whole != nil {
		c.whole(row, tile)
		return
	}
	face := plane.Region{tile.Ring(0)}
	p := Piece{Row: row.Course, Tile: tile, Face: face, Visible: face, Whole: true}
	c.rule.measure(&p)
	c.pieces = append(c.pieces, p)
}

// turnBack swaps x and y again for pieces cut in columns.
func (c *cutter) turnBack() {
	for i := range c.pieces {
		p := &c.pieces[i]
		p.Tile = p.Tile.Transposed()
		p.Face, p.Visible = p.Face.Transposed(), p.Visible.Transposed()
		p.Wide, p.High = p.High, p.Wide
	}
	for i, q := range c.bare {
		c.bare[i] = plane.Point{X: q.Y, Y: q.X}
	}
}
