package drawing

// Room is the box that a text takes on paper, from its upper left corner to its
// lower right one.
func (l Label) Room() (from, to Point) {
	b := l.box()
	return b.from, b.to
}

// Moved is the scene with all its elements moved right and down; it is for
// laying scenes on a larger one.
func (s Scene) Moved(by Point) Scene {
	to := func(p Point) Point { return Point{p.X + by.X, p.Y + by.Y} }
	moved := s
	moved.Elements = make([]Element, 0, len(s.Elements))
	for _, e := range s.Elements {
		switch e := e.(type) {
		case Path:
			rings := make([][]Point, len(e.Rings))
			for i, ring := range e.Rings {
				for _, p := range ring {
					rings[i] = append(rings[i], to(p))
				}
			}
			e.Rings = rings
			moved.Elements = append(moved.Elements, e)
		case Disc:
			e.Centre = to(e.Centre)
			moved.Elements = append(moved.Elements, e)
		case Tiles:
			runs := make([]Run, len(e.Runs))
			for i, r := range e.Runs {
				r.X, r.Y = r.X+float64(by.X), r.Y+float64(by.Y)
				runs[i] = r
			}
			e.Runs = runs
			moved.Elements = append(moved.Elements, e)
		case Label:
			e.At = to(e.At)
			moved.Elements = append(moved.Elements, e)
		}
	}
	return moved
}
