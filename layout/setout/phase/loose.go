package phase

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// looseEdge is a straight boundary that free marks move: a free end, the free head,
// or an edge of a free opening. Its tables hold wherever it stands: instead of the
// edge the phase moves.
type looseEdge struct {
	edge
	on plane.Side
}

// shift is how far the edge's beginning has moved from where the wall is largest.
func (w *Wall) shift(e *looseEdge, p *survey.Placed) plane.Point {
	switch e.on {
	case survey.SideLeft:
		return plane.Point{X: p.Left - w.outer.Left}
	case survey.SideRight:
		return plane.Point{X: p.Right - w.outer.Right}
	case survey.SideHead:
		return plane.Point{Y: p.Head - w.outer.Head}
	}
	is, was := w.opening(e.on, p), w.opening(e.on, &w.outer)
	by := plane.Point{X: is.Left - was.Left, Y: is.Bottom - was.Bottom}
	switch e.name.Facing() {
	case piece.OnLeft:
		by.X = is.Right - was.Right
	case piece.Under:
		by.Y = is.Top - was.Top
	}
	return by
}

func (w *Wall) opening(on plane.Side, p *survey.Placed) survey.Edges {
	return p.Openings[int(on-survey.SideBase)-len(w.Found.Base)]
}

// within is the box in which the edges that stand cut tiles: free ends and the free
// head leave out what is beyond them.
func (w *Wall) within(p *survey.Placed) plane.Rect {
	box := everywhere
	if w.moves(survey.SideLeft) {
		box.Left = p.Left
	}
	if w.moves(survey.SideRight) {
		box.Right = p.Right
	}
	if w.moves(survey.SideHead) {
		box.Top = p.Head
	}
	return box
}

// beside is the box in which a loose edge cuts tiles alone, as far as it is its own marks
// that say so.
func (w *Wall) beside(e *looseEdge, p *survey.Placed) plane.Rect {
	box := everywhere
	if e.on < survey.SideBase {
		return box
	}
	is := w.opening(e.on, p)
	switch e.name.Facing() {
	case piece.OnRight:
		box.Bottom, box.Top, box.Right = is.Bottom, is.Top, is.Right
	case piece.OnLeft:
		box.Bottom, box.Top, box.Left = is.Bottom, is.Top, is.Left
	case piece.Over:
		box.Left, box.Right, box.Top = is.Left, is.Right, is.Top
	default:
		box.Left, box.Right, box.Bottom = is.Left, is.Right, is.Bottom
	}
	return box
}

// bounds adds up what the edge is sure to cut where the marks of its axis are placed so.
func (e *looseEdge) bounds(t *tally, origin plane.Point, p *survey.Placed, a *axis) {
	if e.long == 0 {
		return
	}
	by := t.w.shift(e, p)
	box := moved(meet(t.w.beside(e, p), a.fence), by)
	e.others = e.others[:0]
	for _, b := range a.busy {
		e.others = append(e.others, moved(b, by))
	}
	move := t.w.Pattern.Phase(plane.Point{X: origin.X - by.X, Y: origin.Y - by.Y})
	e.edge.bounds(t, move, e.off(move), rounded, 0, box)
}

// takes tells whether bounds may count a tile.
func (e *looseEdge) takes(w *Wall, set *bond.Set, p *survey.Placed, a *axis) bool {
	by := w.shift(e, p)
	box := w.Pattern.Tiles[set.Tile].Box
	box = plane.Rect{Left: box.Left + set.At.X, Bottom: box.Bottom + set.At.Y, Right: box.Right + set.At.X, Top: box.Top + set.At.Y}
	in := meet(w.beside(e, p), a.fence)
	if box.Left < in.Left || box.Right > in.Right || box.Bottom < in.Bottom || box.Top > in.Top {
		return false
	}
	for _, b := range a.busy {
		if b.Left <= box.Right && b.Right >= box.Left && b.Bottom <= box.Top && b.Top >= box.Bottom {
			return false
		}
	}
	e.others = e.others[:0]
	return e.edge.takes(set.Tile, plane.Point{X: set.At.X - by.X, Y: set.At.Y - by.Y})
}

// moved is a box seen from an edge that was moved.
func moved(r plane.Rect, by plane.Point) plane.Rect {
	return plane.Rect{Left: r.Left - by.X, Bottom: r.Bottom - by.Y, Right: r.Right - by.X, Top: r.Top - by.Y}
}

// meet is what two boxes have in common.
func meet(a, b plane.Rect) plane.Rect {
	return plane.Rect{Left: max(a.Left, b.Left), Bottom: max(a.Bottom, b.Bottom), Right: min(a.Right, b.Right), Top: min(a.Top, b.Top)}
}

// rounded is by how much more a cut may be wide than the tables say, because it is
// rounded to the unit.
const rounded length.Length = 2
