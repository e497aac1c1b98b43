package sheet

import (
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/web/drawing"
)

// sketch draws a piece as seen from its face into a box, as large as it fits,
// with its width under it, its heights beside it and an arrow up.
func (b *book) sketch(l *leaf, g cuts.Group, lo, hi drawing.Point) {
	bounds := g.Sketch.Bounds()
	const side, under = 14500, 5500
	wide, high := hi.X-lo.X-side-2000, hi.Y-lo.Y-under
	s := within(bounds, wide, high)
	w, h := s.On(bounds.Width()), s.On(bounds.Height())
	at := drawing.Point{X: lo.X + 4000 + (wide-w)/2, Y: lo.Y + (high-h)/2 + h}
	place := func(p plane.Point) drawing.Point {
		return drawing.Point{X: at.X + s.On(p.X-bounds.Left), Y: at.Y - s.On(p.Y-bounds.Bottom)}
	}
	l.face(g.Sketch, place)
	figures := style{size: 3400, bold: true}
	l.text(drawing.Point{X: at.X + w/2, Y: at.Y + 4200}, figures.to(drawing.Middle), b.fine(g.Size.Width))
	if left, right := g.Size.Left, g.Size.Right; left != right && left > 0 && right > 0 {
		l.text(drawing.Point{X: at.X - 800, Y: at.Y - h/2 + 1200}, figures.to(drawing.Right), b.fine(left))
		l.text(drawing.Point{X: at.X + w + 800, Y: at.Y - h/2 + 1200}, figures, b.fine(right))
	} else {
		l.text(drawing.Point{X: at.X + w + 800, Y: at.Y - h/2 + 1200}, figures, b.fine(g.Size.Height))
	}
	l.arrow(drawing.Point{X: lo.X + 1800, Y: hi.Y - 1500})
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
	l.line(ink(drawing.Black, 350), at, drawing.Point{X: at.X, Y: at.Y - 7000})
	l.put(drawing.Path{Ink: drawing.Ink{Fill: drawing.Black, Line: drawing.None},
		Rings: [][]drawing.Point{{{X: at.X, Y: at.Y - 9000}, {X: at.X + 1300, Y: at.Y - 6000}, {X: at.X - 1300, Y: at.Y - 6000}}}})
}
