package sheet

import (
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/web/drawing"
)

// figures are what a sketch says at its four sides; empty where nothing is said.
type figures struct{ left, right, under, over string }

// figures of a group: one height and one width, or both of a taper.
func (b *book) figures(s cuts.Size) figures {
	f := figures{right: b.bare(s.Height), under: b.bare(s.Width)}
	if s.Left != s.Right && s.Left > 0 && s.Right > 0 {
		f.left, f.right = b.bare(s.Left), b.bare(s.Right)
	}
	if s.Bottom != s.Top && s.Bottom > 0 && s.Top > 0 {
		f.under, f.over = b.bare(s.Bottom), b.bare(s.Top)
	}
	return f
}

// bare writes a length for a sketch: millimetres without their unit, which the
// sheet says once.
func (b *book) bare(l length.Length) string {
	if u := b.plan.Room.Units; u == length.Metric {
		return l.Plain(u, u.FineStep())
	}
	return b.fine(l)
}

// sketch draws a piece as seen from its face into a box, as large as it fits
// between its figures, with an arrow up.
func (b *book) sketch(l *leaf, g cuts.Group, lo, hi drawing.Point) {
	f, st := b.figures(g.Size), style{size: 3400, bold: true}
	const away, row = 800, 4600
	lo.X += 4000 // the arrow
	left, right := st.width(f.left)+away, st.width(f.right)+away
	space := drawing.Point{X: hi.X - lo.X - left - right, Y: hi.Y - lo.Y - row}
	if f.over != "" {
		lo.Y, space.Y = lo.Y+row, space.Y-row
	}
	bounds := g.Sketch.Bounds()
	s := within(bounds, space.X, space.Y)
	w, h := s.On(bounds.Width()), s.On(bounds.Height())
	at := drawing.Point{X: lo.X + left + (space.X-w)/2, Y: lo.Y + (space.Y+h)/2}
	l.face(g.Sketch, func(p plane.Point) drawing.Point {
		return drawing.Point{X: at.X + s.On(p.X-bounds.Left), Y: at.Y - s.On(p.Y-bounds.Bottom)}
	})
	middle := at.Y - h/2 + 1200
	l.text(drawing.Point{X: at.X - away, Y: middle}, st.to(drawing.Right), f.left)
	l.text(drawing.Point{X: at.X + w + away, Y: middle}, st, f.right)
	l.text(drawing.Point{X: at.X + w/2, Y: at.Y + 4000}, st.to(drawing.Middle), f.under)
	l.text(drawing.Point{X: at.X + w/2, Y: at.Y - h - 1200}, st.to(drawing.Middle), f.over)
	l.arrow(drawing.Point{X: lo.X - 2200, Y: hi.Y - 1500})
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
