package drawing

import (
	"slices"

	"coursewright/layout/plane"
)

// CutSketch draws a piece as it is cut: of a pattern as its tile lies on the saw, of a course upright.
func CutSketch(face plane.Region, tile plane.Ring, wide, high Micron, title string) Scene {
	if tile != nil {
		return Laid(face, tile, wide, high, title)
	}
	return Sketch(face, wide, high, title)
}

// Laid draws a piece of a pattern as its tile lies on the saw, long edge down, seen from the face: the tile dashed
// round it, and its corners named as marks on its edges are told from them. It fills a box of the given size as far
// as its shape allows. An empty face gives an empty scene.
func Laid(face plane.Region, tile plane.Ring, wide, high Micron, title string) Scene {
	if len(face) == 0 || len(tile) == 0 {
		return Scene{}
	}
	const size, margin = 13 * px, 1500
	over := Micron(0) // room for letters over and under the tile
	if !Beside(tile) {
		over = size
	}
	s := Scene{Width: wide, Height: high, Title: title}
	box := plane.Region{tile}.Bounds()
	scale := fit(box.Width(), wide-2*size-2*margin).or(fit(box.Height(), high-2*over-2*margin))
	at := Point{(wide - scale.On(box.Width())) / 2, (high + scale.On(box.Height())) / 2}
	place := func(p plane.Point) Point {
		return Point{at.X + scale.On(p.X-box.Left), at.Y - scale.On(p.Y-box.Bottom)}
	}
	tag := Tag{Kind: Note, Wall: -1}
	whole := cornersAt(tile, place)
	s.Elements = append(s.Elements, Path{Tag: tag, Ink: Ink{Fill: None, Line: Grey, Width: 250, Dash: Hidden}, Rings: [][]Point{whole}})
	s.Elements = append(s.Elements, faceOf(face, place)...)
	for i, p := range whole {
		spot := LetterAt(p, whole[(i+len(whole)-1)%len(whole)], whole[(i+1)%len(whole)], size, over == 0)
		s.Elements = append(s.Elements, Label{Tag: tag, At: spot, Size: size, Text: string(rune('A' + i)), Anchor: Middle})
	}
	return s
}

func cornersAt(r plane.Ring, place func(plane.Point) Point) (out []Point) {
	for _, c := range r {
		out = append(out, place(c.Point))
	}
	return out
}

// faceOf draws what is left of a tile, cut edges heavy and factory edges thin.
func faceOf(face plane.Region, place func(plane.Point) Point) []Element {
	var rings, sawn [][]Point
	for _, ring := range face {
		rings = append(rings, cornersAt(ring, place))
	}
	edges(face, func(side plane.Side) bool { return side != 0 }, func(a, z plane.Corner) {
		sawn = append(sawn, []Point{place(a.Point), place(z.Point)})
	})
	tag := Tag{Kind: Note, Wall: -1}
	return []Element{
		Path{Tag: tag, Ink: Ink{Fill: Pale, Line: Black, Width: 250}, Rings: rings},
		Path{Tag: tag, Ink: line(Black, 900), Rings: sawn, Open: true},
	}
}

// Beside tells whether the corners of a tile are named beside it: where it is a rectangle as it lies. Beside
// a side that leans out a letter would stand on the tile.
func Beside(tile plane.Ring) bool {
	return !slices.ContainsFunc(tile, func(c plane.Corner) bool {
		return !slices.ContainsFunc(tile, func(d plane.Corner) bool { return d.X == c.X && d.Y != c.Y })
	}) && len(tile) == 4
}

// LetterAt is where the letter of a tile's corner stands, from its middle, that is between two other corners: outside the
// tile, under its lower side, over its upper one, or beside it where one of its sides goes up and one goes down.
// Where all are named beside it, a lower one is level with the tile's foot and an upper one with its top.
func LetterAt(p, before, after Point, size Micron, beside bool) Point {
	off := size * 3 / 5
	out, at := off, Point{p.X, p.Y + size/3}
	if beside {
		out = -size / 3
	}
	switch {
	case before.Y <= p.Y && after.Y <= p.Y:
		at.Y += out
	case before.Y >= p.Y && after.Y >= p.Y:
		at.Y -= out
	}
	switch mid := (before.X + after.X) / 2; {
	case p.X < mid:
		at.X -= off
	case p.X > mid:
		at.X += off
	}
	return at
}
