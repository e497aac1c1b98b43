package sheet

import (
	"coursewright/layout/cuts"
	"coursewright/layout/plane"
	"coursewright/web/drawing"
)

// laidSketch draws a piece of a pattern in its tile as it lies, long edge down, with
// the first two corners named where there is room.
func (f *flow) laidSketch(g cuts.Group, lo, hi drawing.Point) {
	const letters = 2600
	box := plane.Region{g.Outline}.Bounds()
	s := within(plane.Rect{Right: box.Width(), Top: box.Height()}, hi.X-lo.X-2*letters, hi.Y-lo.Y)
	corner := drawing.Point{X: lo.X + letters, Y: (lo.Y + hi.Y + s.On(box.Height())) / 2}
	at := func(p plane.Point) drawing.Point {
		return drawing.Point{X: corner.X + s.On(p.X-box.Left), Y: corner.Y - s.On(p.Y-box.Bottom)}
	}
	var ring []drawing.Point
	for _, c := range g.Outline {
		ring = append(ring, at(c.Point))
	}
	f.own.Elements = append(f.own.Elements, drawing.Path{Tag: drawing.Tag{Kind: drawing.Note, Wall: -1},
		Ink: drawing.Ink{Fill: drawing.None, Line: drawing.Grey, Width: 180, Dash: drawing.Hidden}, Rings: [][]drawing.Point{ring}})
	f.face(g.Sketch, at)
	name := style{size: leastText}
	a, b := at(g.Outline[0].Point), at(g.Outline[1].Point)
	f.text(drawing.Point{X: a.X - name.width("A") - 400, Y: a.Y}, name, "A")
	f.text(drawing.Point{X: b.X + 400, Y: b.Y}, name, "B")
}
