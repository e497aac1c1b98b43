package sheet

import (
	"strconv"

	"coursewright/layout/length"
	"coursewright/web/drawing"
)

// The bars by which a person checks that the printer kept the size.
const (
	hundred    = 100 * mmPaper
	fourInches = 101600
)

// bars draws the level bars and the scale bar over the title block, and the
// upright bars at the left edge.
func (b *book) bars(l *leaf, top drawing.Micron) {
	x := drawing.Micron(edge) + 500
	l.bar(drawing.Point{X: x, Y: top + 3000}, false, hundred, 10, "100 mm")
	l.bar(drawing.Point{X: x, Y: top + 7600}, false, fourInches, 4, "4 in")
	up := edge + fourInches + 20000
	l.bar(drawing.Point{X: edge + 3000, Y: up}, true, hundred, 10, "100 mm")
	l.bar(drawing.Point{X: edge + 8000, Y: up}, true, fourInches, 4, "4 in")
	b.scaleBar(l, drawing.Point{X: edge + 124*mmPaper, Y: top + 7600})
	l.text(drawing.Point{X: edge + 124*mmPaper, Y: top + 3000}, small.in(drawing.Black), "print at 100 %, check this bar")
	l.text(drawing.Point{X: edge + 5000, Y: up + 3000}, style{size: 2600, up: true, anchor: drawing.Right}, "check these bars")
}

// bar draws a line of exact length with ticks between its parts, level to the
// right or plumb upwards.
func (l *leaf) bar(at drawing.Point, up bool, long drawing.Micron, parts int, name string) {
	place := func(along, across drawing.Micron) drawing.Point {
		if up {
			return drawing.Point{X: at.X - across, Y: at.Y - along}
		}
		return drawing.Point{X: at.X + along, Y: at.Y - across}
	}
	l.line(ink(drawing.Black, 250), place(0, 0), place(long, 0))
	for i := range parts + 1 {
		high := drawing.Micron(1100)
		if i == 0 || i == parts {
			high = 2400
		}
		x := long * drawing.Micron(i) / drawing.Micron(parts)
		l.line(ink(drawing.Black, 250), place(x, 0), place(x, high))
	}
	s := style{size: 2600, bold: true, up: up}
	l.text(place(long+1500, 0), s, name)
}

// scaleBar draws a round length of the wall at the sheet's scale; lists have
// it at full size.
func (b *book) scaleBar(l *leaf, at drawing.Point) {
	scale, units, note := l.scale, b.plan.Room.Units, ""
	if scale.Real <= 1 {
		scale, note = full, ", full size"
	}
	most := l.size.X - edge - at.X - 1500 - style{size: 2600, bold: true}.width("1000 mm"+note)
	real := roundLengths(units)[0]
	for _, r := range roundLengths(units) {
		if scale.On(r) <= most {
			real = r
		}
	}
	long := scale.On(real)
	for i, fill := range []drawing.Colour{drawing.Black, drawing.White, drawing.Black, drawing.White} {
		n := drawing.Micron(i)
		l.box(drawing.Ink{Fill: fill, Line: drawing.Black, Width: 250},
			drawing.Point{X: at.X + long*n/4, Y: at.Y - 1800}, drawing.Point{X: at.X + long*(n+1)/4, Y: at.Y})
	}
	l.text(drawing.Point{X: at.X + long + 1500, Y: at.Y}, style{size: 2600, bold: true}, real.Format(units, 0)+note)
}

// roundLengths are what a scale bar may stand for, ascending.
func roundLengths(u length.System) []length.Length {
	unit, counts := length.Inch, []length.Length{1, 2, 4, 6, 12, 24, 48, 120, 240, 480, 1200}
	if u == length.Metric {
		unit, counts = length.Millimetre, []length.Length{20, 40, 100, 200, 400, 1000, 2000, 4000, 10000, 20000}
	}
	out := make([]length.Length, len(counts))
	for i, c := range counts {
		out[i] = unit * c
	}
	return out
}

// full is full size.
var full = drawing.Scale{Paper: 1, Real: 1}

// ladder lists the scales a drawing may have, the largest first: 1:5 to 1:20,
// or 3 in to 1/2 in to the foot, and smaller ones for walls that no paper
// would take otherwise.
func ladder(u length.System) []drawing.Scale {
	if u == length.Metric {
		out := []drawing.Scale{{Paper: 1, Real: 5}, {Paper: 1, Real: 10}, {Paper: 2, Real: 25}, {Paper: 1, Real: 15}}
		for _, r := range []int64{20, 25, 50, 100, 200, 500, 1000} {
			out = append(out, drawing.Scale{Paper: 1, Real: r})
		}
		return out
	}
	var out []drawing.Scale
	for _, r := range []int64{4, 8, 12, 16, 24, 32, 48, 96, 192, 384, 768} {
		out = append(out, drawing.Scale{Paper: 1, Real: r})
	}
	return out
}

// scaleText names a scale as the trade does: 1:10, 1" to the foot.
func scaleText(s drawing.Scale, u length.System) string {
	switch {
	case s.Real == 0:
		return "no scale"
	case s.Paper == 2:
		return "1:" + strconv.FormatInt(s.Real/2, 10) + ".5"
	case u == length.Metric || s.Real < 4:
		return "1:" + strconv.FormatInt(s.Real, 10)
	}
	inch := length.Foot / length.Length(s.Real)
	return inch.Format(u, 0) + ` = 1'-0"`
}
