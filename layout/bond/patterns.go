package bond

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// size is a rectangular tile, width along x.
type size struct{ width, height length.Length }

// For is the pattern of a room whose bond is one; survey has checked that its
// sizes close. A room laid in courses gives its bond with level courses or columns.
func For(room survey.Room, hand survey.Hand) Pattern {
	b, j := room.Bond, room.Joint
	if b.Coursed() {
		return Of(room, hand).pattern(b.Plumb)
	}
	sizes := []size{{room.Tile.Width, room.Tile.Height}}
	for _, t := range b.Others {
		sizes = append(sizes, size{t.Width, t.Height})
	}
	if b.Swapped {
		for i, s := range sizes {
			sizes[i] = size{s.height, s.width}
		}
	}
	if b.Turned || b.Kind == survey.Diagonal {
		for i, s := range sizes {
			sizes[i] = size{rootHalf(s.width, false), rootHalf(s.height, false)}
		}
		j = rootHalf(j, true)
		if j > 0 {
			j++ // what the tiles lost
		}
	}
	p := laid(b, hand, sizes, j, room.Tile)
	p.Joint = room.Joint
	switch {
	case b.Turned || b.Kind == survey.Diagonal:
		p = p.turned()
	case b.Swapped:
		p = p.Transposed()
	}
	return p
}

// laid makes a pattern of tiles of some sizes, not turned.
func laid(b survey.BondRule, hand survey.Hand, sizes []size, j length.Length, tile survey.TileSize) Pattern {
	s := sizes[0]
	switch b.Kind {
	case survey.Herringbone:
		return herringbone(s, j, 1)
	case survey.DoubleHerringbone:
		return herringbone(s, j, 2)
	case survey.BasketWeave:
		if len(sizes) > 1 {
			return basketWithDot(s, sizes[1], j)
		}
		return basketWeave(s, j)
	case survey.Hexagon:
		return hexagon(survey.Flats(tile), j)
	case survey.Picket:
		return picket(s, j)
	case survey.Chevron:
		return chevron(s, j, b.Angle)
	case survey.MixedHeights:
		return mixedHeights(sizes, j, b, hand)
	case survey.Pinwheel:
		return pinwheel(s, sizes[1], j)
	case survey.Modular:
		return modular(sizes, j)
	}
	return Coursed{s.width, s.height, j, b.Num, max(1, b.Den), hand}.pattern(false) // diagonal
}

// pattern is the bond as tiles on a lattice: the very tiles of Rows.
func (c Coursed) pattern(plumb bool) Pattern {
	p := Pattern{Joint: c.Joint}
	p.rect(size{c.Width, c.Height}, 0)
	for k := range int(c.Den) {
		p.place(0, c.shift(k), length.Length(k)*c.Across())
		p.Courses = append(p.Courses, length.Length(k)*c.Across())
	}
	p.U, p.V = plane.Point{X: c.Along()}, plane.Point{Y: length.Length(c.Den) * c.Across()}
	if p = p.phased(); plumb {
		return p.Transposed()
	}
	return p
}

// rect adds a rectangular tile with its lower left corner at its origin.
func (p *Pattern) rect(s size, kind int) {
	box := plane.Rect{Right: s.width, Top: s.height}
	p.Tiles = append(p.Tiles, Tile{Outline: box.Ring(0), Box: box, Least: min(s.width, s.height), Kind: kind, Rect: true})
}

// shape adds a tile by its corners.
func (p *Pattern) shape(kind int, corners ...plane.Point) {
	ring := make(plane.Ring, len(corners))
	for i, c := range corners {
		ring[i].Point = c
	}
	p.Tiles = append(p.Tiles, Tile{Outline: ring, Box: plane.Region{ring}.Bounds(), Least: LeastWidth(ring), Kind: kind})
}

func (p *Pattern) place(tile int, x, y length.Length) {
	p.Places = append(p.Places, Place{tile, plane.Point{X: x, Y: y}})
}

// herringbone lays blocks of n tiles side by side, level and plumb in turn. With
// P the block's pitch across and Q along, U = (P, P) and V = (Q, −Q) close for
// every size of tile; a length that is a whole multiple of the width only keeps the
// edges on one grid. Blocks of several tiles are to be no broader than long.
func herringbone(s size, j length.Length, n int) (p Pattern) {
	long, short := max(s.width, s.height), min(s.width, s.height)
	across, along := length.Length(n)*(short+j), long+j
	p.rect(size{long, short}, 0)
	p.rect(size{short, long}, 0)
	for k := range length.Length(n) {
		p.place(0, 0, k*(short+j))
		p.place(1, k*(short+j), across)
	}
	p.U, p.V = plane.Point{X: across, Y: across}, plane.Point{X: -along, Y: along}
	return p.phased()
}

// basketWeave lays squares of tiles side by side, level and plumb in turn. What
// they lack of a square, which survey bounds, the joints take up.
func basketWeave(s size, j length.Length) (p Pattern) {
	long, short := max(s.width, s.height), min(s.width, s.height)
	n := survey.Weave(long, short, j)
	square := max(n*(short+j), long+j)
	p.rect(size{long, short}, 0)
	p.rect(size{short, long}, 0)
	for k := range n {
		p.place(0, 0, k*(short+j))
		p.place(1, square+k*(short+j), 0)
	}
	p.U, p.V = plane.Point{X: square, Y: square}, plane.Point{X: -square, Y: square}
	return p.phased()
}

// basketWithDot weaves level and plumb tiles like strands that go over and under
// each other in turn, with a square dot in every opening between them. The strands
// stand short + dot + 2 joints apart, and a tile covers its crossing and the
// openings on both sides: it closes where long = short + 2 (dot + joint).
func basketWithDot(s, dot size, j length.Length) (p Pattern) {
	long, short := max(s.width, s.height), min(s.width, s.height)
	d := dot.width
	strand := max(short+d+2*j, (long+short+2*j+1)/2)
	p.rect(size{long, short}, 0)
	p.rect(size{short, long}, 0)
	p.rect(size{d, d}, 1)
	over := (long - short).Half()
	p.place(0, -over, 0)
	p.place(1, strand, -over)
	for k := range length.Length(2) {
		p.place(2, short+j+k*strand, short+j)
	}
	p.U, p.V = plane.Point{X: strand, Y: strand}, plane.Point{X: -strand, Y: strand}
	return p.phased()
}

// hexagon lays regular hexagons, flats apart from side to side, with points up
// and level rows. Rows stand (flats + joint)·√3/2 apart; points are 2·flats/√3.
func hexagon(flats, j length.Length) Pattern {
	side := parts(flats, rootThird, false).Half() // half of a side: flats / (2√3)
	return pointed(flats, side, parts(flats, rootThird, false), parts(flats+j, rootThreeQuarters, true), j)
}

// picket lays hexagons drawn out upwards, with points of 45°. Rows stand
// height − width/2 + (√2 − 1/2)·joint apart.
func picket(s size, j length.Length) Pattern {
	long, short := max(s.width, s.height), min(s.width, s.height)
	tip := long.Half()
	return pointed(short, tip-short.Half(), tip, 2*tip+rootTwo(j)-(short+j).Half(), j)
}

// pointed lays hexagons with points up: their width, half the height of their
// plumb sides, half their whole height, and from row to row.
func pointed(width, side, tip, row, j length.Length) (p Pattern) {
	half := width.Half()
	corner := func(x, y length.Length) plane.Point { return plane.Point{X: x, Y: y} }
	p.shape(0, corner(0, -tip), corner(half, -side), corner(half, side), corner(0, tip), corner(-half, side), corner(-half, -side))
	p.place(0, 0, 0)
	step := (width + j + 1) / 2
	p.U, p.V = corner(2*step, 0), corner(step, row)
	return p.phased()
}

// chevron lays planks with slanted ends in plumb columns, rising to the right and
// to the left in turn, so that they meet in points. The tile's height is measured
// square to its long edges and its width along them.
func chevron(s size, j length.Length, degrees int) (p Pattern) {
	long, short := max(s.width, s.height), min(s.width, s.height)
	cos, sin := slope(degrees)
	column, rise := parts(long, cos, false), parts(long, sin, false)
	edge, repeat := over(short, cos, false), over(short+j, cos, true)
	corner := func(x, y length.Length) plane.Point { return plane.Point{X: x, Y: y} }
	p.shape(0, corner(0, 0), corner(column, rise), corner(column, rise+edge), corner(0, edge))
	p.shape(0, corner(0, rise), corner(column, 0), corner(column, edge), corner(0, rise+edge))
	p.place(0, 0, 0)
	p.place(1, column+j, 0)
	p.U, p.V = corner(2*(column+j), 0), corner(0, repeat)
	return p.phased()
}

// mixedHeights lays courses of tiles of one width and several heights in turn,
// shifted against each other as the courses of a running bond.
func mixedHeights(sizes []size, j length.Length, b survey.BondRule, hand survey.Hand) (p Pattern) {
	pitch := sizes[0].width + j
	for i, s := range sizes {
		p.rect(size{sizes[0].width, s.height}, i)
	}
	courses := len(sizes)
	for courses%int(max(1, b.Den)) != 0 {
		courses += len(sizes)
	}
	up := length.Length(0)
	for k := range courses {
		p.place(k%len(sizes), b.Shift(k, hand, pitch), up)
		p.Courses = append(p.Courses, up)
		up += sizes[k%len(sizes)].height + j
	}
	p.U, p.V = plane.Point{X: pitch}, plane.Point{Y: up}
	return p.phased()
}

// pinwheel lays a small square at a corner of every large one. Any two sizes close.
func pinwheel(s, t size, j length.Length) (p Pattern) {
	large, small := max(s.width, t.width), min(s.width, t.width)
	first, second := 0, 1
	if s.width < t.width {
		first, second = 1, 0
	}
	p.rect(size{large, large}, first)
	p.rect(size{small, small}, second)
	p.place(0, 0, 0)
	p.place(1, large+j, 0)
	p.U, p.V = plane.Point{X: large + j, Y: small + j}, plane.Point{X: -small - j, Y: large + j}
	return p.phased()
}

// fourTiles is a cell of the four-tile modular in modules: 2 of 1 by 1, 1 of
// 2 by 1, 2 of 2 by 2 and 1 of 3 by 2 repeated by (6, 0) and (1, 3). Of the
// 25,740 ways to lay them so it is one of those in which no four tiles meet in a
// corner and no joint runs straight for more than four modules.
var fourTiles = [...]struct{ tile, x, y length.Length }{
	{2, -1, -1}, {0, 0, 1}, {2, 1, 0}, {0, 2, 2}, {1, 3, 0}, {3, 3, 1},
}

// modules are how many modules long and wide the tiles of a modular are.
var modules = [...][2]length.Length{{1, 1}, {2, 1}, {2, 2}, {3, 2}}

// modular lays four sizes on one grid. What a tile lacks of its modules, which
// survey bounds, the joints take up.
func modular(sizes []size, j length.Length) (p Pattern) {
	module := length.Length(0)
	for i, s := range sizes {
		long, short := max(s.width, s.height), min(s.width, s.height)
		p.rect(size{long, short}, i)
		m := modules[i]
		module = max(module, (long+j+m[0]-1)/m[0], (short+j+m[1]-1)/m[1])
	}
	for _, t := range fourTiles {
		p.place(int(t.tile), t.x*module, t.y*module)
	}
	p.U, p.V = plane.Point{X: 6 * module}, plane.Point{X: module, Y: 3 * module}
	p.Courses = []length.Length{0, module, 2 * module}
	return p.phased()
}
