package bond

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Tile is one shape of tile of a pattern, with its corners counter-clockwise
// round its own origin. It is convex. Corners that do not fall on whole units
// (45° and 60°) are rounded where the pattern is made, towards the tile's inside,
// and nowhere else.
type Tile struct {
	Outline plane.Ring
	Box     plane.Rect    // round its outline
	Least   length.Length // least width: the smallest distance between two parallel lines that hold it
	Kind    int           // which tile it is to buy: 0 the room's, n the nth of the others
	Rect    bool          // it has four square corners, upright or turned
}

// Place is where a tile of the cell stands: At is its own origin.
type Place struct {
	Tile int // index in Pattern.Tiles
	At   plane.Point
}

// Pattern is a cell of tiles repeated by every whole combination of two
// vectors. See the package's laws.
type Pattern struct {
	Tiles  []Tile
	Places []Place
	U, V   plane.Point
	Joint  length.Length

	// Every phase of the pattern, which is where the lattice stands on the wall,
	// is found with the lattice's origin in any box so wide and so high.
	Reach, Rise length.Length

	// Courses are the heights over a lattice row at which a row of tiles begins as
	// people count them, ascending from 0. Nil is the lattice row alone.
	Courses []length.Length
}

// Set is one tile of a pattern where it stands on a wall.
type Set struct {
	Place   int // index in Pattern.Places
	Tile    int // index in Pattern.Tiles
	Row     int // from the lattice's own row upwards, by Rise
	At      plane.Point
	Outline plane.Ring // on the wall
}

// Area2 is twice the area of one cell.
func (p Pattern) Area2() length.Area { return 2 * cross(p.U, p.V) }

func cross(a, b plane.Point) length.Area {
	return length.Area(a.X)*length.Area(b.Y) - length.Area(a.Y)*length.Area(b.X)
}

// Moved is a ring moved by a vector.
func Moved(r plane.Ring, by plane.Point) plane.Ring {
	return MovedInto(make(plane.Ring, 0, len(r)), r, by)
}

// MovedInto appends a ring moved by a vector.
func MovedInto(out, r plane.Ring, by plane.Point) plane.Ring {
	for _, c := range r {
		out = append(out, plane.Corner{Point: plane.Point{X: c.X + by.X, Y: c.Y + by.Y}, On: c.On})
	}
	return out
}

// BoxAt is round the tile where it stands.
func (t *Tile) BoxAt(at plane.Point) plane.Rect {
	return plane.Rect{Left: t.Box.Left + at.X, Bottom: t.Box.Bottom + at.Y, Right: t.Box.Right + at.X, Top: t.Box.Top + at.Y}
}

// Over lists the tiles whose box shares area with a box on the wall, where the
// lattice's origin stands at origin, in no order that means anything.
func (p Pattern) Over(origin plane.Point, box plane.Rect) []Set {
	var out []Set
	p.Each(origin, box, func(place int, at plane.Point) {
		t := p.Places[place].Tile
		s := Set{Place: place, Tile: t, At: at, Outline: Moved(p.Tiles[t].Outline, at)}
		s.Row = p.row(at.Y + p.Tiles[t].Box.Bottom - origin.Y)
		out = append(out, s)
	})
	return out
}

// row counts the rows of tiles up to a height over the lattice's origin.
func (p *Pattern) row(up length.Length) int {
	row, courses := int(length.DivFloor(up, p.Rise)), max(1, len(p.Courses))
	n := 0
	for n+1 < courses && p.Courses[n+1] <= length.Mod(up, p.Rise) {
		n++
	}
	return row*courses + n
}

// Each tells the place and the position of every tile whose box shares area with
// a box on the wall.
func (p *Pattern) Each(origin plane.Point, box plane.Rect, each func(place int, at plane.Point)) {
	for n, place := range p.Places {
		b := p.Tiles[place.Tile].Box
		p.lattice(plane.Rect{
			Left: box.Left - b.Right - place.At.X - origin.X + 1, Right: box.Right - b.Left - place.At.X - origin.X - 1,
			Bottom: box.Bottom - b.Top - place.At.Y - origin.Y + 1, Top: box.Top - b.Bottom - place.At.Y - origin.Y - 1,
		}, func(v plane.Point) {
			each(n, plane.Point{X: origin.X + place.At.X + v.X, Y: origin.Y + place.At.Y + v.Y})
		})
	}
}

// Origin is where the lattice stands where a tile of the first place has its lowest
// point at line and its left side at edge.
func (p *Pattern) Origin(line, edge length.Length) plane.Point {
	place := p.Places[0]
	box := p.Tiles[place.Tile].Box
	return plane.Point{X: edge - box.Left - place.At.X, Y: line - box.Bottom - place.At.Y}
}

// Phase moves an origin of the lattice by lattice vectors into the box of phases.
func (p *Pattern) Phase(origin plane.Point) (in plane.Point) {
	p.lattice(plane.Rect{Left: -origin.X, Right: p.Reach - origin.X, Bottom: -origin.Y, Top: p.Rise - origin.Y}, func(v plane.Point) {
		in = plane.Point{X: origin.X + v.X, Y: origin.Y + v.Y}
	})
	return in
}

// lattice tells every lattice vector in a box, its borders included.
func (p *Pattern) lattice(box plane.Rect, each func(plane.Point)) {
	if box.Left > box.Right || box.Bottom > box.Top {
		return
	}
	// How many U a vector of the box is made of lies between what it is at the box's corners.
	det := int64(cross(p.U, p.V))
	low := min(box.Left.Times(p.V.Y), box.Right.Times(p.V.Y)) - max(box.Bottom.Times(p.V.X), box.Top.Times(p.V.X))
	high := max(box.Left.Times(p.V.Y), box.Right.Times(p.V.Y)) - min(box.Bottom.Times(p.V.X), box.Top.Times(p.V.X))
	first, last := -floorDiv(-int64(low), det), floorDiv(int64(high), det)
	for i := first; i <= last; i++ {
		x, y := length.Length(i)*p.U.X, length.Length(i)*p.U.Y
		k0, k1, ok := steps(box.Left-x, box.Right-x, p.V.X)
		l0, l1, also := steps(box.Bottom-y, box.Top-y, p.V.Y)
		if !ok || !also {
			continue
		}
		for k := max(k0, l0); k <= min(k1, l1); k++ {
			each(plane.Point{X: x + length.Length(k)*p.V.X, Y: y + length.Length(k)*p.V.Y})
		}
	}
}

// unbounded stands for no bound on a whole number of steps.
const unbounded = int64(1) << 62

// steps are the whole numbers k for which k·step lies in [low, high].
func steps(low, high, step length.Length) (from, to int64, ok bool) {
	switch {
	case step == 0:
		return -unbounded, unbounded, low <= 0 && high >= 0
	case step < 0:
		low, high, step = -high, -low, -step
	}
	from, to = -floorDiv(int64(-low), int64(step)), floorDiv(int64(high), int64(step))
	return from, to, from <= to
}

func floorDiv(a, b int64) int64 {
	q := a / b
	if q*b != a && (a < 0) != (b < 0) {
		q--
	}
	return q
}

// Transposed is the pattern with x and y swapped: columns for rows.
func (p Pattern) Transposed() Pattern {
	swap := func(a plane.Point) plane.Point { return plane.Point{X: a.Y, Y: a.X} }
	t := p
	t.Tiles, t.Places = nil, nil
	for _, tile := range p.Tiles {
		tile.Outline = plane.Region{tile.Outline}.Transposed()[0]
		tile.Box = tile.Box.Transposed()
		t.Tiles = append(t.Tiles, tile)
	}
	for _, place := range p.Places {
		t.Places = append(t.Places, Place{place.Tile, swap(place.At)})
	}
	t.U, t.V = swap(p.V), swap(p.U)
	t.Courses = nil
	return t.phased()
}

// turned is the pattern turned by 45° to the left and made larger by √2, which is
// exact: every corner (x, y) goes to (x − y, x + y). What is laid at 45° is
// made smaller by √2 first, which is where it is rounded.
func (p Pattern) turned() Pattern {
	turn := func(a plane.Point) plane.Point { return plane.Point{X: a.X - a.Y, Y: a.X + a.Y} }
	t := p
	t.Tiles, t.Places = nil, nil
	for _, tile := range p.Tiles {
		ring := make(plane.Ring, len(tile.Outline))
		for i, c := range tile.Outline {
			ring[i].Point = turn(c.Point)
		}
		tile.Outline = ring
		tile.Box = plane.Region{ring}.Bounds()
		tile.Least = LeastWidth(ring)
		t.Tiles = append(t.Tiles, tile)
	}
	for _, place := range p.Places {
		t.Places = append(t.Places, Place{place.Tile, turn(place.At)})
	}
	t.U, t.V = turn(p.U), turn(p.V)
	t.Courses = nil
	return t.phased()
}

// phased finds the box of phases. With a the lattice vector that rises less, the
// other one brought down by whole a's goes along by w: lattice points that are
// not a Rise apart in height are then no farther along than w or w − a.
func (p Pattern) phased() Pattern {
	a, b := p.U, p.V
	if a.Y == 0 || b.Y != 0 && a.Y.Abs() > b.Y.Abs() {
		a, b = b, a
	}
	if b.Y == 0 {
		p.Rise, p.Reach = a.Y.Abs(), b.X.Abs()
		return p
	}
	if a.Y < 0 {
		a = plane.Point{X: -a.X, Y: -a.Y}
	}
	n := length.Length(length.DivFloor(b.Y, a.Y))
	w := plane.Point{X: b.X - n*a.X, Y: b.Y - n*a.Y}
	p.Rise, p.Reach = a.Y, w.X.Abs()
	if w.Y != 0 {
		p.Reach = max(p.Reach, (w.X - a.X).Abs())
	}
	return p
}
