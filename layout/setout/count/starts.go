package count

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
)

// Starts lists the starts of a wall, with what they cannot beat.
type Starts struct {
	w       *facts
	bounds  *Bounds
	tried   []length.Length
	level   []merit.Merit       // by those that are tried, what the marks along the wall give
	sorted  map[string][]*Start // by pattern, with level courses
	columns []columns           // with columns
}

func newStarts(b *Bounds) *Starts {
	s := &Starts{w: b.w, bounds: b, sorted: map[string][]*Start{}}
	if p := b.w.found.Pin; p != nil {
		s.tried = []length.Length{p.Edge(b.w.room.Tile.Width, b.w.room.Joint)}
		return s
	}
	s.tried = s.All()
	return s
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
	Starts []*Start
	Offset merit.Merit
}

// Groups are all starts of the wall on a course line.
func (s *Starts) Groups(line length.Length) []Group {
	if s.w.frame.plumb {
		return s.columnGroups(line)
	}
	rows := s.bounds.rows.coarse(line)
	key := string(rows.bytes())
	starts, there := s.sorted[key]
	if !there {
		its, level := make([]Start, len(s.tried)), s.levelMarks()
		starts = make([]*Start, len(its))
		s.bounds.meter.add(8 * len(s.tried))
		for i, edge := range s.tried {
			m := s.bounds.endsAt(edge, rows)
			its[i] = Start{edge, m.Plus(&level[i])}
			starts[i] = &its[i]
		}
		s.sort(starts)
		s.sorted[key] = starts
	}
	offset := s.bounds.alongRows(line)
	s.bounds.addUprightMarks(&offset, line)
	return []Group{{starts, offset}}
}

// levelMarks is what the marks along the wall give at best, for each start that is tried.
func (s *Starts) levelMarks() []merit.Merit {
	if s.level == nil {
		s.level = make([]merit.Merit, len(s.tried))
		for i, edge := range s.tried {
			s.bounds.addLevelMarks(&s.level[i], edge)
		}
	}
	return s.level
}

// columnGroups groups the starts of columns by the pattern of the columns.
func (s *Starts) columnGroups(line length.Length) []Group {
	if s.columns == nil {
		known := map[string]int{}
		for _, edge := range s.Tried() {
			rows := s.bounds.rows.coarse(edge)
			n, there := known[string(rows.bytes())]
			if !there {
				n = len(s.columns)
				known[string(rows.bytes())] = n
				s.columns = append(s.columns, columns{rows: rows})
			}
			m := s.bounds.bedsAt(edge)
			s.bounds.addLevelMarks(&m, edge)
			s.columns[n].starts = append(s.columns[n].starts, &Start{edge, m})
		}
		for _, c := range s.columns {
			s.sort(c.starts)
		}
	}
	out := make([]Group, len(s.columns))
	for i, c := range s.columns {
		m := s.bounds.endsAt(line, c.rows)
		s.bounds.addUprightMarks(&m, line)
		out[i] = Group{c.starts, m}
	}
	return out
}

// columns are the starts of which the columns stand in one pattern.
type columns struct {
	rows   pattern
	starts []*Start
}

func (s *Starts) sort(starts []*Start) {
	slices.SortStableFunc(starts, func(a, b *Start) int {
		order, _ := s.w.order.Compare(&a.Merit, &b.Merit)
		return order
	})
}

// Tried lists the starts that are tried, as left edges of a tile of course 0,
// ascending over one period round the middle: a tile edge of any course at every mark
// of the tape, and the classic starts wherever they lie; the pinned one where there is one.
func (s *Starts) Tried() []length.Length { return s.tried }

// Has tells whether a start is among those that are tried.
func (s *Starts) Has(edge length.Length) bool {
	from, period := s.period()
	_, has := slices.BinarySearch(s.tried, from+length.Mod(edge-from, period))
	return has
}

// period is where the starts that are tried begin, and after how much they repeat.
func (s *Starts) period() (from, period length.Length) {
	period = s.w.room.Tile.Width + s.w.room.Joint
	if s.w.frame.plumb {
		period *= length.Length(len(s.w.shifts))
	}
	return s.w.found.Width.Half() - period.Half(), period
}

// All lists the starts that a wall without a pin would try.
func (s *Starts) All() []length.Length {
	tile, joint, tape := s.w.room.Tile.Width, s.w.room.Joint, s.w.room.Tape
	from, period := s.period()
	var out []length.Length
	shifts := s.w.shifts // a mark under a tile of any course of the bond
	if s.w.frame.plumb {
		shifts = shifts[:1]
	}
	for x := from.CeilTo(tape); x < from+period; x += tape {
		for _, shift := range shifts {
			out = append(out, from+length.Mod(x-shift-from, period))
		}
	}
	for _, c := range s.everyClassic() {
		for x := from + length.Mod(c.Edge-from, tile+joint); x < from+period; x += tile + joint {
			out = append(out, x)
		}
		if !s.w.frame.plumb {
			// The same start seen from another course of the bond.
			for _, shift := range s.w.shifts[1:] {
				out = append(out, from+length.Mod(c.Edge-shift-from, period))
			}
		}
	}
	slices.SortFunc(out, cmp.Compare)
	return slices.Compact(out)
}
