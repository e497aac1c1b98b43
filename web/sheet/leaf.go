package sheet

import (
	"codeberg.org/go-pdf/fpdf"

	"coursewright/web/drawing"
)

// subject is what a sheet shows, for its title block.
type subject struct {
	kind  Kind
	title string
	wall  string // "B, back", or empty for the whole room
	scale drawing.Scale
}

// leaf is one sheet in the making: elements measured from its upper left
// corner, and whole scenes laid on it.
type leaf struct {
	subject
	size  drawing.Point
	also  []Kind // of the lists that follow on it
	own   drawing.Scene
	parts []part
}

type part struct {
	at    drawing.Point
	scene drawing.Scene
}

const (
	edge  = 11 * mmPaper // nothing nearer to the edge of the paper
	ruler = 11 * mmPaper // the column of the upright bars
)

// area is where the content goes, between two corners.
func (l *leaf) area() (lo, hi drawing.Point) {
	return drawing.Point{X: edge + ruler, Y: edge}, drawing.Point{X: l.size.X - edge, Y: l.size.Y - edge - blockHeight - 1000}
}

func (l *leaf) put(e ...drawing.Element) { l.own.Elements = append(l.own.Elements, e...) }

// lay puts a scene with its upper left corner at a place.
func (l *leaf) lay(at drawing.Point, s drawing.Scene) { l.parts = append(l.parts, part{at, s}) }

// print draws the leaf on the current page.
func (l *leaf) print(pdf *fpdf.Fpdf) {
	for _, p := range l.parts {
		p.scene.Draw(NewPen(pdf, mm(p.at.X), mm(p.at.Y)))
	}
	l.own.Draw(NewPen(pdf, 0, 0))
}

// ink of one line.
func ink(c drawing.Colour, width drawing.Micron) drawing.Ink {
	return drawing.Ink{Fill: drawing.None, Line: c, Width: width}
}

func (l *leaf) line(i drawing.Ink, pts ...drawing.Point) {
	l.put(drawing.Path{Ink: i, Rings: [][]drawing.Point{pts}, Open: true})
}

func (l *leaf) box(i drawing.Ink, a, b drawing.Point) {
	l.put(drawing.Path{Ink: i, Rings: [][]drawing.Point{{a, {X: b.X, Y: a.Y}, b, {X: a.X, Y: b.Y}}}})
}

// text writes one line with its baseline at a place.
func (l *leaf) text(at drawing.Point, s style, text string) {
	if text == "" {
		return
	}
	l.put(drawing.Label{Text: text, At: at, Size: s.size, Bold: s.bold, Colour: s.colour, Anchor: s.anchor, Up: s.up})
}
