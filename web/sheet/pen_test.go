package sheet

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/drawing"
	"coursewright/web/drawing/sample"
)

var noon = time.Date(2026, 5, 4, 12, 0, 0, 0, time.UTC)

func document(t *testing.T, s drawing.Scene, compress bool) []byte {
	t.Helper()
	pdf := NewPDF("A3", noon)
	pdf.SetCompression(compress)
	pdf.AddPage()
	s.Draw(NewPen(pdf, 10, 10))
	var b bytes.Buffer
	require.NoError(t, pdf.Output(&b))
	return b.Bytes()
}

// 100 mm are 100 / 25.4 × 72 = 283.46 pt (ISO 32000-1, 8.3.2.3: 72 units to the inch).
func TestAHundredMillimetresAreTrueInBothAxes(t *testing.T) {
	bar := drawing.Path{Ink: drawing.Ink{Fill: drawing.None, Line: drawing.Black, Width: 500}, Open: true,
		Rings: [][]drawing.Point{{{X: 0, Y: 0}, {X: 100 * drawing.Millimetre, Y: 100 * drawing.Millimetre}}}}
	doc := document(t, drawing.Scene{Elements: []drawing.Element{bar}}, false)
	m := regexp.MustCompile(`([\d.]+) ([\d.]+) m\s+([\d.]+) ([\d.]+) l`).FindSubmatch(doc)
	require.NotNil(t, m, "a line in the content stream")
	var v [5]float64
	for i := 1; i < 5; i++ {
		var err error
		v[i], err = strconv.ParseFloat(string(m[i]), 64)
		require.NoError(t, err)
	}
	assert.InDelta(t, 283.46, v[3]-v[1], 0.0101)
	assert.InDelta(t, 283.46, v[2]-v[4], 0.0101)
}

func TestTheSameSceneGivesTheSameBytes(t *testing.T) {
	s := drawing.Elevation(sample.Plan(), 1, drawing.Options{Sheet: true, Scale: drawing.Scale{Paper: 1, Real: 10}})
	assert.Equal(t, document(t, s, true), document(t, s, true))
}

func TestFontsAreEmbeddedAndTheTextCanBeRead(t *testing.T) {
	s := drawing.Elevation(sample.Plan(), 1, drawing.Options{Sheet: true, Scale: drawing.Scale{Paper: 1, Real: 10}})
	file := filepath.Join(t.TempDir(), "wall.pdf")
	require.NoError(t, os.WriteFile(file, document(t, s, true), 0o600))
	fonts, err := exec.Command("pdffonts", file).CombinedOutput()
	require.NoError(t, err, string(fonts))
	assert.Len(t, regexp.MustCompile(`Identity-H +yes`).FindAll(fonts, -1), 2, "both fonts embedded:\n%s", fonts)
	text, err := exec.Command("pdftotext", "-layout", file, "-").CombinedOutput()
	require.NoError(t, err)
	assert.Contains(t, string(text), "seen from inside the room")
	assert.Contains(t, string(text), "level line")
}
