package survey

import "coursewright/layout/length"

// Cove is trim that stands along a base: a tile with a rounded foot, on which the
// field begins a joint over it.
const Cove Kind = "cove"

// coves reads which cove stands along the base of a wall. The field then keeps off the
// base by the gap, the cove and a joint. The base must be one stretch, without a step.
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
		case len(typed) > 1:
			r.faults.add(at, quote(s.Trim)+" along a base in several stretches", "nothing here: a cove stands along a base of one stretch, without a step")
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

// Coved tells whether a cove stands along the base of the wall.
func (w WallFound) Coved() bool { return len(w.Base) == 1 && w.Base[0].Cove != nil }
