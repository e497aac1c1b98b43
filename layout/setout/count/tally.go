package count

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// tally adds up the pieces of a wall.
type tally struct {
	w        *facts
	marks    *Marks
	registry *registry
	sights   [2]merit.Sight
	work     int
	least    []length.Length // by number of the run; absent where there is none
}

const absent length.Length = -1

// tally begins to add up.
func (c *cutter) tally() *tally {
	t := &tally{w: c.w, marks: c.marks, registry: c.runs, least: make([]length.Length, len(c.runs.runs), len(c.runs.runs)+8)}
	for i := range t.least {
		t.least[i] = absent
	}
	return t
}

// plain counts the plain rows and covers what their tile covers; it gives the others.
func (t *tally) plain(f *profile, rows []bond.Row, cover *piece.Cover) (slow []bond.Row) {
	return plainRows(f, rows, func(row bond.Row, in []crossing, found []stub) { t.row(row, in, found, cover) })
}

// plainRows hands over what crosses each plain row, with its stubs, only until the last
// one; it gives the rows that are not plain. Rows of a band between plumb edges whose tiles
// begin alike have the same.
func plainRows(f *profile, rows []bond.Row, each func(bond.Row, []crossing, []stub)) (slow []bond.Row) {
	known, in, found := f.space.known[:0], f.space.in[:0], f.space.found[:0]
	for _, row := range rows {
		band := f.band(row.Low, row.High)
		if band < 0 {
			slow = append(slow, row)
			continue
		}
		if i := slices.IndexFunc(known, func(k plainRow) bool { return k.band == band && k.first == row.First }); i >= 0 {
			each(row, known[i].in, known[i].found)
			continue
		}
		its := plainRow{band, row.First, in[len(in):], found[len(found):]}
		ok := false
		its.in, ok = f.row(row.Low, row.High, its.in)
		if !ok || !stubs(its.in, row, func(s stub) { its.found = append(its.found, s) }) {
			slow = append(slow, row)
			continue
		}
		each(row, its.in, its.found)
		if !f.leaning[band] {
			known = append(known, its)
			in, found = after(in, its.in), after(found, its.found)
		}
	}
	f.space.known = known
	return slow
}

// after is a list up to the end of what was put behind it, where there was room for that.
func after[T any](list, put []T) []T {
	if n := len(list) + len(put); n <= cap(list) {
		return list[:n]
	}
	return list
}

// beyond counts of rows that a free opening may touch the pieces that stand beyond its
// reach, and those that stay too small wherever it goes; it gives the rows that are
// not plain.
func (t *tally) beyond(f *profile, rows []bond.Row) (slow []bond.Row) {
	return plainRows(f, rows, func(row bond.Row, _ []crossing, found []stub) {
		for _, s := range found {
			tile := plane.Rect{Left: s.left - row.Width, Right: s.right + row.Width, Bottom: row.Low, Top: row.High}
			switch {
			case s.whole || s.sealed():
			case !t.w.freeIn(tile):
				t.stubs(&s, t.w.class(row.Course), 1)
			case t.remains(s):
				t.grade(&s, 1)
			}
		}
	})
}

// remains tells whether beside the edge that cuts a stub a piece is left, no wider,
// wherever the free openings go: none comes so near that sealant takes what is left.
func (t *tally) remains(s stub) bool {
	if (s.cuts[0] == nil) == (s.cuts[1] == nil) {
		return false
	}
	return !slices.ContainsFunc(t.w.free, func(i int) bool {
		h := t.w.hull(i)
		if c := s.cuts[0]; c != nil {
			return h.Left <= max(c.x0, c.x1)+max(0, c.reach)
		}
		c := s.cuts[1]
		return h.Right >= min(c.x0, c.x1)-max(0, c.reach)
	})
}

// row counts the stubs of a plain row, and covers what its tile covers.
func (t *tally) row(row bond.Row, in []crossing, found []stub, cover *piece.Cover) {
	class := t.w.class(row.Course)
	for _, s := range found {
		if !s.whole && !s.sealed() {
			t.stubs(&s, class, 1)
		}
	}
	n := 0
	for i := 0; i+1 < len(in); i += 2 {
		p, _ := in[i].falls(row.First, row.Width, row.Pitch)
		q, _ := in[i+1].falls(row.First, row.Width, row.Pitch)
		k := len(ends(p.tile, q.tile))
		if k == 0 {
			continue
		}
		first, last := found[n], found[n+k-1]
		n += k
		left, right := first.side(0), last.side(1)
		if first.sealed() {
			x := row.First + length.Length(p.tile+1)*row.Pitch
			left = [2]length.Length{x, x}
		}
		if last.sealed() {
			x := row.First + length.Length(q.tile-1)*row.Pitch + row.Width
			right = [2]length.Length{x, x}
		}
		covers(cover, row, left, right)
	}
}

// covers covers what stands of a row from left to right, each at the row's lower edge and
// at its upper.
func covers(cover *piece.Cover, row bond.Row, left, right [2]length.Length) {
	switch {
	case min(left[0], left[1]) >= max(right[0], right[1]):
	case left[0] == left[1] && right[0] == right[1]:
		cover.Rect(plane.Rect{Left: left[0], Right: right[0], Bottom: row.Low, Top: row.High})
	default:
		cover.Region(plane.Region{{
			{Point: plane.Point{X: left[0], Y: row.Low}}, {Point: plane.Point{X: right[0], Y: row.Low}},
			{Point: plane.Point{X: right[1], Y: row.High}}, {Point: plane.Point{X: left[1], Y: row.High}}}})
	}
}

// grade counts n stubs that are too small.
func (t *tally) grade(s *stub, n int) {
	limits, sight := t.w.rule.Limits[0], &t.sights[boolean(s.low(t.w.rule.Sides))]
	switch {
	case s.wide < limits.Unworkable:
		sight.Unworkable += n
	case s.wide < limits.Sliver:
		sight.Slivers += n
	}
}

// stubs counts a piece of each of n plain rows.
func (t *tally) stubs(s *stub, class, n int) {
	t.grade(s, n)
	t.work += n * s.effort(t.w.rule.Along, t.w.rule.Across)
	t.cutAcross(s, class)
}

// piece counts a piece that was cut.
func (t *tally) piece(p *piece.Piece) {
	if p.Whole {
		return
	}
	for low := range t.sights {
		switch p.Grade(low == 1) {
		case piece.Hopeless:
			t.sights[low].Unworkable++
		case piece.Small:
			t.sights[low].Slivers++
		}
	}
	t.work += p.Effort()
	class := t.w.class(p.Row)
	if t.w.frame.plumb {
		t.run(p.Across, 0, p.Wide)
		t.run(p.Up, class, p.High)
		return
	}
	t.run(p.Across, class, p.Wide)
	t.run(p.Up, 0, p.High)
}

// run notes the size of a piece in the run that edges cut.
func (t *tally) run(edges []piece.Edge, class int, size length.Length) {
	if len(edges) == 0 {
		return
	}
	t.lower(t.registry.number(keyOf(edges, class)), size)
}

// lower notes a size of a run.
func (t *tally) lower(n int, size length.Length) {
	for len(t.least) <= n {
		t.least = append(t.least, absent)
	}
	if t.least[n] == absent || size < t.least[n] {
		t.least[n] = size
	}
}

// bare adds the stretches of the boundary that no tile comes near.
func (t *tally) bare(gaps []piece.Gap) {
	for _, gap := range gaps {
		t.sights[boolean(gap.Low)].Bare += gap.Length
	}
}

// runs are the runs met.
func (t *tally) runs() []Run {
	met := 0
	for _, least := range t.least {
		if least != absent {
			met++
		}
	}
	out := make([]Run, 0, met)
	for n, least := range t.least {
		if least != absent {
			out = append(out, t.registry.runs[n])
			out[len(out)-1].Least = least
		}
	}
	return out
}

// merit is what pieces and runs give, with the runs.
func (t *tally) merit() (merit.Merit, []Run) {
	m, runs := merit.Merit{Sight: t.sights[0], OutOfSight: t.sights[1], Work: t.work}, t.runs()
	t.w.addRuns(&m, runs)
	return m, runs
}

// add adds what a row gives, and covers what its tile covers.
func (t *tally) add(c *rowCount, cover *piece.Cover) {
	t.count(c)
	for _, r := range c.tile {
		cover.Region(r)
	}
	for _, r := range c.whole {
		cover.Rect(r)
	}
}

// count adds what a row gives, but covers nothing.
func (t *tally) count(c *rowCount) {
	for i := range t.sights {
		t.sights[i].Unworkable += c.sights[i].Unworkable
		t.sights[i].Slivers += c.sights[i].Slivers
	}
	t.work += c.work
	for _, r := range c.runs {
		t.lower(r.run, r.least)
	}
}

// into notes what was added up as what a row gives.
func (t *tally) into(c *rowCount) {
	c.sights, c.work = t.sights, t.work
	for run, least := range t.least {
		if least != absent {
			c.runs = append(c.runs, runLeast{run, least})
		}
	}
}

// copy is a tally to go on with.
func (t *tally) copy() *tally {
	out := *t
	out.least = slices.Clone(t.least)
	return &out
}

// cutAcross notes the size of a piece in the run that the edges cut.
func (t *tally) cutAcross(s *stub, class int) {
	var both [2]piece.Edge
	t.run(s.edges(&both), class, s.wide)
}
