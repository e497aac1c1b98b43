package sheet

import (
	"coursewright/layout/length"
	"coursewright/web/drawing"
)

// joins are the heights of the two match marks: in the middle of the overlap,
// or at the end of the pole.
func (s strip) joins() (low, top length.Length) {
	low, top = s.low+overlap/2, s.top-overlap/2
	if s.n == 1 {
		low = s.low
	}
	if s.n == s.of {
		top = s.top
	}
	return low, top
}

// matches draws the marks by which two strips are laid on each other.
func (s strip) matches() {
	low, top := s.joins()
	nameLow, nameTop := matchName(s.n-1), matchName(s.n)
	if s.n == 1 {
		nameLow = "FOOT"
	}
	if s.n == s.of {
		nameTop = "TOP"
	}
	s.match(low, nameLow)
	s.match(top, nameTop)
}

// match draws one of them: a line through a circle, its name outside the pole
// at its ends.
func (s strip) match(y length.Length, name string) {
	c := drawing.Point{X: s.right - matchBack, Y: s.at(y)}
	s.line(ink(drawing.Black, 350), drawing.Point{X: c.X - matchReach, Y: c.Y}, drawing.Point{X: c.X + matchReach, Y: c.Y})
	s.put(drawing.Disc{Ink: ink(drawing.Black, 350), Centre: c, Radius: 1500})
	st := style{size: 3600, bold: true, anchor: drawing.Middle}
	switch y {
	case s.low:
		s.text(drawing.Point{X: c.X, Y: c.Y + 4700}, st, name)
	case s.top:
		s.text(drawing.Point{X: c.X, Y: c.Y - 2200}, st, name)
	default:
		s.text(drawing.Point{X: c.X + 4500, Y: c.Y - 700}, st, name)
	}
}

// matchName counts the joins A, B, … Z, A2, B2, …
func matchName(n int) string {
	name := string(rune('A' + (n-1)%26))
	if n > 26 {
		name += number((n-1)/26 + 1)
	}
	return name
}

// checks are the known lengths a strip may bear, the longest first.
func checks(u length.System) []length.Length {
	if u == length.Metric {
		return []length.Length{150 * length.Millimetre, 100 * length.Millimetre, 50 * length.Millimetre}
	}
	return []length.Length{6 * length.Inch, 4 * length.Inch, 2 * length.Inch}
}

// check draws the longest known length that a strip takes clear of its match
// marks.
func (s strip) check(x drawing.Micron) {
	units := s.book.plan.Room.Units
	for _, known := range checks(units) {
		if known+30*length.Millimetre > s.top-s.low {
			continue
		}
		low := s.low + (s.top-s.low-known)/2
		s.line(ink(drawing.Black, 250), drawing.Point{X: x, Y: s.at(low)}, drawing.Point{X: x, Y: s.at(low + known)})
		for _, y := range []length.Length{low, low + known} {
			s.line(ink(drawing.Black, 350), drawing.Point{X: x - 1300, Y: s.at(y)}, drawing.Point{X: x + 1300, Y: s.at(y)})
		}
		s.text(drawing.Point{X: x - 900, Y: s.at(low + known/3)}, style{size: 3000, up: true}, "check "+known.Format(units, 0))
		return
	}
}
