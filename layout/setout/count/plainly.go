package count

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"
)

// Plainly is what no set-out with the start on the line can beat: what its rows give
// that no free mark touches, plain ones and others in slices, with the best of each free
// end and what the edges along the rows and the marks give. Nothing is cut.
func (b *Bounds) Plainly(line, edge length.Length) merit.Merit {
	along, across := b.w.frame.phases(line, edge)
	l := b.rowsOn(line, across)
	t, slow := b.cutter.tally(), slices.Clip(l.uneven)
	var found []stub
	for i := range l.plain {
		a := &l.plain[i]
		cut, row, plain := a.stubs(along, found[:0])
		if found = cut; !plain {
			slow = append(slow, a.uneven)
			continue
		}
		for k := range found {
			if s := &found[k]; !s.whole && !s.sealed() && b.zones.settled(s, row) {
				t.stubs(s, b.w.class(row.Course), a.n)
			}
		}
	}
	if !b.zones.zoned(false) && !b.zones.zoned(true) {
		t.beyond(b.zones.outline, allBegun(l.touched, along))
	}
	b.meter.add(14 + (l.count+len(slow))/2)
	sure := t.copy()
	sure.sliced(b.zones, slow, along)
	sure.bareEnds(l.bare, along)
	m, _ := sure.merit()
	beds := b.alongRows(across)
	m = m.Plus(&beds)
	for _, right := range [...]bool{false, true} {
		if b.zones.zoned(right) {
			_, bands := b.standingEnds(along, b.rows.at(across))
			end := b.movable(right, along, bands, slow)
			m = m.Plus(&end)
		}
	}
	b.addLevelMarks(&m, edge)
	b.addUprightMarks(&m, line)
	if b.w.fixedEnds() && b.tellsApart(across) {
		m.Mirror = max(m.Mirror, b.underHeads(l, t, slow, along))
	}
	return m
}

// underHeads is how far the two ends differ at least under the best of the places of
// the head, where t holds what rows give under the lowest, but the slow ones, and those above
// stand under it as far as they reach.
func (b *Bounds) underHeads(l *lined, t *tally, slow []*uneven, along length.Length) length.Length {
	best := absent
	for _, head := range l.heads {
		t, unknown := t.copy(), l.doubtful(slow)
		var under []bond.Row
		for _, row := range allBegun(l.above, along) {
			switch {
			case row.High <= head:
				under = append(under, row)
			case row.Low < head:
				unknown = append(unknown, row)
			}
		}
		unknown = append(unknown, t.plain(b.zones.outline, under, nil)...)
		if apart := b.surelyApart(t.runs(), unknown, along); best == absent || apart < best {
			best = apart
		}
	}
	return best
}

// tellsApart tells whether the ends can be told apart by arithmetic: courses are
// level, the ends are alike, no rake leaves a wedge at one, and no piece reaches from
// one to what the next wall's tile hides at the other.
func (b *Bounds) tellsApart(across length.Length) bool {
	return !b.w.frame.plumb && b.w.likeEnds() && b.w.box().Width() >= 2*b.w.rule.Along+b.w.margin() &&
		!b.rows.wedge(across, survey.SideLeft) && !b.rows.wedge(across, survey.SideRight)
}

// surelyApart is how far the two ends differ at least, where runs are those of some
// rows: what the doubtful ones have at an end is no less than the edge leaves beside
// them.
func (b *Bounds) surelyApart(runs []Run, doubtful []bond.Row, along length.Length) length.Length {
	var doubt length.Length
	ends := 0
	for i := range b.boundary.ends {
		f := &b.boundary.ends[i]
		side := f.edge.Side()
		if side != survey.SideLeft && side != survey.SideRight {
			continue
		}
		ends++
		for class, shift := range b.w.shifts {
			known := b.w.room.Tile.Width
			if n := slices.IndexFunc(runs, func(r Run) bool { return r.Class == class && len(r.Edges) == 1 && r.Edges[0] == f.edge }); n >= 0 {
				known = runs[n].Least
			}
			t := f.tiled(along + shift)
			doubt += known - b.leastOf(&t, class, doubtful, known)
		}
	}
	if ends != 2 {
		return 0
	}
	return b.w.mark(max(0, differences(b.w.cuts(runs, survey.SideLeft), b.w.cuts(runs, survey.SideRight))-doubt))
}

// leastOf is the least that may be left at an end in the rows of a class that are not
// counted, or known where that is less.
func (b *Bounds) leastOf(t *tiled, class int, rows []bond.Row, known length.Length) length.Length {
	for _, row := range rows {
		if b.w.class(row.Course) != class {
			continue
		}
		for _, e := range t.edges {
			from, to := max(e.from, row.Low), min(e.to, row.High)
			if from <= to {
				known = min(known, t.leaves(e.at(from), e.at(to)))
			}
		}
	}
	return known
}
