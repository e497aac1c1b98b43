package elevation

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	svg "github.com/ajstarks/svgo"

	"coursewright/web/drawing"
)

// pen draws a scene's elements with svgo. Neighbours in the order that share
// their ink stand in one group that carries it.
type pen struct {
	out    *keeper
	canvas *svg.SVG
	id     string
	ink    string // the attributes of the open group, or empty
	pieces *drawing.Pieces
	list   int // the wall whose list of pieces is open, or none

	inks    map[drawing.Ink]string // the attributes of the inks used
	written func() int             // how much of the SVG is written
	walls   []group
	inner   bytes.Buffer // one wall, before it is known what its group is called
}

func (p *pen) group(ink string) {
	if ink == p.ink {
		return
	}
	p.end()
	p.canvas.Group(ink)
	p.ink = ink
}

func (p *pen) end() {
	if p.ink != "" {
		p.canvas.Gend()
	}
	p.ink = ""
}

func (p *pen) close() {
	p.leave()
	p.canvas.End()
}

func (p *pen) Path(e drawing.Path) {
	p.among(e.Tag)
	if haloed(e) {
		p.group(p.inked(drawing.Ink{Fill: drawing.None, Line: drawing.White, Width: e.Width * haloWide}))
		p.canvas.Path(outline(e), attr("class", "halo"))
	}
	p.group(p.inked(e.Ink))
	p.canvas.Path(outline(e), tags(e.Tag)+p.option(e.Tag))
}

// haloWide is how many times as wide as its line a halo is.
const haloWide = 3

// haloed tells whether a line is drawn on a halo on screen: those that run over cut pieces of every colour, of which none
// would let them be seen on all. Printed, no halo shows.
func haloed(e drawing.Path) bool {
	over := e.Kind == drawing.Start || e.Kind == drawing.Lap || e.Kind == drawing.Corner
	return over && e.Open && e.Line != drawing.None
}

func (p *pen) Disc(e drawing.Disc) {
	p.among(e.Tag)
	p.group(p.inked(e.Ink))
	p.canvas.Circle(int(e.Centre.X), int(e.Centre.Y), int(e.Radius), tags(e.Tag))
}

func (p *pen) Label(e drawing.Label) {
	p.among(e.Tag)
	p.group(lettered(e))
	x, y := int(e.At.X), int(e.At.Y)
	if e.Up {
		p.canvas.Text(0, 0, e.Text, tags(e.Tag), fmt.Sprintf(`transform="translate(%d %d) rotate(-90)"`, x, y))
		return
	}
	if e.Turn != 0 {
		p.canvas.Text(0, 0, e.Text, tags(e.Tag), fmt.Sprintf(`transform="translate(%d %d) rotate(%d)"`, x, y, -e.Turn))
		return
	}
	p.canvas.Text(x, y, e.Text, tags(e.Tag))
}

// inked are the presentation attributes of an ink. The page's security policy
// allows no style attribute.
func (p *pen) inked(i drawing.Ink) string {
	known, there := p.inks[i]
	if !there {
		known = p.attributes(i)
		p.inks[i] = known
	}
	return known
}

func (p *pen) attributes(i drawing.Ink) string {
	fill := colour(i.Fill)
	if i.Hatch != drawing.Plain {
		fill = "url(#" + p.hatchID(i.Fill, i.Hatch) + ")"
	}
	a := fmt.Sprintf(`fill="%s"`, fill)
	if i.Line == drawing.None {
		return a + ` stroke="none"`
	}
	a += fmt.Sprintf(` stroke="%s" stroke-width="%d"`, colour(i.Line), i.Width)
	if l := i.Dash.Lengths(); l != nil {
		s := make([]string, len(l))
		for n, m := range l {
			s[n] = strconv.FormatInt(int64(m), 10)
		}
		a += ` stroke-dasharray="` + strings.Join(s, " ") + `"`
	}
	return a
}

func lettered(e drawing.Label) string {
	a := fmt.Sprintf(`fill="%s" stroke="none" font-size="%d"`, colour(e.Colour), e.Size)
	switch e.Anchor {
	case drawing.Middle:
		a += ` text-anchor="middle"`
	case drawing.Right:
		a += ` text-anchor="end"`
	}
	if e.Bold {
		a += ` font-weight="bold"`
	}
	return a
}

// tags are the class and the data attributes of an element.
func tags(t drawing.Tag) string {
	a := attr("class", string(t.Kind))
	if t.Wall >= 0 {
		a += " " + number("data-wall", int64(t.Wall))
	}
	if t.Piece != "" {
		a += " " + attr("data-piece", t.Piece)
	}
	if t.Finding > 0 {
		a += " " + number("data-finding", int64(t.Finding))
	}
	return a
}

// outline writes a path's lines with steps relative to the last point, level
// and plumb ones in their short form. A closed ring ends where it began, so the
// next one begins with a step from there.
func outline(e drawing.Path) string {
	b := make([]byte, 0, 64)
	step := func(letter byte, by ...drawing.Micron) {
		b = append(b, letter)
		for i, n := range by {
			if i > 0 {
				b = append(b, ' ')
			}
			b = strconv.AppendInt(b, int64(n), 10)
		}
	}
	for n, ring := range e.Rings {
		for i, p := range ring {
			switch {
			case i == 0 && n > 0 && !e.Open && len(e.Rings[n-1]) > 0:
				last := e.Rings[n-1][0]
				step('m', p.X-last.X, p.Y-last.Y)
			case i == 0:
				step('M', p.X, p.Y)
			case p.Y == ring[i-1].Y:
				step('h', p.X-ring[i-1].X)
			case p.X == ring[i-1].X:
				step('v', p.Y-ring[i-1].Y)
			default:
				step('l', p.X-ring[i-1].X, p.Y-ring[i-1].Y)
			}
		}
		if !e.Open {
			b = append(b, 'z')
		}
	}
	return string(b)
}
