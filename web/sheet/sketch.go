package sheet

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/web/drawing"
)

// bare writes a length to the fine step: millimetres without their unit, which
// the sheet says once.
func (b *book) bare(l length.Length) string {
	if u := b.plan.Room.Units; u == length.Metric {
		return l.Plain(u, u.FineStep())
	}
	return b.fine(l)
}

// within is the scale at which a box fits a space.
func within(r plane.Rect, wide, high drawing.Micron) drawing.Scale {
	mm := func(v length.Length) int64 { return max(1, int64(v/length.Millimetre)+1) }
	s := drawing.Scale{Paper: int64(wide), Real: mm(r.Width()) * 1000}
	if t := (drawing.Scale{Paper: int64(high), Real: mm(r.Height()) * 1000}); t.Paper*s.Real < s.Paper*t.Real {
		return t
	}
	return s
}

// face draws a piece: cut edges heavy, factory edges thin.
func (l *leaf) face(r plane.Region, place func(plane.Point) drawing.Point) {
	var rings, sawn [][]drawing.Point
	for _, ring := range r {
		var pts []drawing.Point
		for i, c := range ring {
			pts = append(pts, place(c.Point))
			if c.On != 0 {
				sawn = append(sawn, []drawing.Point{place(c.Point), place(ring[(i+1)%len(ring)].Point)})
			}
		}
		rings = append(rings, pts)
	}
	l.put(drawing.Path{Ink: drawing.Ink{Fill: drawing.Pale, Line: drawing.Black, Width: 250}, Rings: rings})
	if len(sawn) > 0 {
		l.put(drawing.Path{Ink: ink(drawing.Black, 700), Rings: sawn, Open: true})
	}
}

// arrow points up from a place.
func (l *leaf) arrow(at drawing.Point) {
	l.line(ink(drawing.Black, 350), at, drawing.Point{X: at.X, Y: at.Y - 5500})
	l.put(drawing.Path{Ink: drawing.Ink{Fill: drawing.Black, Line: drawing.None},
		Rings: [][]drawing.Point{{{X: at.X, Y: at.Y - 7000}, {X: at.X + 1100, Y: at.Y - 4500}, {X: at.X - 1100, Y: at.Y - 4500}}}})
}
