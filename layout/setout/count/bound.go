package count

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"
)

// Bounds says what no set-out of a wall can beat.
type Bounds struct {
	w        *facts
	marks    *Marks
	places   *Places
	boundary *boundary
	zones    *zones
	rows     *rowPatterns
	cutter   *cutter
	beds     table[length.Length, merit.Merit] // by where rows stand in a pitch
	heads    table[headPlace, merit.Merit]
	best     table[length.Length, merit.Merit] // of the heads, by where rows stand in a pitch
	lined    table[length.Length, *lined]      // by where rows stand
	meter    *meter
}

func newBounds(c *cutter, p *Places, z *zones) *Bounds {
	m := c.meter
	return &Bounds{w: c.w, marks: c.marks, places: p, boundary: p.boundary, zones: z, rows: &rowPatterns{c.w, p.boundary, z}, cutter: c, meter: m,
		beds: newTable[length.Length, merit.Merit](mostBeds, m), heads: newTable[headPlace, merit.Merit](mostHeads, m),
		best: newTable[length.Length, merit.Merit](mostHeads, m), lined: newTable[length.Length, *lined](mostLined, m)}
}

// OfBoth is what no set-out with the start on the course line can beat, wherever
// the free marks go.
func (b *Bounds) OfBoth(line, edge length.Length) merit.Merit {
	b.meter.add(6)
	m := b.edges(line, edge)
	b.addLevelMarks(&m, edge)
	b.addUprightMarks(&m, line)
	return m
}

// Standing is what is sure of the pieces that the edges cut which stand.
func (b *Bounds) Standing(line, edge length.Length) merit.Merit {
	along, across := b.w.frame.phases(line, edge)
	ends, _ := b.standingEnds(along, b.rows.at(across))
	beds := b.bedsAt(across)
	return ends.Plus(&beds)
}

// AtEnd is what is sure of an end of the wall that is placed at x: the pieces beside
// it where it is free, and whether it is exposed.
func (b *Bounds) AtEnd(right bool, x, line, edge length.Length) merit.Merit {
	var m merit.Merit
	if !b.w.frame.plumb && b.zones.zoned(right) {
		b.meter.add(8)
		m = b.atPlace(right, x, line, edge)
	}
	m.Exposed = b.marks.ExposedAt(edge, x, right)
	return m
}

// AtHead is what is sure of the pieces beside a free head that is placed at y.
func (b *Bounds) AtHead(y, line, edge length.Length) merit.Merit {
	switch {
	case !b.w.moves(survey.SideHead):
		return merit.Merit{Part: true}
	case !b.w.frame.plumb:
		return b.headAt(y, line)
	}
	return b.atPlace(true, y, line, edge)
}

func (b *Bounds) atPlace(right bool, x, line, edge length.Length) merit.Merit {
	along, across := b.w.frame.phases(line, edge)
	_, bands := b.standingEnds(along, b.rows.at(across))
	return b.zones.at(right, x, along, bands, nil)
}

// edges is what is sure of the pieces that the edges of the wall cut, without
// those of free openings.
func (b *Bounds) edges(line, edge length.Length) merit.Merit {
	along, across := b.w.frame.phases(line, edge)
	ends, beds := b.endsAt(along, b.rows.at(across)), b.alongRows(across)
	return ends.Plus(&beds)
}

// endsAt is what no set-out can beat whose rows begin at along, as far as it is
// decided by the edges that cross rows: the ends of the wall with level courses.
// Rows says how many rows of each class the edges cross.
func (b *Bounds) endsAt(along length.Length, rows pattern) merit.Merit {
	m, bands := b.standingEnds(along, rows)
	for _, right := range [...]bool{false, true} {
		if b.zones.zoned(right) {
			end := b.movable(right, along, bands, nil)
			m = m.Plus(&end)
		}
	}
	return m
}

// standingEnds is what the edges give that stand and cross rows, with the rest of
// the pattern: the rows of each band.
func (b *Bounds) standingEnds(along length.Length, rows pattern) (merit.Merit, pattern) {
	s := b.zones.sure()
	bands := rows
	for i := range b.boundary.ends {
		bands = s.end(&b.boundary.ends[i], along, bands)
	}
	s.standing(b.zones.narrow, along, bands[len(bands)-2-len(b.zones.narrow.parts)*len(b.w.shifts):])
	if wedges := rows[len(rows)-2:]; wedges[0]+wedges[1] > 0 {
		s.known = [2]int{}
	}
	return s.merit(), bands
}

// bedsAt is what no set-out can beat whose rows stand at across, as far as it is
// decided by the edges that lie along rows. It is worked out once for all lines whose rows stand
// alike, whatever their classes.
func (b *Bounds) bedsAt(across length.Length) merit.Merit {
	across = phase(b.w, across)
	return b.beds.of(across, func() merit.Merit { return b.underRows(across) })
}

func (b *Bounds) underRows(across length.Length) merit.Merit {
	s := b.zones.sure()
	obstacles := b.boundary.onLine(b.places, across)
	for i := range b.boundary.beds {
		s.bed(&b.boundary.beds[i], across, obstacles)
	}
	if b.w.frame.plumb && b.boundary.raked() {
		s.known = [2]int{} // where a rake leaves a wedge of a tile depends on the line
	}
	return s.merit()
}

// mostBeds bounds how many of them are kept.
const mostBeds = 4096

// movable is what no place of a free end, or with columns of a free head, can beat for rows that begin at along:
// the best of what each place gives in the plain rows beside it.
// Slow rows are those that are plain only in slices.
func (b *Bounds) movable(right bool, along length.Length, bands pattern, slow []*uneven) merit.Merit {
	var best merit.Merit
	for i, at := range b.movablePlaces(right, along) {
		if i > 0 && !b.w.order.Better(&merit.Merit{Exposed: at.exposed, Part: true}, &best) {
			break // the pieces beside it only make it worse, and no more ends of those that follow lie on joint lines
		}
		m := b.zones.at(right, at.place, along, bands, slow)
		m.Exposed = at.exposed
		if i == 0 || b.w.order.Better(&m, &best) {
			best = m
		}
	}
	return best
}

// movablePlace is a place of a free end of the rows, and whether that is exposed there.
type movablePlace struct {
	place   length.Length
	exposed int
}

// movablePlaces lists them, those on joint lines first.
func (b *Bounds) movablePlaces(right bool, along length.Length) []movablePlace {
	if b.w.frame.plumb {
		return mapped(b.places.Heads(along), func(y length.Length) movablePlace { return movablePlace{y, 0} })
	}
	out := mapped(b.places.Ends(along, right), func(x length.Length) movablePlace {
		return movablePlace{x, b.marks.ExposedAt(along, x, right)}
	})
	slices.SortStableFunc(out, func(a, b movablePlace) int { return cmp.Compare(a.exposed, b.exposed) })
	return out
}

func mapped[T, U any](in []T, to func(T) U) []U {
	out := make([]U, len(in))
	for i := range in {
		out[i] = to(in[i])
	}
	return out
}

// addLevelMarks adds what the marks along the wall give at best, and its top.
func (b *Bounds) addLevelMarks(m *merit.Merit, edge length.Length) {
	if b.w.top != nil {
		on := b.w.top.least(edge)
		*m = m.Plus(&on)
	}
	x := b.w.level(edge)
	if !b.w.movesEnd() {
		m.Exposed += b.marks.exposed(x, b.w.outer)
	} else if b.w.frame.plumb {
		m.Exposed += b.marks.leastExposed(x)
	}
	m.Built += b.marks.cutBeside(x)
	if b.w.fixedEnds() {
		m.Find = b.marks.find(x, b.w.box())
	}
	for i, o := range b.w.typed.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		if o.Left.Free() || o.Width.Free() {
			if best := b.places.bestLevel(i, edge); best != nil {
				*m = m.Plus(best)
			}
			continue
		}
		m.Built += b.marks.builtAcross(i, x)
	}
}

func (b *Bounds) addUprightMarks(m *merit.Merit, line length.Length) {
	y := b.w.upright(line)
	for i, o := range b.w.typed.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		if o.Bottom.Free() || o.Height.Free() {
			if best := b.places.bestUpright(i, line); best != nil {
				*m = m.Plus(best)
			}
			continue
		}
		m.Built += b.marks.builtUp(i, y)
	}
}

// Along is what no set-out on a course line can beat, as far as it is decided wherever the wall starts.
func (b *Bounds) Along(line length.Length) merit.Merit {
	m := merit.Merit{Part: true}
	if !b.w.frame.plumb {
		m = b.alongRows(line)
	}
	b.addUprightMarks(&m, line)
	return m
}

// alongRows is what no set-out can beat whose rows stand at across, as far as it is decided
// by what lies along them: the edges that stand, and a free head at its best.
func (b *Bounds) alongRows(across length.Length) merit.Merit {
	across = phase(b.w, across)
	beds, head := b.bedsAt(across), b.bestHead(across)
	return beds.Plus(&head)
}
