// Package mosaic says which tiles of a wall come on one sheet, where tile is bought and
// set by the sheet. Sheets are laid from the start: beside each other and on top of each
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
	Sheets []Sheet // from the bottom up, each row from the left
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
			if b := &room.Bands[n]; b.Tile.Sheet.Any() && b.Bond.Sheeted() {
				out = append(out, ofBand(room, i, n, *w)...)
			}
		}
		for k := range w.Strips {
			if s := &w.Strips[k]; !s.Slab && s.Tile.Sheet.Any() && s.Bond.Sheeted() && len(s.Pieces) > 0 {
				f := ofFace(room, i, &s.Face)
				f.Face, f.Band = nil, s.Name() // it lies in the wall
				out = append(out, f)
			}
		}
		for k := range w.Insides {
			for n := range w.Insides[k].Faces {
				if face := &w.Insides[k].Faces[n]; !face.Slab && face.Tile.Sheet.Any() && face.Bond.Sheeted() && len(face.Pieces) > 0 {
					out = append(out, ofFace(room, i, face))
				}
			}
		}
		if t := w.Top; t != nil && !t.Slab && t.Tile.Sheet.Any() && t.Bond.Sheeted() && len(t.Pieces) > 0 {
			out = append(out, ofFace(room, i, &t.Face))
		}
	}
	return out
}

// ofWalls lays the sheets of the room's own tile, from the starts of the walls.
func ofWalls(room survey.Room, walls []plan.Wall) []Field {
	if !room.Tile.Sheet.Any() {
		return nil
	}
	l := layingOf(room)
	up := l.start(walls)
	l.origins(walls, up)
	return l.better(func(l laying) (out []Field) {
		for i, w := range walls {
			f := Field{Wall: i, Name: w.Found.Name, Tile: room.Tile}
			l.lay(&f, w, plane.Point{X: w.Start.Edge, Y: up}, 0)
			out = append(out, f)
		}
		return out
	})
}

// better lays sheets as they come or, where their sides go in and out, turned upside
// down, whichever needs fewer.
func (l laying) better(lay func(laying) []Field) []Field {
	one := lay(l)
	if l.plain {
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

// ofFace lays the sheets of a face of a niche or window, from its lower left corner.
func ofFace(room survey.Room, wall int, face *plan.Face) Field {
	room.Tile, room.Joint, room.Bond = face.Tile, face.Joint, face.Bond
	l, first := layingOf(room), face.Pieces[0]
	l.base[first.Lift] = l.row(l.cell(&first, corner(&first)))
	return l.better(func(l laying) []Field {
		f := Field{Wall: wall, Face: face, Name: face.Name(), Tile: face.Tile}
		l.lay(&f, face.Wall, corner(&first), 0)
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
	f := Field{Wall: wall, Band: b.Name, Name: b.Name + " on " + w.Found.Name, Tile: b.Tile}
	l, first := layingOf(room), &w.Pieces[at]
	l.base[first.Lift] = first.Row
	l.lay(&f, w, corner(first), n+1)
	return []Field{f}
}

// corner is the lower left corner of the box of a piece's tile.
func corner(p *piece.Piece) plane.Point { return plane.Point{X: p.Tile.Left, Y: p.Tile.Bottom} }

// laying is how sheets are laid on walls.
type laying struct {
	lattice
	base map[int]int // the row of tiles with which the first sheets begin, by how many courses of bands are under it
}

func layingOf(room survey.Room) laying { return laying{latticeOf(room), map[int]int{}} }

// lay finds the sheets of what is laid in one tile on a wall or face, with a tile at origin.
func (l laying) lay(f *Field, w plan.Wall, origin plane.Point, laid int) {
	found := map[place]int{}
	for i := range w.Pieces {
		p := &w.Pieces[i]
		if p.Laid != laid {
			continue
		}
		c := l.cell(p, origin)
		at, on := l.sheet(c, l.base[p.Lift], f.Tile.Sheet)
		at.lift = p.Lift
		n, there := found[at]
		if !there {
			n = len(f.Sheets)
			found[at] = n
			f.Sheets = append(f.Sheets, Sheet{Box: p.Tile, at: at, on: on})
		}
		f.Sheets[n].add(p, on)
		f.Lines = append(f.Lines, l.lines(p, c, l.base[p.Lift], f.Tile.Sheet, w.Shape.Region)...)
	}
	number(f.Sheets, w.Found.Letter, laid)
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

// start is the height of the lower edge of a tile that stands in line with the starts of
// all walls: in rows that are shifted by half a tile, one of those that are not shifted there.
func (l laying) start(walls []plan.Wall) (up length.Length) {
	for _, w := range walls {
		for i := range w.Pieces {
			p := &w.Pieces[i]
			by := l.u.X
			if l.u.Y != 0 {
				by *= 2
			}
			if p.Laid == 0 && (l.plain || (p.Tile.Left-w.Start.Edge)%by == 0) {
				return p.Tile.Bottom
			}
		}
	}
	return 0
}

// origins finds the rows with which sheets begin: over a band its first; under all bands
// the lowest that has at least half as many whole tiles as the row with most, on all
// walls. So sheets begin whole on the batten, and their rows run on from wall to wall.
func (l laying) origins(walls []plan.Wall, line length.Length) {
	found := map[int]bool{}
	for _, w := range walls {
		rows, most := map[int]int{}, 0
		for i := range w.Pieces {
			p := &w.Pieces[i]
			switch y := l.row(l.cell(p, plane.Point{X: w.Start.Edge, Y: line})); {
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
		s.ID = fmt.Sprintf("%s-S%d-%d", letter, s.Row, s.Number)
	}
}
