package drawing

import "coursewright/layout/plane"

// Sketch draws one piece as seen from its face, cut edges heavy and factory
// edges thin, beside an arrow that points up. It fills a box of the given size
// as far as its shape allows. An empty face gives an empty scene.
func Sketch(face plane.Region, wide, high Micron, title string) Scene {
	if len(face) == 0 {
		return Scene{}
	}
	const margin, arrow = 1500, 7000
	box := face.Bounds()
	s := Scene{Width: wide, Height: high, Title: title}
	scale := fit(box.Width(), wide-arrow-2*margin).or(fit(box.Height(), high-2*margin))
	at := Point{arrow + (wide-arrow-scale.On(box.Width()))/2, (high + scale.On(box.Height())) / 2}
	place := func(p plane.Point) Point {
		return Point{at.X + scale.On(p.X-box.Left), at.Y - scale.On(p.Y-box.Bottom)}
	}
	tag := Tag{Kind: Note, Wall: -1}
	s.Elements = append(faceOf(face, place),
		Path{Tag: tag, Ink: line(Black, 350), Rings: [][]Point{{{3000, 12000}, {3000, 5000}}}, Open: true},
		Path{Tag: tag, Ink: fill(Black), Rings: [][]Point{{{3000, 2000}, {4400, 5600}, {1600, 5600}}}})
	return s
}

// Marked puts a heavy edge round some pieces of a drawing, over all else. The
// flags of what was found at them stay as they are.
func (s Scene) Marked(ids []string) Scene {
	marked := map[string]bool{}
	for _, id := range ids {
		marked[id] = true
	}
	var over []Element
	for _, e := range s.Elements {
		if p, ok := e.(Path); ok && marked[p.Piece] && p.Kind != Start && p.Kind != Finding {
			over = append(over, Path{Tag: Tag{Kind: Start, Wall: p.Wall}, Ink: line(Blue, 1200), Rings: p.Rings})
		}
	}
	s.Elements = append(s.Elements[:len(s.Elements):len(s.Elements)], over...)
	return s
}
