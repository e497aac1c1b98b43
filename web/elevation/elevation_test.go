package elevation_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/drawing"
	"coursewright/web/drawing/sample"
	"coursewright/web/elevation"
)

var update = flag.Bool("update", false, "write the golden drawings anew")

func TestGoldenDrawings(t *testing.T) {
	p := sample.Plan()
	for name, s := range map[string]drawing.Scene{
		"wall-over-a-tub-front":         drawing.Elevation(p, 0, drawing.Options{}),
		"wall-with-a-niche":             drawing.Elevation(p, 1, drawing.Options{Handles: true}),
		"wall-with-a-niche-on-a-sheet":  drawing.Elevation(p, 1, drawing.Options{Sheet: true, Scale: drawing.Scale{Paper: 1, Real: 10}}),
		"wall-with-a-window":            drawing.Elevation(p, 2, drawing.Options{}),
		"wrap-of-three-walls":           drawing.Wrap(p, drawing.Options{}),
		"key-plan-with-the-second-wall": drawing.KeyPlan(p, 1),
		"slide-curve-with-a-jump":       drawing.Slide(p, 1, 0),
	} {
		t.Run(name, func(t *testing.T) { golden(t, name+".svg", write(t, s, elevation.Options{})) })
	}
}

func golden(t *testing.T, name string, got []byte) {
	path := filepath.Join("..", "..", "testdata", "golden", name)
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, got, 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run with -update to write it")
	assert.Equal(t, string(want), string(got))
}

func write(t *testing.T, s drawing.Scene, o elevation.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, elevation.Write(&b, s, o))
	wellFormed(t, b.Bytes())
	return b.Bytes()
}

// wellFormed reads the whole document and holds it to what a page allows: no
// style attribute, no script, no event handler.
func wellFormed(t *testing.T, doc []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(doc))
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return
		}
		require.NoError(t, err)
		el, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		assert.NotEqual(t, "script", el.Name.Local)
		for _, a := range el.Attr {
			assert.NotEqual(t, "style", a.Name.Local)
			assert.False(t, strings.HasPrefix(a.Name.Local, "on"), "no event handler: %s", a.Name.Local)
		}
	}
}

func TestNamesPeopleTypeStayText(t *testing.T) {
	const hostile = `"><script>alert(1)</script><g onload="x" style='a=b' & ]]>`
	p := sample.Plan()
	for i := range p.Walls {
		p.Walls[i].Found.Name, p.Walls[i].Found.Letter = hostile, hostile
		for j := range p.Walls[i].Found.Openings {
			p.Walls[i].Found.Openings[j].Name = hostile
		}
		for j := range p.Walls[i].Pieces {
			p.Walls[i].Pieces[j].ID = hostile
		}
	}
	o := drawing.Options{Handles: true, Sheet: true}
	for _, s := range []drawing.Scene{drawing.Elevation(p, 0, o), drawing.Elevation(p, 1, o), drawing.Wrap(p, o), drawing.KeyPlan(p, 0), drawing.Slide(p, 1, 0)} {
		doc := string(write(t, s, elevation.Options{Inline: true, ID: hostile}))
		assert.NotContains(t, doc, "<script")
		assert.NotContains(t, doc, "<style")
	}
}

func TestInlineDrawingsOfOnePageShareNoID(t *testing.T) {
	s := drawing.Elevation(sample.Plan(), 1, drawing.Options{})
	a, b := ids(write(t, s, elevation.Options{Inline: true, ID: "a"})), ids(write(t, s, elevation.Options{Inline: true, ID: "b"}))
	require.NotEmpty(t, a)
	for id := range a {
		assert.NotContains(t, b, id)
	}
}

func ids(doc []byte) map[string]bool {
	out := map[string]bool{}
	d := xml.NewDecoder(bytes.NewReader(doc))
	for tok, err := d.Token(); err == nil; tok, err = d.Token() {
		if el, ok := tok.(xml.StartElement); ok {
			for _, a := range el.Attr {
				if a.Name.Local == "id" {
					out[a.Value] = true
				}
			}
		}
	}
	return out
}

func TestAFullDiskIsReported(t *testing.T) {
	full := errors.New("disk full")
	err := elevation.Write(refusing{full}, drawing.KeyPlan(sample.Plan(), 0), elevation.Options{})
	assert.ErrorIs(t, err, full)
}

type refusing struct{ err error }

func (r refusing) Write([]byte) (int, error) { return 0, r.err }
