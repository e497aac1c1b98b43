package count

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// movable is what no place of a free end, or with columns of a free head, can beat for rows that begin at along:
// the best of what each place gives in the plain rows beside it.
func (w *Wall) movable(right bool, along length.Length, bands pattern) merit.Merit {
	var best merit.Merit
	places := func() []length.Length { return w.EndOptions(along, right) }
	if w.plumb {
		places = func() []length.Length { return w.HeadOptions(along) }
	}
	for i, x := range places() {
		m := w.zone(right, x, along, bands)
		if !w.plumb {
			m.Exposed = w.ExposedAt(along, x, right)
		}
		if i == 0 || w.order.Better(&m, &best) {
			best = m
		}
	}
	return best
}

// zone is what is sure of the pieces beside a free end that is placed at x.
func (w *Wall) zone(right bool, x, along length.Length, bands pattern) merit.Merit {
	s := sure{w: w}
	classes := len(w.shifts)
	var pair [2]crossing
	for i := 0; i+1 < len(w.outline.heights); i++ {
		low, high := w.bandAt(i)
		if w.outline.blocked[i] || high-low < w.rule.Across || w.crowded(right, low, high) || !w.interval(right, x, low, high, &pair) {
			continue
		}
		for class, shift := range w.shifts {
			if n := int(bands[i*classes+class]); n > 0 {
				s.beside(right, pair[:], along+shift, class, n)
			}
		}
	}
	return s.merit()
}

// crowded tells whether a pipe or the range of a free opening is so near the free
// end that the pieces beside it are not sure.
func (w *Wall) crowded(right bool, low, high length.Length) bool {
	stops := w.stops(right)
	far := 2 * (w.rule.Along + w.room.Joint)
	reach := plane.Rect{Left: stops.From - far, Right: stops.To + far, Bottom: low, Top: high}
	for _, o := range w.loose {
		if o.Overlaps(reach) {
			return true
		}
	}
	return false
}

// interval finds where tile runs from a free end that is placed at x to what next
// crosses the rows between two heights; it is false where there is no tile, or
// the other end leans and is near.
func (w *Wall) interval(right bool, x, low, high length.Length, pair *[2]crossing) bool {
	facing := piece.OnLeft
	if right {
		facing = piece.OnRight
	}
	free := at(x, &steep{edge: w.wallEdge(piece.EdgeOf(w.sideOf(right), facing)), onLeft: !right})
	var before, next *steep // the last edge beyond the free end, and the first on its tile's side
	for i := range w.outline.steep {
		s := &w.outline.steep[i]
		if s.from.Y > low || s.to.Y < high || w.moves(s.edge.Side()) {
			continue
		}
		beyond := s.from.X <= x && s.to.X <= x
		if right {
			beyond = s.from.X >= x && s.to.X >= x
		}
		nearer := func(a, b *steep) bool { return b == nil || (a.from.X < b.from.X) != right }
		switch {
		case beyond && (before == nil || !nearer(s, before)):
			before = s
		case !beyond && nearer(s, next):
			next = s
		}
	}
	switch {
	case before != nil && before.onLeft == right: // beyond its tile's end
		return false
	case next != nil && next.onLeft != right:
		return false
	case next != nil && next.from.X != next.to.X:
		if min((next.from.X-x).Abs(), (next.to.X-x).Abs()) < 3*(w.rule.Along+w.room.Joint) {
			return false
		}
		next = nil // so far off that it is the same to the pieces beside the end
	}
	far := at(x+20*w.rule.Along, &steep{onLeft: right})
	if right {
		far.x0 = x - 20*w.rule.Along
		far = at(far.x0, far.steep)
	}
	if next != nil {
		far = at(next.from.X, next)
	}
	if right {
		pair[0], pair[1] = far, free
	} else {
		pair[0], pair[1] = free, far
	}
	return true
}

// beside adds the pieces of n rows of one class at a free end, and those at the
// other end of the interval where they stand so near that no feature counts them.
func (s *sure) beside(right bool, pair []crossing, first length.Length, class, n int) {
	w := s.w
	end := 0
	if right {
		end = 1
	}
	other := pair[1-end].edge != 0 && w.short(right, pair[1-end].x0)
	w.stubs(pair, first, func(b stub) {
		mine := b.cuts[end] != nil
		if b.whole || b.sealed() || !mine && !(other && b.cuts[1-end] != nil) {
			return
		}
		if mine && b.cuts[1-end] != nil && !other {
			return
		}
		var r Run
		for _, c := range b.cuts {
			if c != nil {
				r.Edges = append(r.Edges, c.edge)
				r.Low = r.Low || c.edge.Low(w.rule.Sides)
			}
		}
		if len(r.Edges) == 2 && r.Edges[0] > r.Edges[1] {
			r.Edges[0], r.Edges[1] = r.Edges[1], r.Edges[0]
		}
		r.Class, r.Least = class, b.wide
		s.grade(r.Low, piece.OnLeft, b.wide, n)
		s.runs = append(s.runs, r)
	})
}

// short tells whether an edge at x is so near a free end that no clean span of it
// is counted.
func (w *Wall) short(right bool, x length.Length) bool {
	depth := w.rule.Along + w.room.Joint
	if right {
		return w.stops(right).From-x < depth
	}
	return x-w.stops(right).To < depth
}

// sideOf is what the rows run into on the left and on the right: the ends of the
// wall, or with columns its base and its head.
func (w *Wall) sideOf(right bool) plane.Side {
	switch {
	case w.plumb && right:
		return survey.SideHead
	case w.plumb:
		return survey.SideBase
	case right:
		return survey.SideRight
	}
	return survey.SideLeft
}

// stops is where a free end of the rows may stand.
func (w *Wall) stops(right bool) survey.Span {
	switch {
	case w.plumb:
		return w.Found.Head.Stops
	case right:
		return w.Found.Right.Stops
	}
	return w.Found.Left.Stops
}
