package plane

import "coursewright/layout/length"

// LessLeft is the region without what lies to the left of a plumb line, and LessRight without what
// lies to its right; the new edges lie on side on. It is what Less gives for a box that reaches far
// beyond the region on that side, in a fraction of the time where one ring crosses the line twice.
func (r Region) LessLeft(x length.Length, on Side) Region { return r.lessBeyond(x, RightOf(x), on) }

// LessRight is the region without what lies to the right of a plumb line.
func (r Region) LessRight(x length.Length, on Side) Region { return r.lessBeyond(x, LeftOf(x), on) }

func (r Region) lessBeyond(x length.Length, keep Line, on Side) Region {
	if len(r) == 1 {
		if ring, done := r[0].lessBeyond(keep, on); done {
			return Region{ring}
		}
	}
	box := r.Bounds()
	if len(r) == 0 || keep.D.Y < 0 && x <= box.Left || keep.D.Y > 0 && x >= box.Right {
		return r
	}
	const more = length.Metre
	taken := Rect{Left: box.Left - more, Right: x, Bottom: box.Bottom - more, Top: box.Top + more}
	if keep.D.Y > 0 {
		taken.Left, taken.Right = x, box.Right+more
	}
	return r.Less(taken.Ring(0), on)
}

// lessBeyond is what of a ring lies to the left of a line that it crosses once there and once
// back, at none of its corners. It begins where the ring does, or at the first edge that is left.
func (r Ring) lessBeyond(keep Line, on Side) (Ring, bool) {
	crossed := 0
	for i, a := range r {
		sa, sb := keep.Side(a.Point), keep.Side(r[(i+1)%len(r)].Point)
		if sa == 0 {
			return nil, false
		}
		if (sa > 0) != (sb > 0) {
			crossed++
		}
	}
	if crossed != 2 {
		return nil, false
	}
	out := make(Ring, 0, len(r)+2)
	for i, a := range r {
		b := r[(i+1)%len(r)]
		sa, sb := keep.Side(a.Point), keep.Side(b.Point)
		if sa > 0 {
			out = append(out, a)
		}
		switch {
		case sa > 0 && sb < 0:
			out = append(out, Corner{cross(a.Point, b.Point, sa, sb), on})
		case sa < 0 && sb > 0:
			out = append(out, Corner{cross(a.Point, b.Point, sa, sb), a.On})
		}
	}
	out = out.tidy().straight()
	return out, len(out) >= 3 && out.Area2() != 0
}
