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

// SendPicture answers with a scene as a picture of its own.
func SendPicture(w http.ResponseWriter, s drawing.Scene) error {
	var out bytes.Buffer
	if err := elevation.Write(&out, s, elevation.Options{Plain: true}); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "image/svg+xml; charset=utf-8")
	_, _ = out.WriteTo(w) // the reader is gone: nothing left to tell it
	return nil
}
