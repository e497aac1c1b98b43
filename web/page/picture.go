package page

import (
	"bytes"
	"context"
	"io"
	"net/http"

	"github.com/a-h/templ"

	"coursewright/web/drawing"
	"coursewright/web/elevation"
)

// Picture writes a scene into the page; an empty scene is no picture.
func Picture(s drawing.Scene, id string) templ.Component {
	if s.Width == 0 {
		return nil
	}
	return templ.ComponentFunc(func(_ context.Context, w io.Writer) error {
		return elevation.Write(w, s, elevation.Options{Inline: true, ID: id})
	})
}

// Walls is a drawing of walls on a page. A script that holds some of them is sent
// the others only.
type Walls struct {
	drawn elevation.Drawn
	err   error
}

// DrawWalls makes the drawing of a scene; an empty scene gives none.
func DrawWalls(s drawing.Scene, id string) *Walls {
	if s.Width == 0 {
		return nil
	}
	d, err := elevation.Draw(s, elevation.Options{Inline: true, ID: id})
	return &Walls{d, err}
}

// But is the drawing without the walls that are held; nil leaves out none.
func (d *Walls) But(held func(id, hash string) bool) templ.Component {
	return templ.ComponentFunc(func(_ context.Context, w io.Writer) error {
		if d.err != nil {
			return d.err
		}
		return d.drawn.Write(w, held)
	})
}

// SendPicture answers with a scene as a picture of its own, in the colours of the screen.
func SendPicture(w http.ResponseWriter, s drawing.Scene) error {
	return sendPicture(w, s, elevation.Options{})
}

// SendPaper answers with a scene as it is on paper.
func SendPaper(w http.ResponseWriter, s drawing.Scene) error {
	return sendPicture(w, s, elevation.Options{Plain: true})
}

func sendPicture(w http.ResponseWriter, s drawing.Scene, o elevation.Options) error {
	var out bytes.Buffer
	if err := elevation.Write(&out, s, o); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "image/svg+xml; charset=utf-8")
	_, _ = out.WriteTo(w) // the reader is gone: nothing left to tell it
	return nil
}
