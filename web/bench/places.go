package bench

import (
	"fmt"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// What the map of places takes on a phone, and how far its walls stand apart, in pixels.
const (
	mapWide, mapHigh = 358, 78
	mapApart         = 10
	mapEdge          = 4
)

// placesMap is the room in small, over the question that a phone asks: its walls side by side on the level line, and the
// stretch to measure for each figure. It fills its place: it is no drawing to scale.
type placesMap struct {
	walls      []survey.WallFound
	top        length.Length
	wide, high length.Length // of a tenth of a pixel along the walls, and up
}

func mapOf(walls []survey.WallFound) placesMap {
	m := placesMap{walls: walls}
	low, across := length.Length(0), length.Length(0)
	for _, w := range walls {
		across += w.Width
		for _, p := range outlineOf(w) {
			m.top, low = max(m.top, p.Y), min(low, p.Y)
		}
	}
	m.wide = across/length.Length(max(1, 10*(mapWide-2*mapEdge-mapApart*(len(walls)-1)))) + 1
	m.high = (m.top-low)/(10*(mapHigh-2*mapEdge)) + 1
	return m
}

// outlineOf is a wall's tile as found: along its base from the left, and back along its head.
func outlineOf(w survey.WallFound) (out []plane.Point) {
	for _, s := range w.Base {
		for _, r := range s.Readings {
			out = append(out, plane.Point{X: r.At, Y: r.Value})
		}
	}
	if !w.Head.Meets {
		return append(out, plane.Point{X: w.Width, Y: w.Head.Stops.To}, plane.Point{Y: w.Head.Stops.To})
	}
	for i := range w.Head.Readings {
		r := w.Head.Readings[len(w.Head.Readings)-1-i]
		out = append(out, plane.Point{X: r.At, Y: r.Value})
	}
	return out
}

// headOf is how many points of the outline are the wall's head.
func headOf(w survey.WallFound) int {
	if w.Head.Meets {
		return len(w.Head.Readings)
	}
	return 2
}

// at is a place of a wall on the map, in pixels.
func (m placesMap) at(wall int, p plane.Point) string {
	x := p.X/m.wide + 10*mapEdge
	for i := range wall {
		x += m.walls[i].Width/m.wide + 10*mapApart
	}
	y := (m.top-p.Y)/m.high + 10*mapEdge
	return fmt.Sprintf("%d.%d %d.%d", x/10, x%10, y/10, y%10)
}

// outline draws a wall.
func (m placesMap) outline(wall int) string {
	var out []string
	for _, p := range outlineOf(m.walls[wall]) {
		out = append(out, m.at(wall, p))
	}
	return "M" + strings.Join(out, "L") + "z"
}

// letter is where the letter of a wall stands, right of its left end and over the level line.
func (m placesMap) letter(wall int) (x, y string) {
	at := strings.Fields(m.at(wall, plane.Point{X: 60 * m.wide, Y: 50 * m.high}))
	return at[0], at[1]
}

// level draws the level line from edge to edge.
func (m placesMap) level() string {
	y := strings.Fields(m.at(0, plane.Point{}))[1]
	return fmt.Sprintf("M0 %sH%d", y, mapWide)
}

// stretch draws what is measured for the figure at a path; nothing where it has no place on the walls.
func (m placesMap) stretch(path string) string {
	parts := form.Parts(path)
	if len(parts) < 3 || parts[0].Name != "walls" || parts[1].Index < 0 || parts[1].Index >= len(m.walls) {
		return ""
	}
	wall, w := parts[1].Index, m.walls[parts[1].Index]
	a, b, known := stretchOf(w, parts[2:])
	if !known {
		return ""
	}
	return "M" + m.at(wall, a) + "L" + m.at(wall, b)
}

// stretchOf is from where to where the tape is held for a figure of a wall.
func stretchOf(w survey.WallFound, parts []form.Part) (a, b plane.Point, known bool) {
	switch {
	case parts[0].Name == "width":
		return plane.Point{}, plane.Point{X: w.Width}, true
	case parts[0].Name == "head" && len(parts) > 1 && parts[1].Name == "stops":
		x := w.Width.Half()
		return plane.Point{X: x}, plane.Point{X: x, Y: w.Head.Stops.To}, true
	case parts[0].Name == "head" && len(parts) > 3:
		return readingOf(w, w.Head.Readings, parts[2].Index, parts[3].Name == "at")
	case parts[0].Name == "base" && len(parts) > 4 && parts[1].Index >= 0 && parts[1].Index < len(w.Base):
		return readingOf(w, w.Base[parts[1].Index].Readings, parts[3].Index, parts[4].Name == "at")
	case parts[0].Name == "left" || parts[0].Name == "right": // whether a corner leans
		line := outlineOf(w)
		b = line[len(line)-1]
		if parts[0].Name == "right" {
			b = line[len(line)-headOf(w)]
		}
		return plane.Point{X: b.X}, b, true
	}
	return a, b, false
}

// readingOf is from the level line to a reading, or along the wall to it from where the tape is held: the corner.
func readingOf(w survey.WallFound, all []survey.Reading, k int, along bool) (a, b plane.Point, known bool) {
	if k < 0 || k >= len(all) {
		return a, b, false
	}
	b = plane.Point{X: all[k].At, Y: all[k].Value}
	a = plane.Point{X: b.X}
	if along {
		a = plane.Point{Y: b.Y}
		if !w.Left.Meets && w.Right.Meets {
			a.X = w.Width
		}
	}
	return a, b, true
}
