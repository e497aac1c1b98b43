package sheet

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/web/drawing"
)

const (
	leastStrip = 80 * mmPaper // how narrow a strip may be
	stripFrom  = 24 * mmPaper // under the words at the head of the sheet
	overlap    = 12 * length.Millimetre
)

// strip is a part of the pole as it lies on a sheet.
type strip struct {
	*leaf
	book     *book
	x, right drawing.Micron // its edges
	foot     drawing.Micron // where low lies
	low, top length.Length
	n, of    int
}

// strips cuts the pole into strips of one length, each beginning 12 mm before
// the one under it ends, and lays as many on a sheet as there is room for.
func (b *book) strips(p pole) {
	lie := &leaf{size: b.opts.Paper.lie(false)}
	lo, hi := lie.area()
	long := length.Length(hi.Y-lo.Y-stripFrom-6*mmPaper) / 1000 * length.Millimetre
	all := stretches(p.low, p.top, long)
	across := int((hi.X - lo.X) / leastStrip)
	wide := (hi.X - lo.X) / drawing.Micron(across)
	for n, r := range all {
		if n%across == 0 {
			lie = &leaf{subject: subject{title: "Story pole", scale: full}, size: b.opts.Paper.lie(false)}
			b.leaves = append(b.leaves, lie)
			b.poleWords(lie, p, len(all))
		}
		x := lo.X + drawing.Micron(n%across)*wide
		s := strip{leaf: lie, book: b, x: x, right: x + wide - 2000, foot: hi.Y - 6*mmPaper, low: r.low, top: r.top, n: n + 1, of: len(all)}
		s.draw(p)
	}
}

// stretch is a part of the pole.
type stretch struct{ low, top length.Length }

// stretches parts a pole into lengths no longer than long, each of which begins
// an overlap before the one under it ends.
func stretches(low, top, long length.Length) []stretch {
	var out []stretch
	for ; top-low > long; low += long - overlap {
		out = append(out, stretch{low, low + long})
	}
	return append(out, stretch{low, top})
}

// poleWords says at the head of a sheet how the strips are joined.
func (b *book) poleWords(l *leaf, p pole, of int) {
	lo, hi := l.area()
	l.text(drawing.Point{X: lo.X, Y: lo.Y + heading.size}, heading, "Story pole, full size")
	y := lo.Y + 13000
	words := fmt.Sprintf("Cut out the strips and join them on a stick, match mark on match mark (A on A). Joined, all %d measure %s from FOOT to TOP: check this.", of, b.tape(p.top-p.low))
	for _, line := range plain.wrap(words, hi.X-lo.X) {
		l.text(drawing.Point{X: lo.X, Y: y}, plain, line)
		y += plain.leading()
	}
}

// at is where a height lies on the sheet.
func (s strip) at(y length.Length) drawing.Micron { return s.foot - full.On(y-s.low) }

func (s strip) shows(y length.Length) bool { return s.low <= y && y <= s.top }

// What stands where across a strip, from its left edge, and from its right one.
const (
	tileWide   = 14 * mmPaper
	markFrom   = 33 * mmPaper // the heights of the courses stand before it
	nameFrom   = 36 * mmPaper
	matchBack  = 9 * mmPaper
	matchReach = 5 * mmPaper
	checkBack  = 3 * mmPaper
)

// draw draws one strip: tiles at the left, their heights, and the other marks
// at the right.
func (s strip) draw(p pole) {
	s.box(drawing.Ink{Fill: drawing.None, Line: drawing.Grey, Width: 180, Dash: drawing.Hidden},
		drawing.Point{X: s.x, Y: s.at(s.top)}, drawing.Point{X: s.right, Y: s.foot})
	for _, u := range p.tiles {
		s.tile(u)
	}
	for _, m := range p.marks {
		if s.shows(m.at) {
			s.mark(m)
		}
	}
	s.names(p.marks)
	s.matches()
	s.check(s.right - checkBack)
	s.text(drawing.Point{X: s.x + 1000, Y: s.foot + 4500}, style{size: 3400, bold: true}, fmt.Sprintf("strip %d of %d", s.n, s.of))
}

// tile draws one tile of the pole as far as the strip shows it.
func (s strip) tile(u stood) {
	low, top := max(u.bottom, s.low), min(u.top, s.top)
	if low >= top {
		return
	}
	s.box(drawing.Ink{Fill: drawing.Pale, Line: drawing.Black, Width: 250}, drawing.Point{X: s.x, Y: s.at(top)}, drawing.Point{X: s.x + tileWide, Y: s.at(low)})
	if s.at(low)-s.at(top) > 5000 {
		s.text(drawing.Point{X: s.x + tileWide/2, Y: (s.at(low)+s.at(top))/2 + 1800}, style{size: 5000, bold: true, anchor: drawing.Middle}, number(u.course))
	}
	if s.shows(u.bottom) && s.at(low)-s.at(top) > 3600 {
		s.text(drawing.Point{X: s.x + tileWide + 800, Y: s.at(u.bottom) - 500}, plain, s.book.signed(u.bottom))
	}
}

// mark draws one mark: the two lines over the whole pole, the others beside it.
func (s strip) mark(m notch) {
	from := s.x + tileWide
	if m.colour != drawing.Black {
		from = s.x
	}
	s.line(ink(m.colour, 500), drawing.Point{X: from, Y: s.at(m.at)}, drawing.Point{X: s.x + markFrom, Y: s.at(m.at)})
}

// names writes the marks' names beside them, moved up from each other where
// they would overlap.
func (s strip) names(marks []notch) {
	st := plain
	y := s.foot + st.leading()
	for _, m := range marks {
		if !s.shows(m.at) {
			continue
		}
		y = min(s.at(m.at)+1200, y-st.leading())
		s.line(ink(m.colour, 180), drawing.Point{X: s.x + markFrom, Y: s.at(m.at)}, drawing.Point{X: s.x + nameFrom - 500, Y: y - 1200})
		st.colour = m.colour
		s.text(drawing.Point{X: s.x + nameFrom, Y: y}, st, st.short(m.name+" "+s.book.signed(m.at), s.nameWidth(y)))
	}
}

// nameWidth is how long a name may be at y: clear of the check length, and of
// the match marks.
func (s strip) nameWidth(y drawing.Micron) drawing.Micron {
	wide := s.right - s.x - nameFrom - checkBack - 3500
	low, top := s.joins()
	for _, join := range []length.Length{low, top} {
		if d := y - s.at(join); -5000 < d && d < 6000 {
			wide = s.right - s.x - nameFrom - matchBack - matchReach - 500
		}
	}
	return wide
}
