package drawing_test

import (
	"bytes"
	"io"
	"os"
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
	"coursewright/web/elevation"

	"github.com/stretchr/testify/require"
)

func planOf(b testing.TB, name string) layout.Plan {
	b.Helper()
	file, err := os.ReadFile("../../testdata/jobs/" + name + ".json")
	require.NoError(b, err)
	job, err := survey.Read(file)
	require.NoError(b, err)
	plan, err := layout.Now(job)
	require.NoError(b, err)
	return plan
}

// BenchmarkWrap draws all walls of a plan and writes them as SVG. Its
// companion Bytes only copies the same bytes, the least any drawing can cost.
func BenchmarkWrap(b *testing.B) {
	for _, name := range []string{"one-wall", "alcove", "mosaic"} {
		plan := planOf(b, name)
		var out bytes.Buffer
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				out.Reset()
				s := drawing.Wrap(plan, drawing.Options{Handles: true})
				require.NoError(b, elevation.Write(&out, s, elevation.Options{Inline: true}))
			}
			b.ReportMetric(float64(out.Len()), "bytes")
		})
		b.Run(name+"/bytes", func(b *testing.B) {
			var copied bytes.Buffer
			for b.Loop() {
				copied.Reset()
				_, err := copied.Write(out.Bytes())
				require.NoError(b, err)
			}
		})
	}
}

// BenchmarkElevation draws one wall with its dimensions.
func BenchmarkElevation(b *testing.B) {
	for _, name := range []string{"alcove", "mosaic"} {
		plan := planOf(b, name)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				s := drawing.Elevation(plan, len(plan.Walls)/2, drawing.Options{Handles: true})
				require.NoError(b, elevation.Write(io.Discard, s, elevation.Options{Inline: true}))
			}
		})
	}
}
