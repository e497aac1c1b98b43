package setout

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// freeHead names a head that is free among what is to be measured.
func (b *beside) freeHead() string {
	for _, w := range b.room.Walls {
		if len(w.PartedBy()) > 0 && !w.Head.Meets && w.Head.Stops.Free() {
			return " and the head of its wall"
		}
	}
	return ""
}

// together puts the parts of walls that are set out and cut together again.
func (b *beside) together(got solved) (plan.Setout, []plan.Wall) {
	b.lay(&got)
	_, sides := b.parts()
	s := got.setout
	s.Walls, s.CutTiles, s.Pinned = nil, 0, b.room.Line != nil
	walls := make([]plan.Wall, len(b.room.Walls))
	pieces := make([][]piece.Piece, len(walls))
	letters := make([]string, len(walls))
	for i, w := range b.room.Walls {
		var of []int
		for k, s := range sides {
			if s.wall == i {
				of = append(of, k)
			}
		}
		walls[i], pieces[i] = b.wallOf(i, sides, of, &got)
		s.Walls = append(s.Walls, walls[i].Start)
		letters[i] = w.Letter
	}
	for i := range s.Bands {
		band := &s.Bands[i]
		on, edges := band.Walls, band.Edges
		band.Walls, band.Edges = nil, nil
		for k, part := range on {
			if sides[part].n == 0 {
				band.Walls, band.Edges = append(band.Walls, sides[part].wall), append(band.Edges, edges[k])
			}
		}
	}
	number(b.room, walls, pieces, letters)
	dress(b.room, walls, s.Line)
	return s, walls
}

// wallOf is a wall of its parts, and their pieces.
func (b *beside) wallOf(wall int, sides []side, of []int, got *solved) (plan.Wall, []piece.Piece) {
	found, cut := b.room.Walls[wall], got.walls
	first := cut[of[0]]
	if len(of) == 1 {
		first.Found, first.Start.Pinned = found, found.Pin != nil
		return first, first.Pieces
	}
	by := found.PartedBy()
	w := plan.Wall{Found: found, Start: plan.Start{Edge: first.Start.Edge, X: first.Start.X, OnTile: first.Start.OnTile,
		Pinned: found.Pin != nil, From: first.Start.Edge, To: first.Start.Edge}}
	w.Start.Placed = first.Start.Placed
	w.Start.Placed.Right = cut[of[len(of)-1]].Start.Placed.Right
	w.Start.Placed.Openings = make([]survey.Edges, len(found.Openings))
	for _, k := range by {
		o, x := found.Openings[k], b.left[wall][k]
		w.Start.Placed.Openings[k] = survey.Edges{Left: x, Right: x + o.Width.From, Bottom: o.Bottom.From, Top: o.Bottom.From + o.Height.From}
	}
	var all []piece.Piece
	for n, k := range of {
		part, to := cut[k], sides[k].names(found, by)
		for i, opening := range sides[k].openings {
			if found.Openings[opening].Kind != survey.Pipe {
				w.Start.Placed.Openings[opening] = part.Start.Placed.Openings[i]
			}
		}
		on := 0
		if b.room.Bond.Plumb && n > 0 {
			on = columnsOn(all, part.Pieces, b.room.Bond.Den)
		}
		for _, p := range part.Pieces {
			p.Row += on
			all = append(all, p.Renamed(to))
		}
		for _, g := range part.Gaps {
			w.Gaps = append(w.Gaps, g.Renamed(to))
		}
		if n > 0 {
			_, held := found.Beyond[found.Openings[by[n-1]].Name]
			w.Start.Anew = append(w.Start.Anew, plan.Anew{From: part.Start.Placed.Left, Edge: part.Start.Edge, Own: held || b.cuts(wall)})
		}
	}
	starts := []length.Length{w.Start.Edge}
	for _, a := range w.Start.Anew {
		starts = append(starts, a.Edge)
	}
	w.Start.Cut = b.cutTold(wall, &got.setout, starts)
	best := plan.Classic{Name: "best", Edge: w.Start.Edge, X: w.Start.X, OnTile: w.Start.OnTile, Figures: first.Start.Classic[len(first.Start.Classic)-1].Figures}
	w.Start.Classic = []plan.Classic{best}
	w.Bare = places(w.Gaps)
	w.Shape = found.WithLegs().Shape(b.room.Units, w.Start.Placed)
	if !b.room.Bond.Plumb {
		slices.SortStableFunc(all, func(p, q piece.Piece) int { return cmp.Compare(p.Row+p.Lift, q.Row+q.Lift) })
	}
	return w, all
}

// columnsOn is by how much the columns beyond a strip are counted on, in whole turns
// of the bond, so that they come after those before it.
func columnsOn(before, beyond []piece.Piece, den int64) int {
	if len(before) == 0 || len(beyond) == 0 {
		return 0
	}
	last, first := before[0].Row, beyond[0].Row
	for _, p := range before {
		last = max(last, p.Row)
	}
	for _, p := range beyond {
		first = min(first, p.Row)
	}
	on, turn := last+1-first, int(max(1, den))
	return on + (turn-on%turn)%turn
}
