package stages

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// FullCourse is the lowest course that stands whole over every base: that of
// the batten. Its bottom edge is the line to strike.
type FullCourse struct {
	Row    int           // as pieces count it, from the course line
	Bottom length.Length // over the level line
}

// FirstFull finds the first full course of a room: at or over the course line,
// not set already, and on no wall cut to a base. Where the walls hold no such
// course found is false, and Bottom the course line.
//
// With columns, whose tiles may be staggered, it is the lowest tile so found in
// the column of a wall's start.
//
// Laws, each with a test:
//  1. No piece of the course is cut to a base.
//  2. Every lower course at or over the line is, or stands already.
func FirstFull(room survey.Room, line length.Length, walls []plan.Wall) (full FullCourse, found bool) {
	if !room.Bond.Coursed() {
		line = lowest(walls) // the line of a pattern is its row through the middle of the wall
	}
	courses := map[length.Length]bool{} // by bottom edge, whether it is full
	rows := map[length.Length]int{}
	for i := range walls {
		w := &walls[i]
		for k := range w.Pieces {
			p := &w.Pieces[k] // a piece is large to copy
			y := p.Tile.Bottom
			if y < line || p.Laid > 0 || room.Bond.Plumb && p.Tile.Left != w.Start.Edge {
				continue
			}
			fit, seen := courses[y]
			courses[y] = (fit || !seen) && !w.Found.Stands(p.Row) && !cutToBase(w, p)
			rows[y] = p.Row
		}
	}
	full.Bottom = line
	for y, fit := range courses {
		if fit && (!found || y < full.Bottom) {
			full, found = FullCourse{rows[y], y}, true
		}
	}
	return full, found
}

// lowest is the lowest tile of the wall with the most pieces: legs beside a tub go lower.
func lowest(walls []plan.Wall) (low length.Length) {
	most := 0
	for _, w := range walls {
		if len(w.Pieces) <= most {
			continue
		}
		most, low = len(w.Pieces), w.Pieces[0].Tile.Bottom
		for _, p := range w.Pieces {
			low = min(low, p.Tile.Bottom)
		}
	}
	return low
}

// cutToBase tells whether a piece is cut to what the wall stands on.
func cutToBase(w *plan.Wall, p *piece.Piece) bool {
	for _, side := range p.Cuts {
		if w.Shape.Sides[side].Part.Is == survey.BaseSegment {
			return true
		}
	}
	return false
}

// StartTile is the tile that is set first on a wall: a whole one of the first
// full course, the one whose left edge lies nearest the start, of those whose left edge
// stands on the wall where there are any: a tile that laps round an outside corner begins
// before it. Its left edge is what is struck on the wall. Where that course holds no whole tile, as on a
// wall narrower than two tiles, it is the nearest whole tile over it. On a wall that
// ends under that course, as the front of a bench does, it is of the wall's own lowest
// full course. ok is false where the wall holds none.
//
// Laws, each with a test:
//  1. The tile is whole and stands at or over the first full course, or on a wall that
//     ends under it at or over the wall's own.
//  2. Where the first full course is the one of the course line, and the tile
//     of the start is whole and begins on the wall, it is that tile.
func StartTile(w plan.Wall, full FullCourse) (start piece.Piece, ok bool) {
	full, _ = full.On(w)
	var at *piece.Piece
	for i := range w.Pieces {
		p := &w.Pieces[i]
		if !p.Whole || p.Laid > 0 || p.Tile.Bottom < full.Bottom || w.Found.Stands(p.Row) {
			continue
		}
		if at == nil || nearer(p, at, w.Start.Edge) {
			at = p
		}
	}
	if at == nil {
		return piece.Piece{}, false
	}
	return *at, true
}

// On is the course on a wall, or of a wall that ends under it the lowest course there
// that no base cuts. Where a base cuts all of such a wall it is the lowest, and found is
// false: nothing there stands on a batten.
func (f FullCourse) On(w plan.Wall) (own FullCourse, found bool) {
	cut := map[FullCourse]bool{} // whether a base cuts it
	for i := range w.Pieces {
		p := &w.Pieces[i]
		if p.Laid > 0 {
			continue
		}
		if p.Tile.Bottom >= f.Bottom {
			return f, true
		}
		c := FullCourse{p.Row, p.Tile.Bottom}
		cut[c] = cut[c] || cutToBase(&w, p)
	}
	own = f
	for c, is := range cut {
		if !is && (!found || c.Bottom < own.Bottom) {
			own, found = c, true
		}
	}
	for c := range cut {
		if !found && c.Bottom < own.Bottom {
			own = c
		}
	}
	return own, found
}

// Low is the first full course of walls that end under that of the room.
type Low struct {
	FullCourse
	Walls []int // ascending
}

// Lows are the courses that stand on battens of their own, the highest first: those of
// the front of a bench, say, and of a curb.
//
// Law, with a test: no base cuts them, and they stand under the first full course of the room.
func Lows(full FullCourse, walls []plan.Wall) (out []Low) {
	for i, w := range walls {
		own, found := full.On(w)
		if !found || own == full {
			continue
		}
		k := slices.IndexFunc(out, func(l Low) bool { return l.FullCourse == own })
		if k < 0 {
			k, out = len(out), append(out, Low{FullCourse: own})
		}
		out[k].Walls = append(out[k].Walls, i)
	}
	slices.SortStableFunc(out, func(a, b Low) int { return cmp.Compare(b.Bottom, a.Bottom) })
	return out
}

// nearer tells whether p comes before q: lower, then with its left edge on the wall, then
// nearer the edge, then further left.
func nearer(p, q *piece.Piece, edge length.Length) bool {
	if p.Tile.Bottom != q.Tile.Bottom {
		return p.Tile.Bottom < q.Tile.Bottom
	}
	if on := p.Tile.Left >= 0; on != (q.Tile.Left >= 0) {
		return on
	}
	a, b := (p.Tile.Left - edge).Abs(), (q.Tile.Left - edge).Abs()
	return a < b || a == b && p.Tile.Left < q.Tile.Left
}

// Strike is the tile edge to strike on a wall: the left edge of the tile to
// start with, and of a wall without one that of the cut tile in its place, on the
// first full course or over it. ok is false where no tile has its left edge on the
// wall.
//
// A wall in single tiles has none, unless they are whole.
//
// Law, with a test: a factory edge of some piece lies there.
func Strike(w plan.Wall, full FullCourse) (edge length.Length, ok bool) {
	if t, whole := StartTile(w, full); whole {
		return t.Tile.Left, true
	}
	if w.Found.Single {
		return 0, false // each tile begins where the wall does
	}
	full, _ = full.On(w)
	var best *piece.Piece
	for i := range w.Pieces {
		p := &w.Pieces[i]
		if p.Laid > 0 || p.Tile.Bottom < full.Bottom || w.Found.Stands(p.Row) || !edged(p) {
			continue
		}
		if best == nil || nearer(p, best, w.Start.Edge) {
			best = p
		}
	}
	if best == nil {
		return 0, false
	}
	return best.Tile.Left, true
}

// edged tells whether the left edge of a piece is an edge of its tile.
func edged(p *piece.Piece) bool {
	for _, ring := range p.Face {
		for i, c := range ring {
			if next := ring[(i+1)%len(ring)]; c.On == survey.SideFactory && c.X == p.Tile.Left && next.X == p.Tile.Left {
				return true
			}
		}
	}
	return false
}
