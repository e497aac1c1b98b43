package count

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Clear tells whether no tile that a free opening cuts, placed so, is cut by anything
// else. Then a set-out gives what it gives without the openings, and what they make of
// whole tiles.
func (p *Places) Clear(at survey.Placed) bool {
	return len(p.w.free) > 0 && p.boundary.clear(at, func(piece.Edge) bool { return true })
}

// ClearOfEnds tells whether no tile that a free opening cuts reaches an end of the wall.
func (p *Places) ClearOfEnds(at survey.Placed) bool {
	return p.boundary.clear(at, func(e piece.Edge) bool {
		return e >= 0 && (e.Side() == survey.SideLeft || e.Side() == survey.SideRight)
	})
}

// clear tells whether the free openings stand on the wall, and none so near an obstacle
// of some kind that it and the obstacle may cut the same tile.
func (b *boundary) clear(at survey.Placed, of func(piece.Edge) bool) bool {
	for k, i := range b.w.free {
		if at.Openings[i] == Away {
			continue
		}
		box := b.w.placed(i, at)
		if !b.onWall(box) {
			return false
		}
		reach := b.w.around(box)
		for n, o := range b.obstacles {
			if n != b.hullOf[k] && of(o.edge) && touch(reach, b.standing(n, at)) {
				return false
			}
		}
	}
	return true
}

// placed is what a free opening takes, in the frame of the rows.
func (w *facts) placed(i int, at survey.Placed) plane.Rect {
	return w.frame.rect(w.boxOf(i, w.found.Openings[i], at))
}

// around is a box with all of the tiles that it may cut, and as far beyond as sealant
// and the next wall's tile reach.
func (w *facts) around(r plane.Rect) plane.Rect {
	along, across := w.rule.Along+w.margin(), w.rule.Across+w.margin()
	return plane.Rect{Left: r.Left - along, Right: r.Right + along, Bottom: r.Bottom - across, Top: r.Top + across}
}

// standing is the box of an obstacle with the free marks placed.
func (b *boundary) standing(n int, at survey.Placed) plane.Rect {
	const far = 100 * length.Metre
	o := b.obstacles[n]
	switch {
	case o.edge == free:
		for k, i := range b.w.free {
			if b.hullOf[k] == n {
				return b.w.placed(i, at)
			}
		}
	case o.edge == pipe || !b.w.moves(o.edge.Side()):
		return o.Rect
	}
	var r plane.Rect
	switch o.edge.Side() {
	case survey.SideLeft:
		r = plane.Rect{Left: at.Left, Right: at.Left, Bottom: -far, Top: far}
	case survey.SideRight:
		r = plane.Rect{Left: at.Right, Right: at.Right, Bottom: -far, Top: far}
	default:
		r = plane.Rect{Left: -far, Right: far, Bottom: at.Head, Top: at.Head}
	}
	return b.w.frame.rect(r)
}
