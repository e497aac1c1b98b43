package sheet

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/web/drawing"
)

const (
	stripsAcross = 4
	stripFrom    = 20 * mmPaper // under the words at the head of the sheet
	overlap      = 12 * length.Millimetre
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

// fullPole prints the pole at full size, four strips to a sheet.
func (b *book) fullPole() { b.strips(b.pole()) }

// strips cuts the pole into strips of one length, each beginning 12 mm before
// the one under it ends, and lays four of them on a sheet.
func (b *book) strips(p pole) {
	sheet := &leaf{size: b.opts.Paper.lie(false)}
	lo, hi := sheet.area()
	long := length.Length(hi.Y-lo.Y-stripFrom-8*mmPaper) / 1000 * length.Millimetre
	all := stretches(p.low, p.top, long)
	wide := (hi.X - lo.X) / stripsAcross
	at := stripsAcross // on the sheet
	for n, r := range all {
		if at == stripsAcross || at == stripsAcross-1 && len(all)-n == 2 { // so that none stands alone on the last sheet
			at = 0
			sheet = &leaf{subject: subject{kind: b.now, title: "Story pole", scale: full}, size: b.opts.Paper.lie(false)}
			b.leaves = append(b.leaves, sheet)
			b.poleWords(sheet, p, len(all))
		}
		x := lo.X + drawing.Micron(at)*wide
		s := strip{leaf: sheet, book: b, x: x, right: x + wide - 2000, foot: hi.Y - 8*mmPaper, low: r.low, top: r.top, n: n + 1, of: len(all)}
		s.draw(p)
		at++
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
	l.text(drawing.Point{X: lo.X, Y: lo.Y + 5000}, style{size: 6000, bold: true}, "Story pole, full size")
	y := lo.Y + 10000
	words := fmt.Sprintf("Cut out the strips and join them on a stick, match mark on match mark (A on A). Joined, all %d measure %s from FOOT to TOP: check this. The foot stands on the %s where that is highest.", of, b.tape(p.top-p.low), b.rim())
	for _, line := range plain.wrap(words, hi.X-lo.X) {
		l.text(drawing.Point{X: lo.X, Y: y}, plain, line)
		y += plain.leading()
	}
}

// at is where a height lies on the sheet.
func (s strip) at(y length.Length) drawing.Micron { return s.foot - full.On(y-s.low) }

func (s strip) shows(y length.Length) bool { return s.low <= y && y <= s.top }

// What stands where across a strip, from its left edge.
const (
	tileWide  = 10 * mmPaper
	markFrom  = 13 * mmPaper
	nameFrom  = 15500
	matchBack = 5 * mmPaper // of the match marks, from its right edge
)

var poleName = style{size: 2900}

// draw draws one strip: tiles at the left, their heights in them, and the other
// marks at the right.
func (s strip) draw(p pole) {
	s.box(drawing.Ink{Fill: drawing.None, Line: drawing.Grey, Width: 180, Dash: drawing.Hidden},
		drawing.Point{X: s.x, Y: s.at(s.top)}, drawing.Point{X: s.right, Y: s.foot})
	for _, u := range p.tiles {
		s.tile(u)
	}
	var here []notch
	for _, m := range p.marks {
		if s.shows(m.at) {
			s.mark(m)
			here = append(here, m)
		}
	}
	s.names(here)
	s.matches()
	s.text(drawing.Point{X: s.x + 1000, Y: s.foot + 4500}, style{size: 3400, bold: true}, fmt.Sprintf("strip %d of %d", s.n, s.of))
}

// tile draws one tile of the pole as far as the strip shows it, its height
// written up its side.
func (s strip) tile(u stood) {
	low, top := max(u.bottom, s.low), min(u.top, s.top)
	if low >= top {
		return
	}
	s.box(drawing.Ink{Fill: drawing.Pale, Line: drawing.Black, Width: 250}, drawing.Point{X: s.x, Y: s.at(top)}, drawing.Point{X: s.x + tileWide, Y: s.at(low)})
	name, text := style{size: 5000, bold: true, up: true}, s.book.signed(u.bottom)
	room, course := s.at(low)-s.at(top), number(u.course)
	at := drawing.Point{X: s.x + 4200, Y: s.at(low) - 1000}
	if room > name.width(course)+2000 {
		s.text(at, name, course)
	}
	if up := (style{size: 3000, up: true}); s.shows(u.bottom) && room > up.width(text)+2000 {
		s.text(drawing.Point{X: s.x + 8500, Y: s.at(u.bottom) - 1000}, up, text)
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

// tag is the name of a mark in lines, and where its block begins above.
type tag struct {
	notch
	lines []string
	top   drawing.Micron
}

// names writes the marks' names beside them, in as many lines as they need,
// moved apart where they would lie over each other, and within the strip.
func (s strip) names(marks []notch) {
	room := s.right - s.x - nameFrom - matchBack - 4000
	var all []tag
	limit := s.foot - 500
	for _, m := range marks { // from the bottom up
		t := tag{notch: m, lines: poleName.wrap(m.name+" "+held(s.book.signed(m.at)), room)}
		high := drawing.Micron(len(t.lines)) * poleName.leading()
		t.top = min(s.at(m.at)-high/2, limit-high)
		limit = t.top
		all = append(all, t)
	}
	floor := s.at(s.top) + 500
	for i := len(all) - 1; i >= 0; i-- { // back down from the top
		all[i].top = max(all[i].top, floor)
		floor = all[i].top + drawing.Micron(len(all[i].lines))*poleName.leading()
	}
	for _, t := range all {
		st := poleName.in(t.colour)
		y := t.top
		s.line(ink(t.colour, 180), drawing.Point{X: s.x + markFrom, Y: s.at(t.at)}, drawing.Point{X: s.x + nameFrom - 500, Y: y + st.size/2})
		for _, line := range t.lines {
			s.text(drawing.Point{X: s.x + nameFrom, Y: y + st.size*9/10}, st, line)
			y += st.leading()
		}
	}
}
