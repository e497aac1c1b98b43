package phase

import (
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

// beside is the box in which a loose edge cuts tiles alone.
func (w *Wall) beside(e *looseEdge, p *survey.Placed) plane.Rect {
	box := w.within(p)
	switch e.on {
	case survey.SideLeft:
		box.Left = everywhere.Left
		return box
	case survey.SideRight:
		box.Right = everywhere.Right
		return box
	case survey.SideHead:
		box.Top = everywhere.Top
		return box
	}
	is := w.opening(e.on, p)
	switch e.name.Facing() {
	case piece.OnRight:
		return plane.Rect{Left: box.Left, Bottom: is.Bottom, Right: is.Right, Top: min(box.Top, is.Top)}
	case piece.OnLeft:
		return plane.Rect{Left: is.Left, Bottom: is.Bottom, Right: box.Right, Top: min(box.Top, is.Top)}
	case piece.Over:
		return plane.Rect{Left: max(box.Left, is.Left), Bottom: box.Bottom, Right: min(box.Right, is.Right), Top: is.Top}
	}
	return plane.Rect{Left: max(box.Left, is.Left), Bottom: is.Bottom, Right: min(box.Right, is.Right), Top: box.Top}
}

// bounds adds up what the edge is sure to cut where its marks are placed so.
func (e *looseEdge) bounds(t *tally, origin plane.Point, p *survey.Placed) {
	if e.long == 0 {
		return
	}
	by, box := t.w.shift(e, p), t.w.beside(e, p)
	box = plane.Rect{Left: box.Left - by.X, Bottom: box.Bottom - by.Y, Right: box.Right - by.X, Top: box.Top - by.Y}
	move := t.w.Pattern.Phase(plane.Point{X: origin.X - by.X, Y: origin.Y - by.Y})
	off := e.off(move)
	for k := range e.near {
		e.bound(t, &e.near[k], move, off, rounded, 0, box)
	}
}

// rounded is by how much more a cut may be wide than the tables say, because it is
// rounded to the unit.
const rounded length.Length = 2
