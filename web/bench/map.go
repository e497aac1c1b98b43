package bench

import (
	"strconv"

	"coursewright/layout/length"
	"coursewright/web/drawing"
)

// PhaseMap is what the map of a wall's phases needs to be clicked and dragged on. Figures
// count steps of the tape; Field are the parts of the picture's width and height at which
// its field begins and ends.
type PhaseMap struct {
	Number                 string // of the wall, from 1
	Edge, Across, Wide     string // of the first entry, to the next, and over all
	Line, Up, High         string
	Left, Top, Right, Foot string
	Per                    string
	Text, Min, Max, Value  string // the slider of the line
}

// phases is the map of one wall, or nil where it is laid in courses.
func (b Bench) phases(i int) *PhaseMap {
	m := b.Plan.Walls[i].Start.Map
	if m == nil {
		return nil
	}
	step := b.TapeStep()
	steps := func(l length.Length) string { return strconv.FormatFloat(float64(l)/float64(step), 'f', 4, 64) }
	lo, hi := drawing.MapField()
	size := drawing.MapSize()
	part := func(a, of drawing.Micron) string { return strconv.FormatFloat(float64(a)/float64(of), 'f', 5, 64) }
	whole := func(l length.Length) string { return strconv.FormatInt(length.DivFloor(l, step), 10) }
	return &PhaseMap{
		Number: strconv.Itoa(i + 1), Per: b.per(),
		Edge: steps(m.Edge), Across: steps(m.Across), Wide: steps(length.Length(m.Columns) * m.Across),
		Line: steps(m.Line), Up: steps(m.Up), High: steps(length.Length(m.Rows()) * m.Up),
		Left: part(lo.X, size.X), Top: part(lo.Y, size.Y), Right: part(hi.X, size.X), Foot: part(hi.Y, size.Y),
		Text: "line at " + b.Tape(b.Plan.Setout.Line), Min: whole(m.Line), Max: whole(m.Line + m.Rise), Value: whole(b.Plan.Setout.Line),
	}
}
