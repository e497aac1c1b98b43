package count

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// zones tells what stands beside a free end of the rows wherever it is placed: one of
// the wall's ends, or with columns its head.
type zones struct {
	w       *facts
	outline *profile     // without free openings, with every free end where it leaves most
	loose   []plane.Rect // where free openings may come to stand, and the holes of pipes
	known   table[stand, []rowsBeside]
	free    [2]*steep // an end on the left and on the right where it is free
	beyond  [2]*steep // what is far off across from it
	runs    []Run     // space for what is read at once
	between []crossing
	pieces  []stub
	narrow  *narrows
	meter   *meter
}

// stand is where a free end of the rows is placed, and where rows begin.
type stand struct {
	right    bool
	x, along length.Length
}

// rowsBeside is what one row of a class in a band of the outline gives beside a free end.
type rowsBeside struct {
	pattern             int              // the place of such rows in a pattern
	bare                [2]length.Length // in sight, and out of it
	unworkable, slivers [2]int
	work                int
	runs                []Run
}

func zonesOf(w *facts, m *meter) *zones {
	z := &zones{w: w, loose: slices.Clone(w.holes), known: newTable[stand, []rowsBeside](mostPlaced, m), meter: m}
	z.outline = z.outlined()
	for _, i := range w.free {
		z.loose = append(z.loose, w.hull(i))
	}
	for end, facing := range [...]piece.Facing{piece.OnLeft, piece.OnRight} {
		z.free[end] = &steep{edge: w.frame.edge(piece.EdgeOf(z.side(end == 1), facing)), onLeft: end == 0}
		z.beyond[end] = &steep{onLeft: end == 1}
	}
	return z
}

// outlined is the profile of the wall without free openings, in bands that end at a pipe near a free end: what a
// pipe comes to is not sure, what stands under and over it is.
func (z *zones) outlined() *profile {
	var pipes []length.Length
	wall := z.w.frame.rect(z.w.box())
	for _, right := range [...]bool{false, true} {
		for _, hole := range z.w.holes {
			if z.zoned(right) && hole.Overlaps(z.reach(right, hole.Bottom, hole.Top)) {
				pipes = append(pipes, min(max(wall.Bottom, hole.Bottom), wall.Top), max(min(wall.Top, hole.Top), wall.Bottom))
			}
		}
	}
	return profileOf(z.w, z.w.field, pipes...)
}

// zoned tells whether what the rows run into on a side is free, so that what is
// beside it is sure for each of its places.
func (z *zones) zoned(right bool) bool {
	side := z.side(right)
	return side != survey.SideBase && z.w.moves(side)
}

// side is what the rows run into on the left and on the right: the ends of the
// wall, or with columns its base and its head.
func (z *zones) side(right bool) plane.Side {
	switch {
	case z.w.frame.plumb && right:
		return survey.SideHead
	case z.w.frame.plumb:
		return survey.SideBase
	case right:
		return survey.SideRight
	}
	return survey.SideLeft
}

// stops is where a free end of the rows may stand.
func (z *zones) stops(right bool) survey.Span {
	switch {
	case z.w.frame.plumb:
		return z.w.found.Head.Stops
	case right:
		return z.w.found.Right.Stops
	}
	return z.w.found.Left.Stops
}

// band is a band of the outline, as far as a free head leaves it, or with columns
// the free ends.
func (z *zones) band(i int) (low, high length.Length) {
	low, high = z.outline.heights[i], z.outline.heights[i+1]
	switch {
	case !z.w.frame.plumb && z.w.moves(survey.SideHead):
		high = min(high, z.w.found.Head.Stops.From)
	case z.w.frame.plumb:
		if z.w.moves(survey.SideLeft) {
			low = max(low, z.w.found.Left.Stops.To)
		}
		if z.w.moves(survey.SideRight) {
			high = min(high, z.w.found.Right.Stops.From)
		}
	}
	return low, max(low, high)
}

// mostPlaced bounds for how many places of free ends is kept what is beside them.
const mostPlaced = 20_000

// beside is what rows that begin at some place give beside a free end, each kind of
// row that may be there. It is worked out once.
func (z *zones) beside(at stand) []rowsBeside {
	return z.known.of(at, func() []rowsBeside { return z.rowsBeside(at) })
}

// rowsBeside works that out band by band; those between the same edges have the same.
func (z *zones) rowsBeside(at stand) []rowsBeside {
	z.meter.add(9 + len(z.outline.heights))
	classes := len(z.w.shifts)
	out := make([]rowsBeside, 0, classes*len(z.outline.heights))
	var pairs [][2]crossing
	for i := 0; i+1 < len(z.outline.heights); i++ {
		low, high := z.band(i)
		var pair [2]crossing
		if z.outline.blocked[i] || high-low < z.w.rule.Across || z.crowded(at.right, low, high) || !z.interval(at.right, at.x, low, high, &pair) {
			continue
		}
		pairs = append(pairs, pair)
		if k := slices.Index(pairs, pair); k < len(pairs)-1 {
			for class := range classes {
				row := out[k*classes+class]
				row.pattern = i*classes + class
				out = append(out, row)
			}
			continue
		}
		for class, shift := range z.w.shifts {
			s := sure{w: z.w, meter: z.meter}
			z.row(&s, at.right, pair[:], bond.Row{Course: class, First: at.along + shift, Width: z.w.rule.Along, Pitch: z.w.rule.Along + z.w.room.Joint})
			out = append(out, s.rows(i*classes+class))
		}
	}
	return out
}

// crowded tells whether a pipe or the range of a free opening is so near the free
// end that the pieces beside it are not sure.
func (z *zones) crowded(right bool, low, high length.Length) bool {
	return slices.ContainsFunc(z.loose, z.reach(right, low, high).Overlaps)
}

// reach is as far as what is beside a free end may come between two heights.
func (z *zones) reach(right bool, low, high length.Length) plane.Rect {
	stops, far := z.stops(right), 2*(z.w.rule.Along+z.w.room.Joint)
	return plane.Rect{Left: stops.From - far, Right: stops.To + far, Bottom: low, Top: high}
}

// interval finds where tile runs from a free end that is placed at x to what next
// crosses the rows between two heights; it is false where there is no tile, or
// the other end leans and is near.
func (z *zones) interval(right bool, x, low, high length.Length, pair *[2]crossing) bool {
	free := at(x, z.free[boolean(right)])
	var before, next *steep // the last edge beyond the free end, and the first on its tile's side
	for i := range z.outline.steep {
		s := &z.outline.steep[i]
		if s.from.Y > low || s.to.Y < high || z.w.moves(s.edge.Side()) {
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
		if z.short(right, next.from.X) || z.short(right, next.to.X) {
			return false
		}
		next = nil // so far off that it is the same to the pieces beside the end
	}
	far := at(x+20*z.w.rule.Along, z.beyond[boolean(right)])
	if right {
		far = at(x-20*z.w.rule.Along, far.steep)
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

// row adds the pieces of a row at a free end, and those at the other end of the
// interval where they stand so near that no feature counts them.
func (z *zones) row(s *sure, right bool, pair []crossing, row bond.Row) {
	end := boolean(right)
	other := pair[1-end].edge != 0 && z.short(right, pair[1-end].x0)
	var found []stub
	if !stubs(pair, row, func(b stub) { found = append(found, b) }) {
		return
	}
	if other {
		z.front(s, &pair[1-end], found, row)
	}
	for _, b := range found {
		mine := b.cuts[end] != nil
		if b.whole || b.sealed() || !mine && !(other && b.cuts[1-end] != nil) {
			continue
		}
		if mine && b.cuts[1-end] != nil && !other || z.comesInto(!right, &b, row) {
			continue
		}
		r := b.run(z.w, row)
		s.grade(r.Low, piece.OnLeft, b.wide, 1)
		s.m.Work += b.effort(z.w.rule.Along, z.w.rule.Across)
		s.runs = append(s.runs, r)
	}
}

// front adds what a row leaves bare of the edge that it runs into across from a free
// end, as beside a tub's front: where its last tile stands farther from it than
// sealant reaches.
func (z *zones) front(s *sure, e *crossing, found []stub, row bond.Row) {
	if !e.meets || len(found) > 0 && !e.apart(row, true) {
		return
	}
	sight := &s.m.Sight
	if e.edge.Low(z.w.rule.Sides) {
		sight = &s.m.OutOfSight
	}
	sight.Bare += max(0, z.w.rule.Across-2*max(0, e.fills()-z.w.room.Joint))
}

// settled tells whether no free end of the rows can come into a stub's tile, nor is the
// stub counted with one.
func (z *zones) settled(s *stub, row bond.Row) bool {
	return !z.mayCome(s, row) && !slices.ContainsFunc(s.cuts[:], func(c *crossing) bool { return c != nil && z.counted(c) })
}

// mayCome tells whether a free end of the rows may come into a stub's tile.
func (z *zones) mayCome(s *stub, row bond.Row) bool {
	return z.comesInto(false, s, row) || z.comesInto(true, s, row)
}

// comesInto tells so of the end on one side.
func (z *zones) comesInto(right bool, s *stub, row bond.Row) bool {
	left, stops := row.First+length.Length(s.tile)*row.Pitch, z.stops(right)
	return z.zoned(right) && left <= stops.To && left+row.Width >= stops.From
}

// counted tells whether what an edge cuts is counted with a free end of the rows: it is
// one, or stands so near that no feature counts it.
func (z *zones) counted(e *crossing) bool {
	for _, right := range [...]bool{false, true} {
		if z.zoned(right) && (z.w.moves(e.edge.Side()) || z.short(right, e.x0)) {
			return true
		}
	}
	return false
}

// short tells whether an edge at x is so near a free end that no clean span of it
// is counted.
func (z *zones) short(right bool, x length.Length) bool {
	depth := z.w.rule.Along + z.w.room.Joint
	if right {
		return z.stops(right).From-x < depth
	}
	return x-z.stops(right).To < depth
}
