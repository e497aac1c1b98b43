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

// match draws one of them: a line through a circle, its name beside it, or
// outside the pole at its ends.
func (s strip) match(y length.Length, name string) {
	c := drawing.Point{X: s.right - matchBack, Y: s.at(y)}
	s.line(ink(drawing.Black, 350), drawing.Point{X: c.X - 3500, Y: c.Y}, drawing.Point{X: c.X + 3500, Y: c.Y})
	s.put(drawing.Disc{Ink: ink(drawing.Black, 350), Centre: c, Radius: 1400})
	st := style{size: 3400, bold: true, anchor: drawing.Right}
	switch y {
	case s.low:
		s.text(drawing.Point{X: s.right, Y: c.Y + 4700}, st, name)
	case s.top:
		s.text(drawing.Point{X: s.right, Y: c.Y - 1800}, st, name)
	default:
		s.text(drawing.Point{X: s.right - 300, Y: c.Y - 700}, st, name)
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
