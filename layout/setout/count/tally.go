package count

import (
	"cmp"
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Counted is what a set-out of one wall gives.
type Counted struct {
	Setting
	Merit merit.Merit // all but the terms that two walls share
	Runs  []Run

	SmallLeft, SmallRight bool            // a run at that end is under a third
	LeftCuts, RightCuts   []length.Length // least widths at the ends by class, ascending

	widths *[2]map[int]length.Length
}

// Run is all pieces of the wall that the same boundary edges cut in the same
// direction, in one class of the bond.
type Run struct {
	Edges []piece.Edge
	Class int
	Least length.Length
	Low   bool
}

// Across tells whether the run is measured by the width of its pieces.
func (r Run) Across() bool { return r.Edges[0].Across() }

// runKey names a run. More than four boundary edges that cut one piece in one
// direction are told apart by the first four.
type runKey struct {
	edges [4]piece.Edge
	class int
}

// none stands for no edge in a key.
const none piece.Edge = -1

func keyOf(edges []piece.Edge, class int) runKey {
	k := runKey{[4]piece.Edge{none, none, none, none}, class}
	copy(k.edges[:], edges)
	return k
}

// tally adds up the pieces of a wall.
type tally struct {
	w      *Wall
	sights [2]merit.Sight
	work   int
	least  []length.Length // by number of the run; absent where there is none
}

const absent length.Length = -1

// Count reads the merit of a set-out from the pieces of the wall. Rows in which
// nothing is but their ends are read off by arithmetic, which makes the same
// pieces; the others are cut, each once for all set-outs that cut it alike.
func (w *Wall) Count(s Setting) Counted {
	g := w.ground(s.Placed)
	f := g.profile
	if len(w.free) > 0 {
		f = f.with(s.Placed)
	}
	t := w.newTally()
	g.cover.Clear()
	slow := t.plain(f, w.rowsOver(s, g.box), g.cover)
	shape := lazy{w: w, ground: g, placed: s.Placed}
	for _, row := range slow {
		t.add(w.cutRow(g, &shape, row), g.cover)
	}
	for _, gap := range g.cover.Gaps() {
		low := 0
		if gap.Low {
			low = 1
		}
		t.sights[low].Bare += gap.Length
	}
	w.Work += 20 + len(slow)
	return t.counted(s, g.shape.Region.Bounds())
}

func (w *Wall) newTally() *tally {
	t := &tally{w: w, least: make([]length.Length, len(w.keys), len(w.keys)+8)}
	for i := range t.least {
		t.least[i] = absent
	}
	return t
}

// plain counts the plain rows and covers what their tile covers; it gives the others.
func (t *tally) plain(f *profile, rows []bond.Row, cover *piece.Cover) (slow []bond.Row) {
	var in []crossing
	var found []stub
	for _, row := range rows {
		in, found = in[:0], found[:0]
		ok := f.band(row.Low, row.High) >= 0
		if ok {
			in, ok = f.row(row.Low, row.High, in)
		}
		if !ok || !t.w.stubs(in, row.First, func(s stub) { found = append(found, s) }) {
			slow = append(slow, row)
			continue
		}
		t.row(row, in, found, cover)
	}
	return slow
}

// apart counts of rows that a free opening may touch the cut pieces that stand
// beyond its reach.
func (t *tally) apart(f *profile, rows []bond.Row) {
	var in []crossing
	for _, row := range rows {
		in = in[:0]
		if f.band(row.Low, row.High) < 0 {
			continue
		}
		var ok bool
		if in, ok = f.row(row.Low, row.High, in); !ok {
			continue
		}
		class := t.w.class(row.Course)
		var found []stub
		if !t.w.stubs(in, row.First, func(s stub) { found = append(found, s) }) {
			continue
		}
		for _, s := range found {
			tile := plane.Rect{Left: s.left - row.Width, Right: s.right + row.Width, Bottom: row.Low, Top: row.High}
			if !s.whole && !s.sealed() && !t.w.freeIn(tile) {
				t.stub(s, class)
			}
		}
	}
}

// freeIn tells whether a free opening may come to stand in a part of the wall, in the
// frame of the rows.
func (w *Wall) freeIn(r plane.Rect) bool {
	return slices.ContainsFunc(w.free, func(i int) bool { return w.hull(i).Overlaps(r) })
}

// row counts the stubs of a plain row, and covers what its tile covers.
func (t *tally) row(row bond.Row, in []crossing, found []stub, cover *piece.Cover) {
	class := t.w.class(row.Course)
	for _, s := range found {
		if !s.whole && !s.sealed() {
			t.stub(s, class)
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
		if first.sealed() {
			first.left = row.First + length.Length(p.tile+1)*row.Pitch
		}
		if last.sealed() {
			last.right = row.First + length.Length(q.tile-1)*row.Pitch + row.Width
		}
		if first.left < last.right {
			cover.Rect(plane.Rect{Left: first.left, Right: last.right, Bottom: row.Low, Top: row.High})
		}
	}
}

func (t *tally) stub(s stub, class int) {
	limits := t.w.rule.Limits[0]
	var edges [2]piece.Edge
	n, low := 0, 0
	for _, c := range s.cuts {
		if c != nil {
			edges[n] = c.edge
			n++
			if c.edge.Low(t.w.rule.Sides) {
				low = 1
			}
		}
	}
	switch {
	case s.wide < limits.Unworkable:
		t.sights[low].Unworkable++
	case s.wide < limits.Sliver:
		t.sights[low].Slivers++
	}
	t.work += s.effort(t.w.rule.Along, t.w.rule.Across)
	if n == 2 && edges[0] > edges[1] {
		edges[0], edges[1] = edges[1], edges[0]
	}
	t.run(edges[:n], class, s.wide)
}

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
	if t.w.plumb {
		t.run(p.Across, 0, p.Wide)
		t.run(p.Up, class, p.High)
		return
	}
	t.run(p.Across, class, p.Wide)
	t.run(p.Up, 0, p.High)
}

// class of a row in the bond.
func (w *Wall) class(course int) int {
	return int(length.Mod(length.Length(course), length.Length(len(w.shifts))))
}

func (t *tally) run(edges []piece.Edge, class int, size length.Length) {
	if len(edges) == 0 {
		return
	}
	t.lower(t.w.number(keyOf(edges, class)), size)
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

func (w *Wall) number(k runKey) int {
	n, there := w.registry[k]
	if !there {
		n = len(w.keys)
		w.registry[k] = n
		w.keys = append(w.keys, k)
	}
	return n
}

func (t *tally) runs() []Run {
	var out []Run
	for n, least := range t.least {
		if least != absent {
			out = append(out, t.w.runOf(t.w.keys[n], least))
		}
	}
	return out
}

// counted turns what was added up into a merit.
func (t *tally) counted(s Setting, box plane.Rect) Counted {
	c := Counted{Setting: s, Runs: t.runs()}
	m := &c.Merit
	m.Sight, m.OutOfSight, m.Work = t.sights[0], t.sights[1], t.work
	t.w.addRuns(m, c.Runs)
	c.LeftCuts, c.RightCuts = t.w.cuts(c.Runs, survey.SideLeft), t.w.cuts(c.Runs, survey.SideRight)
	if t.w.likeEnds() {
		m.Mirror = t.w.mark(differences(c.LeftCuts, c.RightCuts))
	}
	for _, r := range c.Runs {
		if !r.Across() || !piece.Part(r.Least, t.w.room.Tile.Width).Less(third) {
			continue
		}
		for _, e := range r.Edges {
			c.SmallLeft = c.SmallLeft || e.Side() == survey.SideLeft
			c.SmallRight = c.SmallRight || e.Side() == survey.SideRight
		}
	}
	t.w.addMarks(m, s, box)
	t.w.addFeet(m, s.Line)
	return c
}

var (
	half  = piece.Share{Num: 1, Den: 2}
	third = piece.Share{Num: 1, Den: 3}
	fifth = piece.Share{Num: 1, Den: 5}
	full  = piece.Share{Num: 1, Den: 1}
)

func (w *Wall) runOf(k runKey, least length.Length) Run {
	r := Run{Class: k.class, Least: least}
	for _, e := range k.edges {
		if e == none {
			break
		}
		r.Edges = append(r.Edges, e)
		r.Low = r.Low || e.Low(w.rule.Sides)
	}
	return r
}

// mark is a length in whole marks of the tape, rounded down.
func (w *Wall) mark(l length.Length) length.Length { return l.FloorTo(w.room.Tape) }

// Share of a run in whole marks of the tape.
func (w *Wall) Share(r Run) piece.Share {
	tile := w.room.Tile.Height
	if r.Across() {
		tile = w.room.Tile.Width
	}
	return piece.Part(w.mark(r.Least), tile)
}

// addRuns adds the terms that are read from runs alone.
func (w *Wall) addRuns(m *merit.Merit, runs []Run) {
	m.Part = true
	for _, r := range runs {
		share, sight := w.Share(r), &m.Sight
		if r.Low {
			sight = &m.OutOfSight
		}
		if share.Less(fifth) {
			sight.Fifths++
		}
		if share.Less(third) {
			sight.Thirds++
		}
		if share.Less(half) {
			sight.Runs = append(sight.Runs, share)
		}
		switch {
		case r.Low || r.Across() || !share.Less(full):
		case all(r.Edges, func(e piece.Edge) bool { return e.IsBase(w.rule.Sides) }):
			m.Rim = append(m.Rim, share)
		case all(r.Edges, func(e piece.Edge) bool { return e.Side() == survey.SideHead }):
			m.Head = append(m.Head, share)
		}
	}
	for _, list := range [...][]piece.Share{m.Sight.Runs, m.OutOfSight.Runs, m.Rim, m.Head} {
		slices.SortFunc(list, compareShares)
	}
}

func compareShares(a, b piece.Share) int {
	return cmp.Compare(a.Num*b.Den, b.Num*a.Den)
}

func all(edges []piece.Edge, is func(piece.Edge) bool) bool {
	return !slices.ContainsFunc(edges, func(e piece.Edge) bool { return !is(e) })
}

// classes of the pieces that the ends of the wall cut.
func (w *Wall) classes() int {
	if w.plumb {
		return 1
	}
	return len(w.shifts)
}

// cuts are the least widths at one end by class, ascending: the full width where
// a class ends in a whole tile.
func (w *Wall) cuts(runs []Run, side plane.Side) []length.Length {
	out := make([]length.Length, w.classes())
	for i := range out {
		out[i] = w.room.Tile.Width
	}
	for _, r := range runs {
		if len(r.Edges) == 1 && r.Edges[0].Side() == side {
			out[r.Class] = min(out[r.Class], r.Least)
		}
	}
	slices.Sort(out)
	return out
}

// differences is the sum of the differences of two lists, entry by entry.
func differences(a, b []length.Length) length.Length {
	var sum length.Length
	for i := range min(len(a), len(b)) {
		sum += (a[i] - b[i]).Abs()
	}
	return sum
}

// likeEnds tells whether both ends of the wall meet a corner, or both stop.
func (w *Wall) likeEnds() bool { return w.Found.Left.Meets == w.Found.Right.Meets }

// Differ is how far the corner cuts of two facing walls differ, in whole marks.
func Differ(room *survey.Room, a, b []length.Length) length.Length {
	return differences(a, b).FloorTo(room.Tape)
}

// Widths are the widths at both ends by course, worked out once.
func (w *Wall) Widths(c *Counted) (left, right map[int]length.Length) {
	if c.widths == nil {
		l, r := w.EndWidths(c.Setting)
		c.widths = &[2]map[int]length.Length{l, r}
	}
	return c.widths[0], c.widths[1]
}
