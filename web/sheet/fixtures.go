package sheet

import (
	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// fixtureMarks adds the fixtures of a wall to the marks: along it, and in height
// from the level line and over the rim under it.
func (b *book) fixtureMarks(w layout.Wall, add func(mark, x, y string)) {
	for _, p := range w.Fixtures {
		x := "middle " + b.bareTape(p.At.X)
		switch {
		case p.Found.Kind == survey.GlassLine:
			y := ""
			for i, h := range p.Holes {
				if i > 0 {
					y += ", "
				}
				y += b.heightOf(w, h.At.X, h.At.Y)
			}
			add(p.Found.Name, "line "+b.bareTape(p.At.X), y)
			continue
		case p.Found.Flush:
			continue // its hole is told among the openings
		case p.Found.InCorner() && p.Found.Right:
			x = "right corner"
		case p.Found.InCorner():
			x = "left corner"
		}
		add(p.Found.Name, held(x), b.heightOf(w, p.At.X, p.At.Y))
	}
}

// heightOf is a height from the level line, and over the rim under it.
func (b *book) heightOf(w layout.Wall, x, y length.Length) string {
	text := held(b.signed(y))
	for _, s := range w.Found.Base {
		n := len(s.Readings)
		if s.Meets.Rim() && n > 0 && s.Readings[0].At <= x && x <= s.Readings[n-1].At {
			return text + held(" ("+b.bareTape(y-survey.At(s.Readings, x))+" over the "+string(s.Meets)+")")
		}
	}
	return text
}
