package sheet

import (
	"strings"

	"coursewright/layout/cuts"
	"coursewright/layout/plane"
	"coursewright/web/drawing"
)

// marked tells whether a line is cut from mark to mark, each measured from a corner: where a fence does not hold the tile.
func (b *book) marked(g cuts.Group) bool {
	switch {
	case g.How != cuts.Fence || len(g.Saws) == 0 || g.Outline == nil || len(g.Size.Notches)+len(g.Size.Holes) > 0 || g.Kind == "rip, cross cut":
		return false
	case g.Pointed() && g.Kind == "cross cut" && len(g.Saws) == 1:
		return !straightAcross(g)
	}
	return g.Slanted() || g.Kind != "cross cut" && g.Kind != "rip"
}

// straightAcross tells whether a tile with points is cut once along the side that it lies on: then a fence holds it.
func straightAcross(g cuts.Group) bool {
	sawn := strings.Join(g.Cut, " ")
	return g.Pointed() && g.Kind == "cross cut" && len(g.Saws) == 1 && (sawn == "top" || sawn == "bottom")
}

// How high a line is at least whose tile is about as high as wide and has its corners named: beside the
// tile, or over and under it too.
const (
	besideLine = 11 * mmPaper
	markedLine = 14 * mmPaper
)

// sketchLine is how high the sketch of a line wants it.
func (f *flow) sketchLine(g cuts.Group) drawing.Micron {
	switch box := (plane.Region{g.Outline}).Bounds(); {
	case !f.book.marked(g) || 2*box.Height() <= box.Width():
		return 0
	case drawing.Beside(g.Outline):
		return besideLine
	}
	return markedLine
}

// laidSketch draws a piece of a pattern in its tile as it lies, long edge down, with
// every corner named where marks are measured from them.
func (f *flow) laidSketch(g cuts.Group, lo, hi drawing.Point) {
	letters, over := drawing.Micron(0), drawing.Micron(0) // beside the tile, and over and under it
	if f.book.marked(g) {
		letters = 2600
		if !drawing.Beside(g.Outline) {
			over = letters
		}
	}
	box := plane.Region{g.Outline}.Bounds()
	s := within(plane.Rect{Right: box.Width(), Top: box.Height()}, hi.X-lo.X-2*letters, hi.Y-lo.Y-2*over)
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
		f.letter(p, ring[(i+len(ring)-1)%len(ring)], ring[(i+1)%len(ring)], string(rune('A'+i)), over == 0)
	}
}

// letter names the corner of a sketch that stands between two others, outside the tile.
func (f *flow) letter(p, before, after drawing.Point, is string, beside bool) {
	at, name := drawing.LetterAt(p, before, after, leastText, beside), style{size: leastText}
	f.text(drawing.Point{X: at.X - name.width(is)/2, Y: at.Y}, name, is)
}
