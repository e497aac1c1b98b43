package count

import (
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Beyond is what a setting gives in the rows that no free opening can touch, with
// what measured marks give: no placing of the free openings can beat it.
func (b *Bounds) Beyond(s Setting) merit.Merit {
	f, t := b.cutter.fit(b.w.without(s.Placed)), b.cutter.tally()
	f.cover.Clear()
	count := func(rows []bond.Row) {
		for _, row := range t.plain(f.profile, rows, f.cover) {
			cut := f.row(row)
			b.meter.add(2 * (len(cut.tile) + len(cut.whole)))
			t.add(cut, f.cover)
		}
	}
	all := b.w.rows(s, f.box)
	rows, touched := all[:0], []bond.Row(nil)
	for _, row := range all {
		if b.w.touched(row.Low, row.High) {
			touched = append(touched, row)
			continue
		}
		rows = append(rows, row)
	}
	count(rows)
	sure := t.copy()
	for _, row := range sure.beyond(f.profile, touched) {
		sure.count(f.beyond(row))
	}
	count(touched) // an opening takes tile away, and adds none
	for _, gap := range f.cover.Gaps() {
		sure.sights[boolean(gap.Low)].Bare += b.clear(gap)
	}
	m, runs := sure.merit()
	if b.w.likeEnds() {
		left, right := b.w.cuts(runs, survey.SideLeft), b.w.cuts(runs, survey.SideRight)
		// An opening may take a piece from an end, and adds none to it.
		all := t.runs()
		doubt := differences(left, b.w.cuts(all, survey.SideLeft)) + differences(right, b.w.cuts(all, survey.SideRight))
		m.Mirror = b.w.mark(max(0, differences(left, right)-doubt))
	}
	b.meter.add(len(all))
	fixed := b.marks.Fixed(s.Line, s.Edge)
	return m.Plus(&fixed)
}

// Mirror is how far the ends of a setting are from alike where no free opening cuts a
// tile that reaches one of them.
func (b *Bounds) Mirror(s Setting) length.Length {
	if !b.w.likeEnds() {
		return 0
	}
	runs := b.cutter.without(s).runs()
	return b.w.mark(differences(b.w.cuts(runs, survey.SideLeft), b.w.cuts(runs, survey.SideRight)))
}

// clear is how much of a bare stretch is bare wherever the free openings go: all of it, but
// where one may come so near that it takes some of the boundary.
func (b *Bounds) clear(gap piece.Gap) length.Length {
	from, to := b.w.frame.point(gap.From), b.w.frame.point(gap.To)
	if b.zones.mayTake(plane.Rect{Left: min(from.X, to.X), Right: max(from.X, to.X), Bottom: min(from.Y, to.Y), Top: max(from.Y, to.Y)}) {
		return 0
	}
	return gap.Length
}
