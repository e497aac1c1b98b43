package cuts

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Saw is one straight cut of a piece of a pattern: where its line enters the tile and
// where it leaves it. A line that Stops must not be sawn all the way: beyond where another
// line crosses it, it runs through the piece.
type Saw struct {
	Enters, Leaves Mark
	Stops          bool
}

// Mark is a place on an edge of the tile as it lies, its long edge down, seen from the
// face: edges and corners are counted to the left round the tile, from the lower edge and
// its left corner. From is the distance from the nearer corner of the edge.
type Mark struct {
	Edge, Corner int
	Corners      int // of the tile
	From         length.Length
}

// String says where a mark is without its length: "A to B".
func (m Mark) String() string {
	other := m.Edge
	if m.Corner == m.Edge {
		other = (m.Edge + 1) % max(1, m.Corners)
	}
	return cornerName(m.Corner) + " to " + cornerName(other)
}

// At is the corner a mark is measured from: "B".
func (m Mark) At() string { return cornerName(m.Corner) }

// saws are the straight cuts of a piece of a pattern, one for every boundary that cuts it, and one for every stretch
// of a boundary that bends. A cut that ends inside the tile, where it meets another, is marked where its line leaves
// the tile. Places are rounded to the step.
func (w work) saws(step length.Length) (all []Saw) {
	if w.piece.Outline == nil || len(w.face) != 1 {
		return nil
	}
	ring := w.piece.Face[0]
	for i, c := range ring {
		before := ring[(i+len(ring)-1)%len(ring)]
		if c.On == 0 || before.On == c.On || w.pipe(c.On) {
			continue
		}
		for _, ends := range w.stretches(i, step) {
			if s, ok := w.saw(ends[0], ends[1], step); ok {
				all = append(all, s)
			}
		}
	}
	return all
}

// stretches are from where to where a piece is cut by the boundary that it meets at a corner: once where that is
// straight to within a step, else from bend to bend.
func (w work) stretches(first int, step length.Length) (all [][2]plane.Point) {
	ring := w.piece.Face[0]
	run := []plane.Point{ring[first].Point}
	for i := first; ring[i%len(ring)].On == ring[first].On && i < first+len(ring); i++ {
		run = append(run, ring[(i+1)%len(ring)].Point)
	}
	last, straight := run[len(run)-1], true
	for i, p := range run[1:] {
		straight = straight && plane.Within(p, run[0], last, step)
		all = append(all, [2]plane.Point{run[i], p})
	}
	if straight {
		return [][2]plane.Point{{run[0], last}}
	}
	return all
}

// saw is the cut from one place to another, both marked where it runs from edge to edge of the tile.
func (w work) saw(a, b plane.Point, step length.Length) (Saw, bool) {
	from, onFrom := w.mark(a, step)
	to, onTo := w.mark(b, step)
	if onFrom && onTo {
		return Saw{Enters: from, Leaves: to}, true
	}
	return w.across(plane.Through(a, b), step)
}

// across is a cut along a line that crosses the tile: both places where it does.
func (w work) across(l plane.Line, step length.Length) (s Saw, ok bool) {
	out := w.piece.Outline
	var enters, leaves plane.Point
	for i, c := range out {
		d := out[(i+1)%len(out)].Point
		from, to := l.Side(c.Point), l.Side(d)
		switch {
		case from >= 0 && to < 0:
			enters, ok = plane.Crossing(c.Point, d, l), true
		case from < 0 && to >= 0:
			leaves = plane.Crossing(c.Point, d, l)
		}
	}
	if !ok {
		return Saw{}, false
	}
	from, onFrom := w.mark(enters, step)
	to, onTo := w.mark(leaves, step)
	return Saw{from, to, w.beyond(l, step)}, onFrom && onTo
}

// beyond tells whether the piece goes on beyond a line along one of its cuts, by a step or more.
func (w work) beyond(l plane.Line, step length.Length) bool {
	long := plane.Distance(plane.Point{}, l.D)
	for _, c := range w.piece.Face[0] {
		if l.Side(c.Point) < -int64(step.Times(long)) {
			return true
		}
	}
	return false
}

// mark says on which edge of the tile a place lies, and how far from its nearer
// corner.
func (w work) mark(p plane.Point, step length.Length) (Mark, bool) {
	out := w.piece.Outline
	for i, c := range out {
		d := out[(i+1)%len(out)]
		if plane.Within(p, c.Point, d.Point, 4) {
			a, b := plane.Distance(c.Point, p), plane.Distance(d.Point, p)
			if b < a {
				return Mark{i, (i + 1) % len(out), len(out), b.RoundTo(step)}, true
			}
			return Mark{i, i, len(out), a.RoundTo(step)}, true
		}
	}
	return Mark{}, false
}
