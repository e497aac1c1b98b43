package survey

import "coursewright/layout/length"

// FlatTop is the top of a wall as a flat wall by itself, for whoever sets out or judges
// what is laid on it: x from where it begins, y from its finished front edge, level, to
// its back. Its base is the front and its head the back. What meets a wall keeps the
// soft joint; what is open ends as far behind the finished edge as the top says. It tells
// where on the wall its x begins. At is where the marks of the wall stand.
func (w WallFound) FlatTop(r Room, at Placed) (flat WallFound, begins length.Length) {
	t := w.Head.Top
	left, right := w.topEnds(r, at)
	wide, gap := right-left, t.gap(r)
	end := func(e EndFound, x length.Length) EndFound {
		if e.Meets {
			return EndFound{Meets: true, Gap: gap, Beyond: -1}
		}
		return EndFound{Stops: Span{From: x, To: x}, Beyond: -1}
	}
	// Along an open edge nothing is sealed away: a gap as wide as sealant fills leaves no
	// strip to it but what a slant rounds away.
	open := r.Sealant - 4
	front := t.Behind(r) - open
	back, more := gap, length.Length(0)
	if t.Open() {
		back, more = open, -front
	}
	flat = WallFound{Name: t.Of(w.Name), Letter: w.Letter + "-T", Width: wide, Order: w.Order,
		Left: end(w.Left, t.Behind(r)), Right: end(w.Right, wide-t.Behind(r)),
		Base: []SegmentFound{{Meets: Corner, Gap: open, Readings: []Reading{{At: 0, Value: front}, {At: wide, Value: front}}}},
		Head: HeadFound{Meets: true, Gap: back, Readings: []Reading{{At: 0, Value: t.Left + more}, {At: wide, Value: t.Right + more}}}}
	return flat, left
}

// topEnds is where a top comes to at the ends of its wall, at its front.
func (w WallFound) topEnds(r Room, at Placed) (left, right length.Length) {
	if c := w.Head.Top.Corner; c != nil {
		return c.Takes[0], c.Takes[0] + c.Wide
	}
	front := w.TopFront(r, at.Head)
	return topEnd(r, w.Left, 0, at.Left, front, -1), topEnd(r, w.Right, w.Width, at.Right, front, 1)
}

// TopFront is the height of the finished front edge of a top whose wall's tile ends at a
// height: the stop as typed, and what stands on boards there.
func (w WallFound) TopFront(r Room, head length.Length) length.Length {
	return head + w.Head.Inset(r) + w.Head.Top.Lined
}

// topEnd is where a top comes to at an end of its wall, at a height: the face of the tile
// on the wall it meets there, as that leans, or the finished edge.
func topEnd(r Room, e EndFound, boards, stop, y, out length.Length) length.Length {
	switch {
	case e.Meets && (e.Beyond >= 0 || e.Against):
		return boards + e.Off(y) - out*(r.Bed+r.Tile.Thickness)
	case e.Meets:
		return boards + e.Off(y)
	case e.Outside != nil:
		return boards + out*e.Outside.Past
	case e.Trim != nil:
		return stop + out*(e.Trim.Width+r.Joint)
	}
	return stop
}

// gap is the width of the soft joints where a top meets walls.
func (t *TopFound) gap(r Room) length.Length {
	if t.Gap != nil {
		return *t.Gap
	}
	return r.Joint
}

// GoesOn tells whether the courses of the wall go on upon its top, and it is judged with
// it: laid in the wall's own tile and bond, so that they stand where the wall's start has
// them, from a front to a back. One in a corner goes on too, but follows.
func (t *TopFound) GoesOn() bool {
	return t != nil && t.Face.Slab == 0 && !t.Face.Own() && t.Corner == nil
}
