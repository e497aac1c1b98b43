package sheet

import (
	"strings"

	"coursewright/layout/cuts"
	"coursewright/layout/plane"
	"coursewright/web/drawing"
)

// marked tells whether a line is cut from mark to mark, each measured from a corner.
func (b *book) marked(g cuts.Group) bool {
	_, small := b.fence(g)
	return g.Outline != nil && strings.HasPrefix(small, "marks ")
}

// markedLine is how high a line is at least whose tile is about as high as wide and has its
// corners named.
const markedLine = 15 * mmPaper

// sketchLine is how high the sketch of a line wants it.
func (f *flow) sketchLine(g cuts.Group) drawing.Micron {
	if box := (plane.Region{g.Outline}).Bounds(); f.book.marked(g) && 2*box.Height() > box.Width() {
		return markedLine
	}
	return 0
}

// laidSketch draws a piece of a pattern in its tile as it lies, long edge down, with
// every corner named where marks are measured from them.
func (f *flow) laidSketch(g cuts.Group, lo, hi drawing.Point) {
	letters := drawing.Micron(0) // beside the tile, and over and under it
	if f.book.marked(g) {
		letters = 2600
	}
	box := plane.Region{g.Outline}.Bounds()
	s := within(plane.Rect{Right: box.Width(), Top: box.Height()}, hi.X-lo.X-2*letters, hi.Y-lo.Y-2*letters)
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
	for i, p := range ring {
		if letters == 0 {
			break
		}
		f.letter(p, ring[(i+len(ring)-1)%len(ring)], ring[(i+1)%len(ring)], string(rune('A'+i)))
	}
}

// letter names the corner of a sketch that stands between two others, outside the tile: under its
// lower side, over its upper one, or beside it where one of its sides goes up and one goes down.
func (f *flow) letter(p, before, after drawing.Point, is string) {
	name := style{size: leastText}
	x, y := p.X-name.width(is)/2, p.Y+leastText/3
	const off = leastText * 3 / 5
	switch {
	case before.Y <= p.Y && after.Y <= p.Y:
		y += off
	case before.Y >= p.Y && after.Y >= p.Y:
		y -= off
	}
	switch mid := (before.X + after.X) / 2; {
	case p.X < mid:
		x -= off
	case p.X > mid:
		x += off
	}
	f.text(drawing.Point{X: x, Y: y}, name, is)
}
