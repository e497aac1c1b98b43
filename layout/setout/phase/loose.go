package phase

import (
	"coursewright/layout/bond"
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

// bounds adds up what the edge is sure to cut where the marks of its axis are placed so.
func (e *looseEdge) bounds(t *tally, origin plane.Point, p *survey.Placed, a *axis) {
	if e.long == 0 {
		return
	}
	by := t.w.shift(e, p)
	box := moved(meet(t.w.beside(e, p), a.fence), by)
	e.others = e.others[:0]
	for _, b := range a.busy {
		e.others = append(e.others, other{box: moved(b, by)})
	}
	move := t.w.Pattern.Phase(plane.Point{X: origin.X - by.X, Y: origin.Y - by.Y})
	at := e.laidAt(move, rounded, 0, box)
	e.edge.bounds(t, &at)
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
