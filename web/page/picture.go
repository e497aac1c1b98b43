package page

import (
	"context"
	"io"

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
