package count

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// lined are the rows of a line with what crosses them, which is the same wherever their
// tiles begin: it is found once for all starts. The rows begin at their shift.
type lined struct {
	count   int        // of the rows that no free mark touches
	plain   []alike    // those of them that are plain
	uneven  []*uneven  // and those that are not
	touched []bond.Row // rows that a free opening may touch
	above   []bond.Row // and those that a free head may end
	bare    []bareEnd
	heads   []length.Length // where a free head may stand, ascending
}

// alike are plain rows of one class between the same plumb edges, or one between edges that lean.
type alike struct {
	row    bond.Row // the first of them
	n      int
	in     []crossing
	uneven *uneven // of one between edges that lean, for where it is not plain after all
}

// mostLined bounds of how many lines the rows are kept.
const mostLined = 4096

// rowsOn gives the rows of a line that stand at across. They are looked at once.
func (b *Bounds) rowsOn(line, across length.Length) *lined {
	return b.lined.of(across, func() *lined { return b.lineUp(line, across) })
}

func (b *Bounds) lineUp(line, across length.Length) *lined {
	b.meter.add(80)
	l := &lined{heads: b.places.Heads(line)}
	slices.Sort(l.heads)
	for _, row := range b.w.rowsFrom(0, across, b.w.box()) {
		switch {
		case b.w.mayEnd(row, l.heads[0]):
			l.above = append(l.above, row)
			continue
		case b.w.touched(row.Low, row.High):
			l.touched = append(l.touched, row)
		default:
			l.count++
			l.add(b.zones, row)
		}
		l.bare = b.zones.bareEnds(l.bare, row)
	}
	return l
}

// mayEnd tells whether a free mark along the rows may cut a row or leave it out: the
// head, of which the lowest place is given, or with columns an end.
func (w *facts) mayEnd(row bond.Row, head length.Length) bool {
	if w.frame.plumb {
		return w.moves(survey.SideLeft) && row.Low < w.found.Left.Stops.To || w.moves(survey.SideRight) && row.High > w.found.Right.Stops.From
	}
	return w.moves(survey.SideHead) && row.High > head
}

// add adds a row that no free mark touches.
func (l *lined) add(z *zones, row bond.Row) {
	f := z.outline
	band := f.band(row.Low, row.High)
	if band < 0 {
		l.uneven = append(l.uneven, z.uneven(row))
		return
	}
	for i := range l.plain {
		if a := &l.plain[i]; a.uneven == nil && z.w.class(a.row.Course) == z.w.class(row.Course) && f.band(a.row.Low, a.row.High) == band {
			a.n++
			return
		}
	}
	in, ok := f.row(row.Low, row.High, nil)
	switch {
	case !ok || !paired(in):
		l.uneven = append(l.uneven, z.uneven(row))
	case f.leaning[band]:
		l.plain = append(l.plain, alike{row, 1, in, z.uneven(row)})
	default:
		l.plain = append(l.plain, alike{row: row, n: 1, in: in})
	}
}

// stubs lists the tiles that are cut of rows alike that begin at along; it is false where they
// are not plain after all.
func (a *alike) stubs(along length.Length, into []stub) ([]stub, bond.Row, bool) {
	row := begun(a.row, along)
	ok := stubs(a.in, row, func(s stub) { into = append(into, s) })
	return into, row, ok
}

// doubtful lists the rows whose pieces are not all known: those that are not plain, and those
// that a free opening may touch.
func (l *lined) doubtful(slow []*uneven) []bond.Row {
	out := slices.Clone(l.touched)
	for _, u := range slow {
		out = append(out, u.row)
	}
	return out
}
