// Package sheet writes drawings and lists as printed pages, in PDF at true scale.
package sheet

import (
	"codeberg.org/go-pdf/fpdf"

	"coursewright/web/drawing"
)

// Pen draws a scene on the current page of a PDF whose unit is the
// millimetre: 1 mm of the scene is 1 mm of paper. Its upper left corner lies
// at x, y. The fonts of AddFonts must have been added.
type Pen struct {
	pdf  *fpdf.Fpdf
	x, y float64
}

// NewPen places a scene's upper left corner at x, y in millimetres.
func NewPen(pdf *fpdf.Fpdf, x, y float64) *Pen { return &Pen{pdf, x, y} }

var _ drawing.Pen = (*Pen)(nil)

func (p *Pen) at(q drawing.Point) (x, y float64) { return p.x + mm(q.X), p.y + mm(q.Y) }

func mm(m drawing.Micron) float64 { return float64(m) / 1000 }

// Path fills by the even-odd rule, hatches inside the path and then draws its
// line.
func (p *Pen) Path(e drawing.Path) {
	if e.Fill != drawing.None {
		p.fill(e.Fill)
		p.trace(e.Rings, false)
		p.pdf.DrawPath("F*")
	}
	if e.Hatch != drawing.Plain {
		p.hatch(e)
	}
	if e.Line != drawing.None {
		p.line(e.Ink)
		p.trace(e.Rings, e.Open)
		p.pdf.DrawPath("D")
	}
}

// Disc fills a circle and draws its line.
func (p *Pen) Disc(e drawing.Disc) {
	x, y := p.at(e.Centre)
	if e.Fill != drawing.None {
		p.fill(e.Fill)
		p.pdf.Circle(x, y, mm(e.Radius), "F")
	}
	if e.Line != drawing.None {
		p.line(e.Ink)
		p.pdf.Circle(x, y, mm(e.Radius), "D")
	}
}

// Label writes text; its own width places it, so an anchor is exact.
func (p *Pen) Label(e drawing.Label) {
	weight, text := "", printable(e.Text)
	if e.Bold {
		weight = "B"
	}
	p.pdf.SetFont(Font, weight, points(mm(e.Size)))
	r, g, b := rgb(e.Colour)
	p.pdf.SetTextColor(r, g, b)
	x, y := p.at(e.At)
	back := 0.0
	switch e.Anchor {
	case drawing.Middle:
		back = p.pdf.GetStringWidth(text) / 2
	case drawing.Right:
		back = p.pdf.GetStringWidth(text)
	}
	turn := float64(e.Turn)
	switch {
	case e.Up:
		turn = 90
	case turn == 0:
		p.pdf.Text(x-back, y, text)
		return
	}
	p.pdf.TransformBegin()
	p.pdf.TransformRotate(turn, x, y)
	p.pdf.Text(x-back, y, text)
	p.pdf.TransformEnd()
}

func (p *Pen) trace(rings [][]drawing.Point, open bool) {
	for _, ring := range rings {
		for i, q := range ring {
			x, y := p.at(q)
			if i == 0 {
				p.pdf.MoveTo(x, y)
				continue
			}
			p.pdf.LineTo(x, y)
		}
		if !open {
			p.pdf.ClosePath()
		}
	}
}

func (p *Pen) fill(c drawing.Colour) {
	r, g, b := rgb(c)
	p.pdf.SetFillColor(r, g, b)
}

func (p *Pen) line(i drawing.Ink) {
	r, g, b := rgb(i.Line)
	p.pdf.SetDrawColor(r, g, b)
	p.pdf.SetLineWidth(mm(i.Width))
	var dash []float64
	for _, m := range i.Dash.Lengths() {
		dash = append(dash, mm(m))
	}
	p.pdf.SetDashPattern(dash, 0)
}

func rgb(c drawing.Colour) (r, g, b int) {
	return int(c >> 16 & 255), int(c >> 8 & 255), int(c & 255)
}

// points is a text height in PDF points: 72 to the inch of 25.4 mm.
func points(mm float64) float64 { return mm * 72 / 25.4 }
