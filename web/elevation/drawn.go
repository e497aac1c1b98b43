package elevation

import (
	"bytes"
	"fmt"
	"io"

	"coursewright/web/drawing"
)

// Drawn is a scene as SVG of which the walls may be left out, one by one.
type Drawn struct {
	svg   []byte
	walls []group
}

// group is where the group of a wall stands in the SVG.
type group struct {
	id, hash string
	from, to int
}

// Draw makes the SVG of a scene.
func Draw(s drawing.Scene, o Options) (Drawn, error) {
	var buf bytes.Buffer
	buf.Grow(256 * len(s.Elements)) // about what they take
	p := newPen(&buf, cleanID(o.ID))
	p.pieces, p.written = s.Pieces, buf.Len
	p.open(s, o)
	p.hatches(s)
	p.scene(s)
	p.close()
	return Drawn{buf.Bytes(), p.walls}, p.out.err
}

// Write writes the SVG. Of a wall that is held already, its id with the very
// hash, only an empty group stands in its place.
func (d Drawn) Write(w io.Writer, held func(id, hash string) bool) error {
	out := &keeper{w: w}
	at := 0
	for _, g := range d.walls {
		if held == nil || !held(g.id, g.hash) {
			continue
		}
		_, _ = out.Write(d.svg[at:g.from]) // out keeps the error
		fmt.Fprintf(out, "<g %s %s data-held></g>\n", attr("id", g.id), attr("data-hash", g.hash))
		at = g.to
	}
	_, _ = out.Write(d.svg[at:])
	return out.err
}
