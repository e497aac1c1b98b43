package survey

import "coursewright/layout/length"

// keepInside takes from the ranges of free openings what lies out of the tile
// whatever else is chosen, so that a range may be typed, or filled in by a
// button, without knowing where tile ends. Of what is left of two ranges together
// that is chosen with which the opening ends inside. A range of which
// nothing would be left stays as typed, and so do those of two edges of which a pin
// stands out of what is left: what is pinned does not move. A pin within it changes
// no range, so that an opening is judged alike where it is pinned and where it is not.
func (w *WallFound) keepInside() {
	for i := range w.Openings {
		o := &w.Openings[i]
		if o.Kind == Pipe {
			continue
		}
		left, right := w.Field()
		o.Left, o.Width = w.fitted(o.Left, o.Width, left, right, o.Mark(LeftEdge), o.Mark(RightEdge))
		bottom, top := w.upright(o.Left.From, o.Left.To+o.Width.To)
		if o.Kind == Window && !w.Head.Meets {
			top = max(top, o.Bottom.To+o.Height.To) // a window may reach past a head that merely stops
		}
		o.Bottom, o.Height = w.fitted(o.Bottom, o.Height, bottom, top, o.Mark(BottomEdge), o.Mark(TopEdge))
		if o.Kind == Niche || o.Kind == Window {
			o.Right = w.ending(o.Left, o.Width, o.Right, right, o.Mark(RightEdge))
			o.Top = w.ending(o.Bottom, o.Height, o.Top, top, o.Mark(TopEdge))
		}
	}
}

// ending is between which an edge of an opening may lie that could run out of the tile, which ends at most.
func (w *WallFound) ending(begin, size, far Span, most length.Length, edge MarkName) Span {
	all := begin.plus(size)
	if y, pinned := w.MarkPins[edge]; far != (Span{}) || all.To <= most || all.From > most || pinned && y > most {
		return far
	}
	return Span{all.From, most}
}

// fitted is the package's fitted for two edges that are not pinned elsewhere.
func (w *WallFound) fitted(begin, size Span, low, high length.Length, first, last MarkName) (Span, Span) {
	b, s := fitted(begin, size, low, high)
	x, pinned := w.MarkPins[first]
	y, both := w.MarkPins[last]
	if pinned && !b.holds(x) || both && !b.plus(s).holds(y) || pinned && both && !s.holds(y-x) {
		return begin, size
	}
	return b, s
}

// fitted narrows where an opening may begin and how large it may be to what
// fits between two bounds.
func fitted(begin, size Span, low, high length.Length) (Span, Span) {
	if high-low < size.From {
		return begin, size
	}
	begin = begin.narrowed(low, high-size.From)
	return begin, size.narrowed(size.From, high-begin.From)
}

// narrowed is the part of a free span between two bounds; a measured one, and
// one of which nothing would be left, stay as they are.
func (s Span) narrowed(low, high length.Length) Span {
	n := Span{max(s.From, low), min(s.To, high)}
	if !s.Free() || n.From > n.To {
		return s
	}
	return n
}

func (s Span) holds(x length.Length) bool { return s.From <= x && x <= s.To }

// Field is how far tile may reach along the wall, with free ends at their
// furthest. A corner that leans counts where it stands at the level line.
func (w *WallFound) Field() (left, right length.Length) {
	left, right = w.Left.Gap+w.Left.Behind, w.Width-w.Right.Gap-w.Right.Behind
	if !w.Left.Meets {
		left = w.Left.Stops.From
	}
	if !w.Right.Meets {
		right = w.Right.Stops.To
	}
	return left, right
}

// upright is between which heights there is tile from one place to another: over
// the highest base and under the lowest head there.
func (w *WallFound) upright(from, to length.Length) (bottom, top length.Length) {
	top = w.Head.Stops.To
	if w.Head.Meets {
		top = lowest(w.Head.Readings, from, to) - w.Head.Gap
	}
	first := true
	for i, s := range w.Base {
		a, b := s.Readings[0].At, s.Readings[len(s.Readings)-1].At
		if i == 0 {
			a = min(a, from)
		}
		if i == len(w.Base)-1 {
			b = max(b, to)
		}
		if b <= from || a >= to {
			continue
		}
		if y := -lowest(negative(s.Readings), max(a, from), min(b, to)) + s.Gap; first || y > bottom {
			bottom, first = y, false
		}
	}
	return bottom, top
}

// lowest is the least value of readings between two places.
func lowest(readings []Reading, from, to length.Length) length.Length {
	low := min(At(readings, from), At(readings, to))
	for _, r := range readings {
		if from < r.At && r.At < to {
			low = min(low, r.Value)
		}
	}
	return low
}
