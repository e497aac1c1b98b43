package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// sure adds up what arithmetic is sure of.
type sure struct {
	w     *Wall
	m     merit.Merit
	runs  []Run
	drift [2]length.Length // of the left and the right end, where all is known but how they lean
	known [2]int           // classes whose least width at that end is known to within drift
}

// endsAt is what no set-out can beat whose rows begin at along, as far as it is
// decided by the edges that cross rows: the ends of the wall with level courses.
// Rows says how many rows of each class the edges cross.
func (w *Wall) endsAt(along length.Length, rows pattern) merit.Merit {
	m, bands := w.standingEnds(along, rows)
	for _, right := range [...]bool{false, true} {
		if w.zoned(right) {
			end := w.movable(right, along, bands)
			m = m.Plus(&end)
		}
	}
	return m
}

// standingEnds is what the edges give that stand and cross rows, with the rest of
// the pattern: the rows of each band.
func (w *Wall) standingEnds(along length.Length, rows pattern) (merit.Merit, pattern) {
	s := sure{w: w}
	bands := rows
	for i := range w.ends {
		bands = s.end(&w.ends[i], along, bands)
	}
	if wedges := rows[len(rows)-2:]; wedges[0]+wedges[1] > 0 {
		s.known = [2]int{}
	}
	return s.merit(), bands
}

// zoned tells whether what the rows run into on a side is free, so that what is
// beside it is sure for each of its places.
func (w *Wall) zoned(right bool) bool {
	side := w.sideOf(right)
	return side != survey.SideBase && w.moves(side)
}

// bedsAt is what no set-out can beat whose rows stand at across, as far as it is
// decided by the edges that lie along rows.
func (w *Wall) bedsAt(across length.Length) merit.Merit {
	s := sure{w: w}
	for i := range w.beds {
		s.bed(&w.beds[i], across)
	}
	if w.plumb && w.raked() {
		s.known = [2]int{} // where a rake leaves a wedge of a tile depends on the line
	}
	return s.merit()
}

// raked tells whether an edge that crosses the rows slants.
func (w *Wall) raked() bool {
	return slices.ContainsFunc(w.ends, func(f feature) bool { return f.drift() > 0 })
}

func (s *sure) merit() merit.Merit {
	s.merge()
	s.w.addRuns(&s.m, s.runs)
	n := s.w.classes()
	if s.w.likeEnds() && s.known[0] == n && s.known[1] == n {
		// Every size may be less than is known by its end's drift.
		apart := differences(s.w.cuts(s.runs, survey.SideLeft), s.w.cuts(s.runs, survey.SideRight))
		s.m.Mirror = s.w.mark(max(0, apart-length.Length(n)*(s.drift[0]+s.drift[1])))
	}
	return s.m
}

// merge keeps of alike runs the least.
func (s *sure) merge() {
	out := s.runs[:0]
	for _, r := range s.runs {
		i := slices.IndexFunc(out, func(o Run) bool { return o.Class == r.Class && slices.Equal(o.Edges, r.Edges) })
		if i < 0 {
			out = append(out, r)
			continue
		}
		out[i].Least = min(out[i].Least, r.Least)
	}
	s.runs = out
}

// cut is what becomes of the tile that an edge falls in.
type cut uint8

const (
	unsure cut = iota // the edge passes from one tile into another
	uncut             // it coincides with the tile's own edge, or stands in a joint
	kept              // a piece is left
	sealed            // only a strip for sealant is left
)

// slot is one place of a tile that an edge may cut: at v0 at one end of the
// slot and at v1 at the other.
func (f *feature) slot(first, tile, pitch, joint, v0, v1 length.Length) (is cut, least length.Length, bare bool) {
	a, b := length.Mod(v0-first, pitch), length.Mod(v1-first, pitch)
	if length.DivFloor(v0-first, pitch) != length.DivFloor(v1-first, pitch) {
		return unsure, 0, false
	}
	low, high := min(a, b), max(a, b)
	switch {
	case low >= tile: // in a joint
		return uncut, 0, f.meets && pitch-high > f.reach
	case high >= tile:
		return unsure, 0, false
	case high == 0:
		return uncut, 0, false
	case f.meets && f.reach > 0 && tile-low <= f.reach:
		return sealed, 0, tile-high+joint > f.reach
	}
	least = max(0, tile-high-f.hidden)
	if v0 != v1 {
		least += 2 // a leaning edge is rounded where it is cut
	}
	return kept, least, false
}

// first is where tiles begin, seen from the edge.
func (f *feature) first(at, tile length.Length) length.Length {
	if f.facing == piece.OnRight || f.facing == piece.Over {
		return -at - tile
	}
	return at
}

// end adds what the edge makes of the rows that it crosses, and gives the rest of
// the pattern.
func (s *sure) end(f *feature, along length.Length, rows pattern) pattern {
	w := s.w
	tile, classes := w.rule.Along, len(w.shifts)
	certain := 0
	for class, shift := range w.shifts {
		first := f.first(along+shift, tile)
		least, whole := absent, false
		for i, p := range f.spans {
			n := int(rows[i*classes+class])
			s.slots(f, p, n, w.period(), first, tile, &least)
			whole = whole || n > 0 && least == absent
		}
		if (least != absent || whole && f.drift() == 0) && s.alike(f, first, tile) {
			certain++
		}
		if classes == 1 {
			s.crest(f, first, tile, &least)
		}
		if least != absent {
			s.runs = append(s.runs, Run{Edges: []piece.Edge{f.edge}, Class: class, Least: least, Low: f.edge.Low(w.rule.Sides)})
		}
	}
	s.know(f, certain, classes)
	return rows[len(f.spans)*classes:]
}

// know notes that the widths at an end of the wall are known in every class.
func (s *sure) know(f *feature, certain, classes int) {
	if certain < classes {
		return
	}
	switch f.edge.Side() {
	case survey.SideLeft:
		s.known[0], s.drift[0] = certain, f.drift()
	case survey.SideRight:
		s.known[1], s.drift[1] = certain, f.drift()
	}
}

// alike tells whether what the edge leaves of every tile differs by no more than the
// edge drifts: all of it falls in one tile, or in one joint, and sealant takes none.
func (s *sure) alike(f *feature, first, tile length.Length) bool {
	joint := s.w.room.Joint
	is, _, _ := f.slot(first, tile, tile+joint, joint, f.low, f.high)
	sealed := f.meets && f.reach > 0 && tile-length.Mod(f.high-first, tile+joint) <= f.reach
	return is == uncut || is == kept && !sealed
}

// slots adds n slots of one class that lie in a span and repeat every period, and
// lowers least to what is sure of the least one.
func (s *sure) slots(f *feature, p span, n int, period, first, tile length.Length, least *length.Length) {
	if n == 0 {
		return
	}
	joint := s.w.room.Joint
	pitch := tile + joint
	is, worst, bare := f.slot(first, tile, pitch, joint, p.v0, p.v1)
	s.w.Work++
	if bare {
		for range n {
			s.bare(f, s.extent(f))
		}
	}
	lean := (p.v1 - p.v0).Abs()
	switch {
	case is != kept:
		return
	case lean > 0 && f.meets && f.reach > 0 && tile-max(length.Mod(p.v0-first, pitch), length.Mod(p.v1-first, pitch)) <= f.reach:
		return // where least is left, sealant may take the strip
	}
	generous := worst
	if lean > 0 {
		// The slot nearest the end where least is left lies within a period of it.
		over := min(period, p.to-p.from)
		generous += length.Length((int64(lean)*int64(over)+int64(p.to-p.from)-1)/int64(p.to-p.from)) + 1
	}
	s.add(f, worst+lean, n)
	if *least == absent || generous < *least {
		*least = generous
	}
}

// extent is how long a slot is along the edge.
func (s *sure) extent(f *feature) length.Length {
	if f.facing <= piece.OnRight {
		return s.w.rule.Across
	}
	return s.w.rule.Along
}

// bed adds what the edge makes of the tiles beside it.
func (s *sure) bed(f *feature, across length.Length) {
	w := s.w
	tile := w.rule.Across
	first := f.first(across, tile)
	least, whole := absent, false
	for _, p := range f.spans {
		pitch := w.rule.Along + w.room.Joint
		n := guaranteed(p.to-p.from, w.rule.Along, pitch)
		s.slots(f, p, n, pitch, first, tile, &least)
		whole = whole || n > 0 && least == absent
		s.joint(f, p, first, tile)
	}
	certain := 0
	if (least != absent || whole && f.drift() == 0) && s.alike(f, first, tile) {
		certain = 1
	}
	s.crest(f, first, tile, &least)
	if least != absent {
		s.runs = append(s.runs, Run{Edges: []piece.Edge{f.edge}, Least: least, Low: f.edge.Low(w.rule.Sides)})
	}
	s.know(f, certain, 1)
}

// joint adds the stretch of a slanting edge that stands in the joint between two
// rows, farther from the next tile than sealant reaches, less what the tile on
// either side of the stretch covers.
func (s *sure) joint(f *feature, p span, first, tile length.Length) {
	joint := s.w.room.Joint
	low, high := min(p.v0, p.v1), max(p.v0, p.v1)
	is, _, _ := f.slot(first, tile, tile+joint, joint, p.v0, p.v1)
	if is != unsure || !f.meets || low == high || joint <= f.reach {
		return
	}
	// In the joint and too far from the next tile: from the tile's end to the reach
	// of sealant before the next.
	for from := low - length.Mod(low-first, tile+joint) + tile; from < high; from += tile + joint {
		v0, v1 := max(low, from), min(high, from+joint-max(0, f.reach)-1)
		if v0 >= v1 {
			continue
		}
		along := length.Length(int64(v1-v0) * int64(p.to-p.from) / int64(high-low))
		sight := &s.m.Sight
		if f.edge.Low(s.w.rule.Sides) {
			sight = &s.m.OutOfSight
		}
		sight.Bare += max(0, along-2*max(joint, f.reach)-2)
	}
}

// add counts n pieces of one size.
func (s *sure) add(f *feature, size length.Length, n int) {
	s.grade(f.edge.Low(s.w.rule.Sides), f.facing, size, n)
}

func (s *sure) grade(low bool, facing piece.Facing, size length.Length, n int) {
	sight := &s.m.Sight
	if low {
		sight = &s.m.OutOfSight
	}
	limits := s.w.rule.Limits[0]
	if facing >= piece.Under {
		limits = s.w.rule.Limits[1]
	}
	switch {
	case size < limits.Unworkable:
		sight.Unworkable += n
	case size < limits.Sliver:
		sight.Slivers += n
	}
	s.m.Work += n
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

// bare counts one slot of boundary that no tile of it comes near: less what the
// tiles beside it cover.
func (s *sure) bare(f *feature, size length.Length) {
	sight := &s.m.Sight
	if f.edge.Low(s.w.rule.Sides) {
		sight = &s.m.OutOfSight
	}
	joint := s.w.room.Joint
	sight.Bare += max(0, size+2*joint-2*max(joint, f.reach))
}
