package web

import (
	"context"
	"fmt"
	"io"
	"net/http"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"github.com/a-h/templ"

	"coursewright/web/drawing"
	"coursewright/web/elevation"
	"coursewright/web/view"
)

// draw puts the drawings of its plan on a page: the wall in front or the wrap,
// and a slide curve for every wall shown.
func draw(b *view.Bench) {
	if len(b.Plan.Walls) == 0 {
		return
	}
	o := drawing.Options{Handles: true}
	if b.Wall >= 0 {
		b.Drawing = picture(drawing.Elevation(b.Plan, b.Wall, o), "drawing")
	} else {
		b.Drawing = picture(drawing.Wrap(b.Plan, o), "drawing")
	}
	b.Slides = make([]templ.Component, len(b.Plan.Walls))
	for _, i := range b.Walls() {
		b.Slides[i] = picture(drawing.Slide(b.Plan, i), fmt.Sprintf("slide-%d", i))
	}
}

// picture writes a scene into the page; an empty scene is no picture.
func picture(s drawing.Scene, id string) templ.Component {
	if s.Width == 0 {
		return nil
	}
	return templ.ComponentFunc(func(_ context.Context, w io.Writer) error {
		return elevation.Write(w, s, elevation.Options{Inline: true, ID: id})
	})
}

// drawingStyle is the style sheet that belongs to every drawing.
func drawingStyle(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "text/css; charset=utf-8")
	_, _ = io.WriteString(w, elevation.Style)
}

// drawingFont is the font the drawings and the sheets are measured with.
func drawingFont(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "font/ttf")
	w.Header().Set("Cache-Control", "max-age=86400")
	_, _ = w.Write(dejavusanscondensed.TTF)
}
