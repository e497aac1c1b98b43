package survey

import (
	"slices"

	"coursewright/layout/length"
)

// Cove is trim that stands along a base: a tile with a rounded foot, on which the
// field begins a joint over it.
const Cove Kind = "cove"

// coves reads which cove stands along the base of a wall. The field then keeps off the
// base by the gap, the cove and a joint. Beside a leg, where tile goes down to the floor, none
// is laid.
func (r *resolver) coves(p path, typed []Segment, found []SegmentFound) {
	for i, s := range typed {
		if s.Trim == "" || i >= len(found) {
			continue
		}
		at := p.at(i).dot("trim")
		t := r.edged(at, s.Trim, "")
		switch {
		case t == nil:
		case t.Kind != Cove:
			r.faults.add(at, quote(s.Trim)+", which is a "+string(t.Kind), "a trim of the kind cove, or nothing here")
		case len(typed) > 1 && slices.ContainsFunc(found, func(s SegmentFound) bool { return s.Meets == Floor }):
			r.faults.add(at, quote(s.Trim)+" along a base with a leg down to the floor", "nothing here: a cove stands along a base that does not go on beside it to the floor")
		default:
			found[i].Cove = t
			found[i].rejoint(0, r.around.Joint)
		}
	}
}

// rejoint moves the field over a cove when the joint becomes another one.
func (s *SegmentFound) rejoint(from, to length.Length) {
	if s.Cove == nil {
		return
	}
	if from == 0 {
		s.Gap, s.Rise = s.Gap+s.Cove.Width, s.Cove.Width
	}
	s.Gap, s.Rise = s.Gap+to-from, s.Rise+to-from
}

// Foot is the gap that stays open under what stands on the base: tile, or a cove.
func (s SegmentFound) Foot() length.Length { return s.Gap - s.Rise }

// Bare is the wall without its coves: the region down to the gap over the base.
func (w WallFound) Bare() WallFound {
	base := w.Base
	w.Base = nil
	for _, s := range base {
		s.Gap, s.Rise, s.Cove = s.Foot(), 0, nil
		w.Base = append(w.Base, s)
	}
	return w
}

// Coved tells whether a cove stands along the base of the wall, or a stretch of it.
func (w WallFound) Coved() bool {
	return slices.ContainsFunc(w.Base, func(s SegmentFound) bool { return s.Cove != nil })
}
