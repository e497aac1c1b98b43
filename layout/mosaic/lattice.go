package mosaic

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// cell is where a tile, or its group, stands: how many along and up from the one at the
// start. Rows of patterns that stand at an angle are counted along them.
type cell struct{ x, y int }

// place is which sheet: how many to the right and up.
type place struct{ column, row, lift int }

// lattice is how tile that comes on sheets stands: in rows of tiles or groups, each
// shifted against the one under it by a part of what it repeats after, which is none in
// plain rows; or in such columns.
type lattice struct {
	pattern  bond.Pattern
	rule     survey.BondRule
	num, den int  // by which part of a tile or group rows are shifted against each other
	columns  bool // columns are shifted, not rows
	turned   bool // the sheets are turned upside down: their shifted rows stand out to the left, their shifted columns downwards
}

// latticeOf is the lattice of a room's bond; the hand is that of the walls.
func latticeOf(room survey.Room, hand survey.Hand) lattice {
	l := lattice{pattern: bond.For(room, hand), rule: room.Bond, den: 1}
	switch b := room.Bond; b.Kind {
	case survey.Running, survey.Diagonal:
		l.num, l.den, l.columns = int(b.Num), int(max(1, b.Den)), b.Plumb
		if hand != survey.Right {
			_, l.num = divide(-l.num, l.den)
		}
	case survey.Hexagon, survey.Picket:
		l.num, l.den, l.columns = 1, 2, b.Swapped
	case survey.Modular:
		l.num, l.den = 1, 6
	}
	return l
}

// plain tells whether rows and columns stand straight under each other.
func (l lattice) plain() bool { return l.num == 0 }

// level tells whether rows are level, so that sheets can begin with the lowest full one.
func (l lattice) level() bool {
	switch l.rule.Kind {
	case survey.Diagonal, survey.Pinwheel:
		return false
	case survey.Herringbone, survey.DoubleHerringbone:
		return l.rule.Turned
	}
	return !l.rule.Turned
}

// courses tells whether the rows are those that pieces are counted by, which go on over
// bands.
func (l lattice) courses() bool { return l.rule.Coursed() && !l.rule.Plumb }

// corner is the lower left corner of the box of the tile at a place of the pattern, where
// the lattice's origin is at 0.
func (l lattice) corner(n int) plane.Point {
	at, box := l.pattern.Places[n].At, l.pattern.Tiles[l.pattern.Places[n].Tile].Box
	return plane.Point{X: at.X + box.Left, Y: at.Y + box.Bottom}
}

// tile is a tile where it stands: its place of the pattern, the lower left corner of its
// box and, in courses, its row.
type tile struct {
	place  int
	corner plane.Point
	row    int
}

// tileOf is the tile of a piece, with one of the first place at origin.
func (l lattice) tileOf(p *piece.Piece, origin plane.Point) tile {
	t := tile{p.Place(), corner(p), p.Row}
	if l.rule.Coursed() {
		if !l.courses() {
			t.row = round(int64(t.corner.X-origin.X), int64(l.pattern.U.X)/int64(len(l.pattern.Places)))
		}
		_, t.place = divide(t.row, len(l.pattern.Places))
	}
	return t
}

// cell is where a tile stands, with one of the first place at origin.
func (l lattice) cell(t tile, origin plane.Point) cell {
	by, first := l.corner(t.place), l.corner(0)
	x, y := int64(t.corner.X-origin.X-by.X+first.X), int64(t.corner.Y-origin.Y-by.Y+first.Y)
	if l.courses() {
		return cell{round(x, int64(l.pattern.U.X)) - l.before(t.row), t.row}
	} else if l.rule.Coursed() {
		return cell{t.row, round(y, int64(l.pattern.V.Y)) - l.before(t.row)}
	}
	u, v := l.pattern.U, l.pattern.V
	ux, uy, vx, vy := int64(u.X), int64(u.Y), int64(v.X), int64(v.Y)
	c := cell{round(x*vy-y*vx, ux*vy-uy*vx), round(ux*y-uy*x, ux*vy-uy*vx)}
	if !l.rule.Swapped || l.rule.Kind == survey.Diagonal {
		return l.counted(c, t.place)
	}
	c = l.counted(cell{c.y, c.x}, t.place)
	return cell{c.y, c.x}
}

// counted is where the tile or group of a place is in rows and columns as they are
// counted, which is so many times the lattice's U and V from the first.
func (l lattice) counted(c cell, n int) cell {
	switch l.rule.Kind {
	case survey.Herringbone, survey.DoubleHerringbone:
		return cell{-c.y, c.x}
	case survey.BasketWeave:
		return cell{c.x - c.y + odd(n), c.x + c.y}
	case survey.Chevron:
		return cell{2*c.x + n, c.y}
	case survey.Diagonal:
		row := c.y*len(l.pattern.Places) + n
		return cell{c.x - l.before(row), row}
	case survey.MixedHeights:
		return cell{c.x, c.y*len(l.pattern.Places) + n}
	}
	return c
}

// before is by how many whole tiles a row is shifted, which its places are brought back by.
func (l lattice) before(row int) int { q, _ := divide(l.num*row, l.den); return q }

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

func odd(n int) int { _, r := divide(n, 2); return r }

// row counts the rows in which tiles stand beside each other. Of columns that are shifted
// the shifted ones count with those beside them that begin lower.
func (l lattice) row(c cell) int {
	if !l.columns {
		return c.y
	}
	return c.y + l.before(c.x)
}

// begin is the row at or under a row with which sheets can begin, so that all are alike.
func (l lattice) begin(row int) int {
	_, up := l.rule.SheetRepeat()
	_, more := divide(row, up)
	return row - more
}

// sheet is the sheet on which a cell is, and where on it, where sheets begin with a row.
// Shifted rows are counted in parts of a tile from where the sheet begins, so that all
// sheets are alike, whatever number of rows they have.
func (l lattice) sheet(c cell, base int, size survey.SheetSize) (at place, on cell) {
	if l.columns {
		at.column, on.x = divide(c.x, size.Across)
		at.row, on.y = divide(l.along(l.den*c.y+l.num*c.x, l.part(at.column*size.Across))-base, size.Up)
		return at, on
	}
	at.row, on.y = divide(c.y-base, size.Up)
	at.column, on.x = divide(l.along(l.den*c.x+l.num*c.y-l.part(base), l.part(at.row*size.Up)), size.Across)
	return at, on
}

// part is by how many parts of a tile a row is shifted.
func (l lattice) part(row int) int { _, r := divide(l.num*row, l.den); return r }

// along counts tiles in parts from where a sheet begins, which may be some parts on. Only
// sheets whose rows are shifted by half are turned.
func (l lattice) along(n, begins int) int {
	if l.turned {
		n += begins + 1
	} else {
		n -= begins
	}
	q, _ := divide(n, l.den)
	return q
}
