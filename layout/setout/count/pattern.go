package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// pattern is how many rows of each class lie in each clean span of the edges that
// cross rows, and in each band between two heights, and at last whether a rake
// leaves a wedge at an end: all that a bound needs to know of where the rows
// stand. Few patterns come as the rows slide by a pitch.
type pattern []uint16

// period is after how much the classes of the rows repeat.
func (w *Wall) period() length.Length {
	return (w.rule.Across + w.room.Joint) * length.Length(len(w.shifts))
}

// guaranteed is how many slots of one size lie in a span wherever they begin, when
// they repeat every period.
func guaranteed(span, size, period length.Length) int {
	return int(max(0, span-size) / period)
}

// coarsely is the pattern of rows at across as far as it tells much: spans in which
// rows always lie count with as many as are sure, others with one where there is any.
func (w *Wall) coarsely(across length.Length) pattern {
	return w.patternOf(across, func(from, to length.Length, class int) int {
		if n := guaranteed(to-from, w.rule.Across, w.period()); n > 0 {
			return n
		}
		return min(1, w.rowsIn(from, to, class, across))
	})
}

// rowsAt is the pattern of rows of which one of course 0 stands at across.
func (w *Wall) rowsAt(across length.Length) pattern {
	return w.patternOf(across, func(from, to length.Length, class int) int { return w.rowsIn(from, to, class, across) })
}

// rowsIn is how many rows of a class lie between two heights.
func (w *Wall) rowsIn(from, to length.Length, class int, across length.Length) int {
	step := w.rule.Across + w.room.Joint
	y := from + length.Mod(across+step*length.Length(class)-from, w.period())
	if y+w.rule.Across > to {
		return 0
	}
	return int((to-w.rule.Across-y)/w.period()) + 1
}

func (w *Wall) patternOf(across length.Length, rows func(from, to length.Length, class int) int) pattern {
	var out pattern
	add := func(from, to length.Length) {
		for class := range w.shifts {
			out = append(out, uint16(rows(from, to, class)))
		}
	}
	for _, f := range w.ends {
		for _, p := range f.spans {
			add(p.from, p.to)
		}
	}
	if w.zoned(false) || w.zoned(true) {
		for i := range w.outline.heights[1:] {
			add(w.bandAt(i))
		}
	}
	return append(out, uint16(boolean(w.wedge(across, survey.SideLeft))), uint16(boolean(w.wedge(across, survey.SideRight))))
}

// wedge tells whether a raked edge may leave a wedge of a tile at an end of the
// wall: it runs from one row into the next within the tile there. Such a piece is
// of no width that the end alone would give.
func (w *Wall) wedge(across length.Length, side plane.Side) bool {
	for i := range w.ends {
		end := &w.ends[i]
		if end.edge.Side() != side {
			continue
		}
		from, to := -end.high-w.rule.Along-w.room.Joint, -end.low
		if end.facing == piece.OnLeft {
			from, to = end.low, end.high+w.rule.Along+w.room.Joint
		}
		for k := range w.beds {
			if w.beds[k].turnsIn(from, to, across, w.rule.Across+w.room.Joint, w.room.Joint) {
				return true
			}
		}
	}
	return false
}

// turnsIn tells whether a slanting edge lies in a joint between rows somewhere
// between two places.
func (f *feature) turnsIn(from, to, across, pitch, joint length.Length) bool {
	first := f.first(across, pitch-joint)
	for _, e := range f.edges {
		if e.v0 == e.v1 || e.to <= from || e.from >= to {
			continue
		}
		a, b := e.at(max(e.from, from)), e.at(min(e.to, to))
		low, high := min(a, b)-2, max(a, b)+joint+2
		// A row begins between low and high: the joint before it lies there.
		if low+length.Mod(first-low, pitch) <= high {
			return true
		}
	}
	return false
}

// bandAt is a band of the outline, as far as a free head leaves it, or with columns
// the free ends.
func (w *Wall) bandAt(i int) (low, high length.Length) {
	low, high = w.outline.heights[i], w.outline.heights[i+1]
	switch {
	case !w.plumb && w.moves(survey.SideHead):
		high = min(high, w.Found.Head.Stops.From)
	case w.plumb:
		if w.moves(survey.SideLeft) {
			low = max(low, w.Found.Left.Stops.To)
		}
		if w.moves(survey.SideRight) {
			high = min(high, w.Found.Right.Stops.From)
		}
	}
	return low, max(low, high)
}

// Start is a start of a wall with what it cannot beat on a line, less the offset
// of its group.
type Start struct {
	Edge  length.Length
	Merit merit.Merit
}

// Group is some starts, the most promising first, of which on one line each has
// the same added to what it cannot beat.
type Group struct {
	Starts []Start
	Offset merit.Merit
}

// Groups are all starts of the wall on a course line.
func (w *Wall) Groups(line length.Length) []Group {
	if w.plumb {
		return w.columnGroups(line)
	}
	rows := w.coarsely(line)
	key := string(rows.bytes())
	starts, there := w.sorted[key]
	if !there {
		for _, edge := range w.starts() {
			m := w.endsAt(edge, rows)
			w.addLevelMarks(&m, edge)
			starts = append(starts, Start{edge, m})
		}
		w.sort(starts)
		w.sorted[key] = starts
	}
	offset := w.bedsAt(line)
	w.addUprightMarks(&offset, line)
	return []Group{{starts, offset}}
}

// columnGroups groups the starts of columns by the pattern of the columns.
func (w *Wall) columnGroups(line length.Length) []Group {
	if w.columns == nil {
		known := map[string]int{}
		for _, edge := range w.starts() {
			rows := w.coarsely(edge)
			n, there := known[string(rows.bytes())]
			if !there {
				n = len(w.columns)
				known[string(rows.bytes())] = n
				w.columns = append(w.columns, columns{rows: rows})
			}
			m := w.bedsAt(edge)
			w.addLevelMarks(&m, edge)
			w.columns[n].starts = append(w.columns[n].starts, Start{edge, m})
		}
		for _, c := range w.columns {
			w.sort(c.starts)
		}
	}
	out := make([]Group, len(w.columns))
	for i, c := range w.columns {
		m := w.endsAt(line, c.rows)
		w.addUprightMarks(&m, line)
		out[i] = Group{c.starts, m}
	}
	return out
}

// columns are the starts of which the columns stand in one pattern.
type columns struct {
	rows   pattern
	starts []Start
}

func (w *Wall) sort(starts []Start) {
	slices.SortStableFunc(starts, func(a, b Start) int {
		order, _ := w.order.Compare(&a.Merit, &b.Merit)
		return order
	})
}

func (w *Wall) starts() []length.Length {
	if w.startsKnown == nil {
		w.startsKnown = w.Starts()
	}
	return w.startsKnown
}

func (p pattern) bytes() []byte {
	out := make([]byte, 0, 2*len(p))
	for _, n := range p {
		out = append(out, byte(n), byte(n>>8))
	}
	return out
}
