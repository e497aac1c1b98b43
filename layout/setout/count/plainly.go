package count

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"
)

// Plainly is what no set-out with the start on the line can beat where both ends of
// the wall stand: what its plain rows give that no free opening touches, with what
// the edges along the rows and the marks give. Nothing is cut.
func (b *Bounds) Plainly(line, edge length.Length) merit.Merit {
	s := Setting{Line: line, Edge: edge}
	t := b.cutter.tally()
	var rows, touched []bond.Row
	lowest := b.lowestHead(line)
	for _, row := range b.w.rows(s, b.w.box()) {
		switch {
		case b.w.moves(survey.SideHead) && (b.w.frame.plumb || row.High > lowest):
		case b.w.touched(row.Low, row.High):
			touched = append(touched, row)
		default:
			rows = append(rows, row)
		}
	}
	t.plain(b.zones.outline, rows, nil)
	t.beyond(b.zones.outline, touched)
	b.meter.add(len(rows) / 4)
	m, runs := t.merit()
	along, across := b.w.frame.phases(line, edge)
	mirror := b.surelyApart(runs, along, across)
	beds := b.bedsAt(across)
	m = m.Plus(&beds)
	b.addLevelMarks(&m, edge)
	b.addUprightMarks(&m, line)
	m.Mirror = max(m.Mirror, mirror)
	return m
}

// lowestHead is the lowest place of the head on a line: nothing below is cut by it.
func (b *Bounds) lowestHead(line length.Length) length.Length {
	return slices.Min(b.places.Heads(line))
}

// surelyApart is how far the two ends differ at least, where runs are those of some
// rows: what other rows have at an end is no more than the edge's drift allows. It
// is for level courses.
func (b *Bounds) surelyApart(runs []Run, along, across length.Length) length.Length {
	if b.w.frame.plumb || !b.w.likeEnds() || b.rows.wedge(across, survey.SideLeft) || b.rows.wedge(across, survey.SideRight) {
		return 0
	}
	if b.w.box().Width() < 2*b.w.rule.Along+b.w.margin() {
		return 0 // a piece may reach from one end to what the next wall's tile hides at the other
	}
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
			t := f.tiled(along + shift)
			is, least, _ := t.slot(f.low, f.high)
			n := slices.IndexFunc(runs, func(r Run) bool { return r.Class == class && len(r.Edges) == 1 && r.Edges[0] == f.edge })
			if !t.alike() || is == kept && n < 0 {
				return 0
			}
			if is == kept {
				doubt += max(0, runs[n].Least-least+4)
			}
		}
	}
	if ends != 2 {
		return 0
	}
	return b.w.mark(max(0, differences(b.w.cuts(runs, survey.SideLeft), b.w.cuts(runs, survey.SideRight))-doubt))
}
