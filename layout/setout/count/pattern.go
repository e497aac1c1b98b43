package count

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// pattern is how many rows of each class lie in each clean span of the edges that
// cross rows, and in each band between two heights, and at last whether a rake
// leaves a wedge at an end: all that a bound needs to know of where the rows
// stand. Few patterns come as the rows slide by a pitch.
type pattern []uint16

// rowPatterns finds the pattern of rows wherever they stand.
type rowPatterns struct {
	w        *facts
	boundary *boundary
	zones    *zones
}

// coarse is the pattern of rows at across as far as it tells much: spans in which
// rows always lie count with as many as are sure, others with one where there is any.
func (r *rowPatterns) coarse(across length.Length) pattern {
	return r.of(across, func(from, to length.Length, class int) int {
		if n := guaranteed(to-from, r.w.rule.Across, r.w.period()); n > 0 {
			return n
		}
		return min(1, r.rowsIn(from, to, class, across))
	})
}

// at is the pattern of rows of which one of course 0 stands at across.
func (r *rowPatterns) at(across length.Length) pattern {
	return r.of(across, func(from, to length.Length, class int) int { return r.rowsIn(from, to, class, across) })
}

// rowsIn is how many rows of a class lie between two heights.
func (r *rowPatterns) rowsIn(from, to length.Length, class int, across length.Length) int {
	step := r.w.rule.Across + r.w.room.Joint
	y := from + length.Mod(across+step*length.Length(class)-from, r.w.period())
	if y+r.w.rule.Across > to {
		return 0
	}
	return int((to-r.w.rule.Across-y)/r.w.period()) + 1
}

func (r *rowPatterns) of(across length.Length, rows func(from, to length.Length, class int) int) pattern {
	var out pattern
	add := func(from, to length.Length) {
		for class := range r.w.shifts {
			out = append(out, uint16(rows(from, to, class)))
		}
	}
	for _, f := range r.boundary.ends {
		for _, p := range f.spans {
			add(p.from, p.to)
		}
	}
	if r.zones.zoned(false) || r.zones.zoned(true) {
		for i := range r.zones.outline.heights[1:] {
			add(r.zones.band(i))
		}
	}
	for i := range r.zones.narrow.parts {
		for class := range r.w.shifts {
			out = append(out, r.zones.narrow.comesIn(&r.zones.narrow.parts[i], class, across))
		}
	}
	return append(out, uint16(boolean(r.wedge(across, survey.SideLeft))), uint16(boolean(r.wedge(across, survey.SideRight))))
}

// wedge tells whether a raked edge may leave a wedge of a tile at an end of the
// wall: it runs from one row into the next within the tile there. Such a piece is
// of no width that the end alone would give.
func (r *rowPatterns) wedge(across length.Length, side plane.Side) bool {
	for i := range r.boundary.ends {
		end := &r.boundary.ends[i]
		if end.edge.Side() != side {
			continue
		}
		from, to := -end.high-r.w.rule.Along-r.w.room.Joint, -end.low
		if end.facing == piece.OnLeft {
			from, to = end.low, end.high+r.w.rule.Along+r.w.room.Joint
		}
		for k := range r.boundary.beds {
			if r.boundary.beds[k].turnsIn(from, to, across) {
				return true
			}
		}
	}
	return false
}

// turnsIn tells whether a slanting edge lies in a joint between rows somewhere
// between two places.
func (f *feature) turnsIn(from, to, across length.Length) bool {
	first := f.first(across)
	for _, e := range f.edges {
		if e.v0 == e.v1 || e.to <= from || e.from >= to {
			continue
		}
		a, b := e.at(max(e.from, from)), e.at(min(e.to, to))
		low, high := min(a, b)-2, max(a, b)+f.joint+2
		// A row begins between low and high: the joint before it lies there.
		if low+length.Mod(first-low, f.pitch()) <= high {
			return true
		}
	}
	return false
}

func (p pattern) bytes() []byte {
	out := make([]byte, 0, 2*len(p))
	for _, n := range p {
		out = append(out, byte(n), byte(n>>8))
	}
	return out
}
