// Package elevation writes a drawing's scene as SVG.
package elevation

import (
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	svg "github.com/ajstarks/svgo"

	"coursewright/web/drawing"
)

// Options choose the kind of SVG.
type Options struct {
	// Inline leaves out the XML prolog and the style, for a drawing inside a
	// page that carries Style in its own sheet.
	Inline bool
	// Plain leaves out the style alone, for a picture that is only looked at:
	// it stays as it is on paper, whatever colours the screen has.
	Plain bool
	// ID goes before the ids inside the drawing, so that two drawings of one
	// page do not share them. Only letters, digits and hyphens are kept.
	ID string
}

// Write writes the scene. Nothing is written when the scene cannot be drawn
// whole; the error is that of w otherwise.
func Write(w io.Writer, s drawing.Scene, o Options) error {
	d, err := Draw(s, o)
	if err != nil {
		return err
	}
	return d.Write(w, nil)
}

// keeper remembers the first write error, which svgo drops.
type keeper struct {
	w   io.Writer
	err error
}

func (k *keeper) Write(b []byte) (int, error) {
	if k.err != nil {
		return 0, k.err
	}
	n, err := k.w.Write(b)
	k.err = err
	return n, err
}

// cleanID keeps what may stand in an id.
func cleanID(id string) string {
	keep := func(r rune) rune {
		if r == '-' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' {
			return r
		}
		return -1
	}
	if id = strings.Map(keep, id); id == "" {
		return "d"
	}
	return id
}

// attr is one attribute, its value escaped.
func attr(name, value string) string { return name + `="` + text(value) + `"` }

func number(name string, n int64) string { return name + `="` + strconv.FormatInt(n, 10) + `"` }

func colour(c drawing.Colour) string {
	if c == drawing.None {
		return "none"
	}
	return fmt.Sprintf("#%06x", int32(c))
}

// open writes the start of the document: svgo's own start tag knows no
// viewBox in micrometres with a size in millimetres.
func (p *pen) open(s drawing.Scene, o Options) {
	if !o.Inline {
		fmt.Fprintln(p.out, `<?xml version="1.0" encoding="UTF-8"?>`)
	}
	title, desc := p.id+"-title", p.id+"-desc"
	class := "drawing"
	if s.Finished {
		class = "drawing finished"
	}
	size, space := millimetres, ` xmlns="http://www.w3.org/2000/svg"`
	if o.Inline {
		size, space = pixels, "" // a page knows an svg element without
	}
	fmt.Fprintf(p.out, `<svg%s %s width="%s" height="%s" viewBox="0 0 %d %d" fill-rule="evenodd" stroke-linejoin="round"`,
		space, attr("class", class), size(s.Width), size(s.Height), s.Width, s.Height)
	role := "img"
	if len(s.Handles) > 0 || s.Pieces != nil {
		role = "group" // an image would hide what is in it from a screen reader
	}
	fmt.Fprintf(p.out, ` role="%s" aria-labelledby="%s"`, role, title)
	if s.Describe != "" {
		fmt.Fprintf(p.out, ` aria-describedby="%s"`, desc)
	}
	if slices.ContainsFunc(s.Elements, func(e drawing.Element) bool { _, is := e.(drawing.Label); return is }) {
		fmt.Fprintf(p.out, ` font-family="%s"`, fonts)
	}
	if s.Scale.Real > 0 {
		fmt.Fprintf(p.out, ` data-paper="%d" data-real="%d"`, s.Scale.Paper, s.Scale.Real)
	}
	fmt.Fprintln(p.out, ">")
	fmt.Fprintf(p.out, "<title %s>%s</title>\n", attr("id", title), text(s.Title))
	if s.Describe != "" {
		fmt.Fprintf(p.out, "<desc %s>%s</desc>\n", attr("id", desc), text(s.Describe))
	}
	if !o.Inline {
		if !o.Plain {
			fmt.Fprintf(p.out, "<style>%s</style>\n", Style)
		}
		p.canvas.Rect(0, 0, int(s.Width), int(s.Height), `class="paper" fill="#ffffff"`)
	}
}

const fonts = "'DejaVu Sans Condensed','Coursewright',sans-serif"

// text escapes character data. Most of it is plain and stays as it is.
func text(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r > '~' || strings.ContainsRune(`"'&<>`, r) }) {
		return s
	}
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s)) // a strings.Builder does not fail
	return b.String()
}

// millimetres writes micrometres as millimetres, exactly.
func millimetres(m drawing.Micron) string { return thousandths(m) + "mm" }

// pixels writes micrometres as the pixels that a drawing in a page is laid out
// for, four to the millimetre.
func pixels(m drawing.Micron) string { return thousandths(4 * m) }

// thousandths writes n over a thousand.
func thousandths(n drawing.Micron) string {
	return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%d.%03d", n/1000, n%1000), "0"), ".")
}

func newPen(w io.Writer, id string) *pen {
	out := &keeper{w: w}
	return &pen{out: out, canvas: svg.New(out), id: id, list: none, inks: map[drawing.Ink]string{}}
}
