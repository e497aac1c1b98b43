package mosaic

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// cell is where a tile stands on the lattice: so many times U and V from the tile at the
// start.
type cell struct{ x, y int }

// place is which sheet: how many to the right and up.
type place struct{ column, row, lift int }

// lattice is how tile that comes on sheets stands: plain in rows and columns, or in rows of
// hexagons of which every other one is shifted by half a tile, or in such columns.
type lattice struct {
	u, v    plane.Point
	plain   bool
	courses bool // plain, and the rows are those of the pieces, which go on over bands
	turned  bool // the sheets are turned upside down: their shifted rows stand out to the left, their shifted columns downwards
}

func latticeOf(room survey.Room) lattice {
	p := bond.For(room, survey.Left)
	return lattice{u: p.U, v: p.V, plain: p.U.Y == 0 && p.V.X == 0, courses: room.Bond.Coursed() && !room.Bond.Plumb}
}

// cell is where a piece stands, with a tile at origin.
func (l lattice) cell(p *piece.Piece, origin plane.Point) cell {
	x, y := int64(p.Tile.Left-origin.X), int64(p.Tile.Bottom-origin.Y)
	if l.courses {
		return cell{round(x, int64(l.u.X)), p.Row}
	}
	ux, uy, vx, vy := int64(l.u.X), int64(l.u.Y), int64(l.v.X), int64(l.v.Y)
	return cell{round(x*vy-y*vx, ux*vy-uy*vx), round(ux*y-uy*x, ux*vy-uy*vx)}
}

// round is a/b to the nearest whole number.
func round(a, b int64) int {
	if b < 0 {
		a, b = -a, -b
	}
	return int(length.DivFloor(length.Length(2*a+b), length.Length(2*b)))
}

// divide is n by d, rounded down, and what is left.
func divide(n, d int) (int, int) {
	q := int(length.DivFloor(length.Length(n), length.Length(d)))
	return q, n - q*d
}

func half(n int) int { q, _ := divide(n, 2); return q }

func odd(n int) int { _, r := divide(n, 2); return r }

// row counts the rows in which tiles stand beside each other. Of columns that are shifted
// the shifted ones count with those beside them that begin lower.
func (l lattice) row(c cell) int {
	if l.u.Y == 0 {
		return c.y
	}
	return c.y + half(c.x)
}

// sheet is the sheet on which a cell is, and where on it, where sheets begin with a row.
// Shifted rows are counted in halves of a tile from where the sheet begins, so that all
// sheets are alike, those with an odd number of rows too.
func (l lattice) sheet(c cell, base int, size survey.SheetSize) (at place, on cell) {
	switch {
	case l.plain:
		at.row, on.y = divide(c.y-base, size.Up)
		at.column, on.x = divide(c.x, size.Across)
	case l.u.Y == 0:
		at.row, on.y = divide(c.y-base, size.Up)
		at.column, on.x = divide(l.halves(2*c.x+c.y-odd(base), odd(at.row*size.Up)), size.Across)
	default:
		at.column, on.x = divide(c.x, size.Across)
		at.row, on.y = divide(l.halves(2*c.y+c.x, odd(at.column*size.Across))-base, size.Up)
	}
	return at, on
}

// halves counts tiles in halves from where a sheet begins, which may be half a tile on.
func (l lattice) halves(n, begins int) int {
	if l.turned {
		return half(n + begins + 1)
	}
	return half(n - begins)
}
