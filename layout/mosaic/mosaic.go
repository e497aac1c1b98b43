// Package mosaic says which tiles of a wall come on one sheet, where tile is bought and
// set by the sheet. Sheets are laid from the start, in patterns without level rows from
// that tile of the pattern from which fewest are needed: beside each other and on top of each
// other, a joint apart, so that their lines are joints like all others.
//
// Laws, each with a test:
//  1. Every piece of tile that comes on sheets is on exactly one sheet, and no place of a
//     sheet is taken twice.
//  2. All sheets of a face have the same outline, moved by whole sheets.
//  3. The lines between sheets run in joints: they touch no tile.
//  4. The sheets that are bought for the parts, cut along their joints, hold all of them.
package mosaic

import (
	"cmp"
	"fmt"
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Field is a wall, or a face of a niche or window, that is laid by the sheet.
type Field struct {
	Wall   int        // of the room's walls
	Band   string     // the band or strip that it is, or empty
	Face   *plan.Face // the face of a niche or window that it is, or nil
	Name   string
	Tile   survey.TileSize
	Size   survey.SheetSize // of its sheets
	Level  bool             // its rows are level, or plumb
	Sheets []Sheet          // from the bottom up, each row from the left
	Lines  [][2]plane.Point
}

// Sheet is one sheet, or a part of one.
type Sheet struct {
	ID          string // "B-S2-3": the wall, the row of sheets from the bottom, and which in it from the left
	Row, Number int
	Whole, Cut  int // tiles that stay whole, and that are cut
	Wide, High  int // how many tiles of it are used each way, from the first to the last
	Pieces      []string
	Box         plane.Rect // round its tiles on the wall

	at place
	on cell // the lowest and leftmost tile used, on the sheet
}

// OnWall is what the sheet is called on its wall.
func (s *Sheet) OnWall() string { return fmt.Sprintf("%d-%d", s.Row, s.Number) }

// Full tells whether the sheet is set as it comes.
func (s Sheet) Full(size survey.SheetSize) bool { return s.Whole == size.Tiles() }

// Parted tells whether the sheet is cut along its joints first: some of its tiles are
// left off.
func (s Sheet) Parted(size survey.SheetSize) bool { return s.Whole+s.Cut < size.Tiles() }

// Of lists what of a plan is laid by the sheet: wall by wall its own tile, its bands and
// strips, the faces of its niches and windows, and its top.
func Of(room survey.Room, walls []plan.Wall) []Field {
	var out []Field
	own := ofWalls(room, walls)
	for i := range walls {
		w := &walls[i]
		if own != nil {
			out = append(out, own[i])
		}
		for n := range room.Bands {
			if b := &room.Bands[n]; b.Tile.Sheet.Any() {
				out = append(out, ofBand(room, i, n, *w)...)
			}
		}
		for k := range w.Strips {
			if s := &w.Strips[k]; !s.Slab && s.Tile.Sheet.Any() && len(s.Pieces) > 0 {
				f := ofFace(room, i, &s.Face, 0)
				f.Face, f.Band = nil, s.Name() // it lies in the wall
				out = append(out, f)
			}
		}
		for k := range w.Insides {
			for n := range w.Insides[k].Faces {
				out = append(out, ofInside(room, i, &w.Insides[k].Faces[n])...)
			}
		}
		if t := w.Top; t != nil && !t.Slab && t.Tile.Sheet.Any() && len(t.Pieces) > 0 {
			out = append(out, ofFace(room, i, &t.Face, 0))
		}
	}
	return out
}

// ofWalls lays the sheets of the room's own tile, from the starts of the walls.
func ofWalls(room survey.Room, walls []plan.Wall) []Field {
	if !room.Tile.Sheet.Any() {
		return nil
	}
	l := layingOf(room, handOf(room, walls[0], 0))
	up := l.start(walls)
	l.origins(walls, up)
	lay := func(l laying, begin func(laying, int) plane.Point) (out []Field) {
		for i, w := range walls {
			f := Field{Wall: i, Name: w.Found.Name, Tile: room.Tile, Size: l.size, Level: l.level()}
			l.lay(&f, w, begin(l, i), 0)
			out = append(out, f)
		}
		return out
	}
	return l.better(func(l laying) []Field {
		from := func(_ laying, i int) plane.Point { return plane.Point{X: walls[i].Start.Edge, Y: up} }
		plain := lay(l, from)
		if l.level() {
			return plain
		}
		moved := lay(l, func(l laying, i int) plane.Point { return l.begins(walls[i], from(l, i), 0) })
		if needs(moved) < needs(plain) { // each wall by itself needs no more, but parts of several are cut from one sheet
			return moved
		}
		return plain
	})
}

// handOf is to which side the courses of what is laid in one tile step: where they may
// step to either, to that to which a course does against the one under it.
func handOf(room survey.Room, w plan.Wall, laid int) survey.Hand {
	b := room.Bond
	if b.Kind != survey.Running || b.Hand != survey.Free || b.Plumb {
		return b.Hand
	}
	along := bond.Of(room, survey.Left).Along()
	first := map[int]length.Length{}
	for i := range w.Pieces {
		p := &w.Pieces[i]
		if p.Laid != laid {
			continue
		}
		if under, ok := first[p.Row-1]; ok && length.Mod(p.Tile.Left-under-b.Shift(1, survey.Right, along)+1, along) <= 2 { // a shift may be rounded
			return survey.Right
		}
		if _, ok := first[p.Row]; !ok {
			first[p.Row] = p.Tile.Left
		}
	}
	return survey.Left
}

// better lays sheets as they come or, where their sides go in and out, turned upside
// down, whichever needs fewer.
func (l laying) better(lay func(laying) []Field) []Field {
	one := lay(l)
	if l.den != 2 {
		return one
	}
	l.turned = true
	if two := lay(l); needs(two) < needs(one) {
		return two
	}
	return one
}

// needs is how many sheets some fields need and, as far as these are the same, in how
// many parts.
func needs(fields []Field) int {
	b, n := Buy(fields), 0
	for _, f := range fields {
		n += len(f.Sheets)
	}
	return (b.Full+b.From)<<20 + n
}

// ofInside lays the sheets of a face of a niche or window: of its own tile, and of the bands
// of the wall that go on upon it.
func ofInside(room survey.Room, wall int, face *plan.Face) (out []Field) {
	on := func(laid int) bool {
		return slices.ContainsFunc(face.Pieces, func(p piece.Piece) bool { return p.Laid == laid })
	}
	if face.Slab {
		return nil
	}
	if face.Tile.Sheet.Any() && on(0) {
		out = append(out, ofFace(room, wall, face, 0))
	}
	for n, b := range room.Bands {
		if b.Tile.Sheet.Any() && on(n+1) {
			f := ofFace(room, wall, face, n+1)
			f.Band, f.Name = b.Name, b.Name+" on "+face.Name()
			out = append(out, f)
		}
	}
	return out
}

// ofFace lays the sheets of one of the tiles of a face, of its own or of a band's, each part
// of it from its lower left corner.
func ofFace(room survey.Room, wall int, face *plan.Face, laid int) Field {
	if room.Tile, room.Joint, room.Bond = face.Tile, face.Joint, face.Bond; laid > 0 {
		if room = room.Laid(laid); face.Is != survey.BackFace && room.Bond.Coursed() && !room.GoesRound() {
			room.Bond = face.Bond
		}
	}
	l := layingOf(room, handOf(room, face.Wall, laid))
	var from plane.Point
	first := true
	for i := range face.Pieces {
		p := &face.Pieces[i]
		if p.Laid != laid {
			continue
		}
		if first {
			from, first = l.from(p), false
		}
		if _, begun := l.base[p.Lift]; !begun {
			l.base[p.Lift] = l.begin(l.row(l.cell(l.tileOf(p, from), from)))
		}
	}
	return l.better(func(l laying) []Field {
		f := Field{Wall: wall, Face: face, Name: face.Name(), Tile: room.Tile, Size: l.size, Level: l.level()}
		l.lay(&f, face.Wall, l.begins(face.Wall, from, laid), laid)
		return []Field{f}
	})[0]
}

// ofBand lays the strips of sheets of a band on one wall, from its left end.
func ofBand(room survey.Room, wall, n int, w plan.Wall) []Field {
	b := &room.Bands[n]
	at := slices.IndexFunc(w.Pieces, func(p piece.Piece) bool { return p.Laid == n+1 })
	if at < 0 {
		return nil
	}
	room.Joint, room.Tile, room.Bond = b.Inner(room.Joint), b.Tile, b.Bond
	l, first := layingOf(room, handOf(room, w, n+1)), &w.Pieces[at]
	from := l.from(first)
	l.base[first.Lift] = l.begin(l.row(l.cell(l.tileOf(first, from), from)))
	f := Field{Wall: wall, Band: b.Name, Name: b.Name + " on " + w.Found.Name, Tile: b.Tile, Size: l.size, Level: l.level()}
	l.lay(&f, w, l.begins(w, from, n+1), n+1)
	return []Field{f}
}

// corner is the lower left corner of the box of a piece's tile.
func corner(p *piece.Piece) plane.Point { return plane.Point{X: p.Tile.Left, Y: p.Tile.Bottom} }

// laying is how sheets are laid on walls.
type laying struct {
	lattice
	size   survey.SheetSize
	beside [][]beside  // by place, what stands beside its tile
	base   map[int]int // the row of tiles with which the first sheets begin, by how many courses of bands are under it
}

func layingOf(room survey.Room, hand survey.Hand) laying {
	l := latticeOf(room, hand)
	return laying{l, room.Bond.Sheet(room.Tile, room.Joint), l.besides(), map[int]int{}}
}

// from is where a tile of the first place stands by a piece: its own corner or, of
// another place or row, one moved to it.
func (l laying) from(p *piece.Piece) plane.Point {
	t := l.tileOf(p, corner(p))
	by := less(l.corner(t.place), l.corner(0))
	if l.courses() {
		by.Y = 0
	}
	return less(t.corner, by)
}

// lay finds the sheets of what is laid in one tile on a wall or face, with a tile at origin,
// and the lines between them.
func (l laying) lay(f *Field, w plan.Wall, origin plane.Point, laid int) {
	l.gather(f, w, origin, laid)
	for i := range w.Pieces {
		if p := &w.Pieces[i]; p.Laid == laid {
			f.Lines = append(f.Lines, l.lines(l.tileOf(p, origin), origin, p.Lift, f.Size, w.Shape.Region)...)
		}
	}
	number(f.Sheets, w.Found.Letter, laid)
}

// gather puts the tiles onto their sheets.
func (l laying) gather(f *Field, w plan.Wall, origin plane.Point, laid int) {
	found := map[place]int{}
	for i := range w.Pieces {
		p := &w.Pieces[i]
		if p.Laid != laid {
			continue
		}
		at, on := l.sheet(l.cell(l.tileOf(p, origin), origin), l.base[p.Lift], f.Size)
		at.lift = p.Lift
		n, there := found[at]
		if !there {
			n = len(f.Sheets)
			found[at] = n
			f.Sheets = append(f.Sheets, Sheet{Box: p.Tile, at: at, on: on})
		}
		f.Sheets[n].add(p, on)
	}
}

// add takes a tile onto the sheet.
func (s *Sheet) add(p *piece.Piece, on cell) {
	if p.Whole {
		s.Whole++
	} else {
		s.Cut++
	}
	s.Pieces = append(s.Pieces, p.ID)
	s.Box = plane.Rect{Left: min(s.Box.Left, p.Tile.Left), Bottom: min(s.Box.Bottom, p.Tile.Bottom), Right: max(s.Box.Right, p.Tile.Right), Top: max(s.Box.Top, p.Tile.Top)}
	right, top := max(s.on.x+s.Wide-1, on.x), max(s.on.y+s.High-1, on.y)
	s.on = cell{min(s.on.x, on.x), min(s.on.y, on.y)}
	s.Wide, s.High = right-s.on.x+1, top-s.on.y+1
}

// start is the height of the lower edge of a tile of the first place that stands in line
// with the starts of all walls.
func (l laying) start(walls []plan.Wall) (up length.Length) {
	if l.courses() {
		return 0 // rows are counted by the pieces
	}
	for _, w := range walls {
		for i := range w.Pieces {
			p := &w.Pieces[i]
			t := l.tileOf(p, plane.Point{X: w.Start.Edge})
			by := less(l.corner(t.place), l.corner(0))
			if over, ok := l.inLine(t.corner.X - by.X - w.Start.Edge); ok && p.Laid == 0 {
				return t.corner.Y - by.Y - over
			}
		}
	}
	return 0
}

// inLine is how high a tile stands over one of the same place that is so far to its left.
func (l laying) inLine(by length.Length) (up length.Length, ok bool) {
	const far = 200
	for k := range length.Length(2*far + 1) {
		u := k/2 + k%2
		if k%2 == 1 {
			u = -u
		}
		switch rest := by - u*l.pattern.U.X; {
		case l.pattern.V.X == 0 && rest == 0:
			return u * l.pattern.U.Y, true
		case l.pattern.V.X != 0 && rest%l.pattern.V.X == 0:
			return u*l.pattern.U.Y + rest/l.pattern.V.X*l.pattern.V.Y, true
		}
	}
	return 0, false
}

// origins finds the rows with which sheets begin: over a band its first; under all bands
// the lowest that has at least half as many whole tiles as the row with most, on all
// walls. So sheets begin whole on the batten, and their rows run on from wall to wall.
func (l laying) origins(walls []plan.Wall, line length.Length) {
	if !l.level() {
		return
	}
	found := map[int]bool{}
	for _, w := range walls {
		rows, most := map[int]int{}, 0
		for i := range w.Pieces {
			p := &w.Pieces[i]
			from := plane.Point{X: w.Start.Edge, Y: line}
			switch y := l.begin(l.row(l.cell(l.tileOf(p, from), from))); {
			case p.Laid != 0:
			case p.Lift != 0:
				if !found[p.Lift] || y < l.base[p.Lift] {
					l.base[p.Lift], found[p.Lift] = y, true
				}
			case p.Whole:
				rows[y]++
				most = max(most, rows[y])
			}
		}
		if low, any := lowest(rows, most); any && (!found[0] || low > l.base[0]) {
			l.base[0], found[0] = low, true
		}
	}
}

// lowest is the lowest row with at least half of the most.
func lowest(rows map[int]int, most int) (low int, any bool) {
	for y, n := range rows {
		if 2*n >= most && (!any || y < low) {
			low, any = y, true
		}
	}
	return low, any
}

// number puts the sheets in order and gives them their rows from the bottom, their numbers
// from the left, and ids.
func number(all []Sheet, letter string, laid int) {
	if laid > 0 {
		letter = fmt.Sprintf("%s-B%d", letter, laid)
	}
	slices.SortFunc(all, func(a, b Sheet) int {
		return cmp.Or(cmp.Compare(a.at.lift, b.at.lift), cmp.Compare(a.at.row, b.at.row), cmp.Compare(a.at.column, b.at.column))
	})
	for i := range all {
		s := &all[i]
		s.Row, s.Number = 1, 1
		if i > 0 {
			before := all[i-1]
			if s.Row = before.Row + 1; before.at.lift == s.at.lift && before.at.row == s.at.row {
				s.Row, s.Number = before.Row, before.Number+1
			}
		}
		s.ID = letter + "-S" + s.OnWall()
	}
}
