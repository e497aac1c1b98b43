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
	w     *facts
	meter *meter
	m     merit.Merit
	runs  []Run
	space *[]Run           // where runs are put down until their merit is read; nil for its own
	drift [2]length.Length // of the left and the right end, where all is known but how they lean
	known [2]int           // classes whose least width at that end is known to within drift
}

// sure begins to add up what is read at once: no other does meanwhile.
func (z *zones) sure() sure { return sure{w: z.w, meter: z.meter, runs: z.runs[:0], space: &z.runs} }

func (s *sure) merit() merit.Merit {
	s.merge()
	if s.space != nil {
		*s.space = s.runs
	}
	s.w.addRuns(&s.m, s.runs)
	n := s.w.classes()
	if s.w.likeEnds() && s.known[0] == n && s.known[1] == n {
		// Every size may be less than is known by its end's drift.
		apart := differences(s.w.cuts(s.runs, survey.SideLeft), s.w.cuts(s.runs, survey.SideRight))
		s.m.Mirror = s.w.mark(max(0, apart-length.Length(n)*(s.drift[0]+s.drift[1])))
	}
	return s.m
}

// rows is what was added up of one row, as of rows at a place in a pattern.
func (s *sure) rows(pattern int) rowsBeside {
	out := rowsBeside{pattern: pattern, work: s.m.Work, runs: s.runs}
	for i, of := range [...]*merit.Sight{&s.m.Sight, &s.m.OutOfSight} {
		out.bare[i], out.unworkable[i], out.slivers[i] = of.Bare, of.Unworkable, of.Slivers
	}
	return out
}

// add adds n rows that are alike.
func (s *sure) add(row *rowsBeside, n int) {
	for i, to := range [...]*merit.Sight{&s.m.Sight, &s.m.OutOfSight} {
		to.Bare += length.Length(n) * row.bare[i]
		to.Unworkable += n * row.unworkable[i]
		to.Slivers += n * row.slivers[i]
	}
	s.m.Work += n * row.work
	s.runs = append(s.runs, row.runs...)
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

// end adds what the edge makes of the rows that it crosses, and gives the rest of
// the pattern.
func (s *sure) end(f *feature, along length.Length, rows pattern) pattern {
	classes, certain := len(s.w.shifts), 0
	for class, shift := range s.w.shifts {
		t := f.tiled(along + shift)
		whole := false
		for i, p := range f.spans {
			n := int(rows[i*classes+class])
			s.slots(&t, p, n, s.w.period())
			whole = whole || n > 0 && t.least == absent
		}
		if t.known(whole) {
			certain++
		}
		if classes == 1 {
			s.crests(&t)
		}
		s.run(&t, class)
	}
	s.know(f, certain, classes)
	return rows[len(f.spans)*classes:]
}

// bed adds what the edge makes of the tiles beside it.
func (s *sure) bed(f *feature, across length.Length, obstacles []obstacle) {
	t, pitch := f.tiled(across), f.broad+f.joint
	whole := false
	for i := range f.edges {
		for _, p := range t.spans(&f.edges[i], obstacles) {
			n := guaranteed(p.to-p.from, f.broad, pitch)
			s.slots(&t, p, n, pitch)
			whole = whole || n > 0 && t.least == absent
			s.joint(&t, p)
		}
	}
	known := t.known(whole)
	s.crests(&t)
	s.run(&t, 0)
	s.know(f, boolean(known), 1)
}

// crests lowers to what is left at the crests of an edge, and adds the runs of what it cuts there with
// another. No piece is counted: the one at a crest may stand in a corner, and be counted by the other edge there.
func (s *sure) crests(t *tiled) {
	for i := range t.crests {
		c := &t.crests[i]
		is, left, _ := t.slot(c.v, c.v)
		if is != kept {
			continue
		}
		low := c.v - length.Mod(c.v-t.first, t.pitch())
		switch other, sure := c.cutWith(low, low+t.deep); {
		case !sure:
		case other == nil:
			t.lower(left + c.over)
		default:
			low := t.edge.Low(s.w.rule.Sides) || other.edge.Low(s.w.rule.Sides)
			edges := []piece.Edge{min(t.edge, other.edge), max(t.edge, other.edge)}
			s.runs = append(s.runs, Run{Edges: edges, Least: other.high - c.v + c.over, Low: low})
		}
	}
}

// run adds the run that an edge makes of the tiles of a class.
func (s *sure) run(t *tiled, class int) {
	if t.least != absent {
		s.runs = append(s.runs, Run{Edges: t.alone, Class: class, Least: t.least, Low: t.edge.Low(s.w.rule.Sides)})
	}
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

// slots adds n slots of one class that lie in a span and repeat every period, and
// lowers to what is sure of the least one.
func (s *sure) slots(t *tiled, p span, n int, period length.Length) {
	if n == 0 {
		return
	}
	is, worst, bare := t.slot(p.v0, p.v1)
	s.meter.add(1)
	if bare {
		s.bare(t.feature, n)
	}
	lean := (p.v1 - p.v0).Abs()
	switch {
	case is != kept:
		return
	case lean > 0 && t.meets && t.reach > 0 && min(t.left(p.v0), t.left(p.v1)) <= t.reach:
		return // where least is left, sealant may take the strip
	}
	generous := worst
	if lean > 0 {
		// The slot nearest the end where least is left lies within a period of it.
		over := min(period, p.to-p.from)
		generous += length.Length((int64(lean)*int64(over)+int64(p.to-p.from)-1)/int64(p.to-p.from)) + 1
	}
	s.grade(t.edge.Low(s.w.rule.Sides), t.facing, worst+lean, n)
	s.m.Work += n * s.w.effort(t.facing, int64(lean)*int64(t.broad) >= 2*int64(p.to-p.from))
	t.lower(generous)
}

// joint adds the stretch of a slanting edge from which no tile is within the reach of
// sealant: it stands in the joint between two rows, or leaves of a tile no more than
// a strip for sealant in all of its breadth; less what the tile on either side of the
// stretch covers.
func (s *sure) joint(t *tiled, p span) {
	low, high := min(p.v0, p.v1), max(p.v0, p.v1)
	is, _, _ := t.slot(p.v0, p.v1)
	if is != unsure || !t.meets || low == high {
		return
	}
	reach, fills := max(0, t.reach), max(0, t.fills())
	// So much of a tile is no more than a strip in all of its breadth, where it lies in the span.
	strip := max(0, reach-length.Length(int64(high-low)*int64(t.broad)/int64(p.to-p.from))-3)
	within := span{from: p.from + t.broad, to: p.to - t.broad}
	for from := low - length.Mod(low-t.first, t.pitch()) + t.deep; from-strip < high; from += t.pitch() {
		to := from + t.joint - fills - 1
		bare := max(p.between(from, to).length(), p.between(from-strip, to).and(within).length())
		s.sight(t.edge.Low(s.w.rule.Sides)).Bare += max(0, bare-2*max(t.joint, t.fills())-4)
	}
}

// between is where along a slanting edge it stands between two distances.
func (s span) between(v0, v1 length.Length) span {
	low, high := min(s.v0, s.v1), max(s.v0, s.v1)
	v0, v1 = max(low, v0), min(high, v1)
	if v0 >= v1 {
		return span{}
	}
	along := func(v length.Length) length.Length {
		return s.from + length.Length(int64(v-s.v0)*int64(s.to-s.from)/int64(s.v1-s.v0))
	}
	a, b := along(v0), along(v1)
	return span{from: min(a, b), to: max(a, b)}
}

// and is what two stretches have in common.
func (s span) and(o span) span { return span{from: max(s.from, o.from), to: min(s.to, o.to)} }

func (s span) length() length.Length { return max(0, s.to-s.from) }

// bare counts n slots of boundary that no tile comes near: less what the tiles beside
// each cover.
func (s *sure) bare(f *feature, n int) {
	s.sight(f.edge.Low(s.w.rule.Sides)).Bare += length.Length(n) * max(0, f.broad+2*f.joint-2*max(f.joint, f.fills()))
}

// grade counts n pieces of one size beside an edge that faces so, as far as they are too small.
func (s *sure) grade(low bool, facing piece.Facing, size length.Length, n int) {
	sight := s.sight(low)
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
}

// effort is what a cut costs along an edge that faces so in the frame of the rows: one
// across the tile 1, a rip or a taper 2.
func (w *facts) effort(facing piece.Facing, taper bool) int {
	long, short := w.rule.Along, w.rule.Across
	if facing >= piece.Under {
		long, short = short, long
	}
	if taper || long < short {
		return 2
	}
	return 1
}

// sight is where what is in sight is added, or what is low and out of it.
func (s *sure) sight(low bool) *merit.Sight {
	if low {
		return &s.m.OutOfSight
	}
	return &s.m.Sight
}
