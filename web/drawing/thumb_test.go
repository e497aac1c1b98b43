package drawing_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/drawing"
	"coursewright/web/drawing/sample"
	"coursewright/web/elevation"
)

// A page of jobs shows one for each, so it is small whatever the job holds.
func TestASmallPictureIsSmall(t *testing.T) {
	for _, name := range []string{"one-wall", "alcove", "mosaic", "corner-shower", "toy"} {
		plan := planOf(t, name)
		s := drawing.Thumb(plan)
		var out bytes.Buffer
		require.NoError(t, elevation.Write(&out, s, elevation.Options{Plain: true}))
		assert.Less(t, out.Len(), 3000, name)
		assert.NotContains(t, out.String(), "<text", name)
		outlines, cut := 0, 0
		for _, e := range s.Elements {
			p, ok := e.(drawing.Path)
			if !ok {
				continue
			}
			for _, ring := range p.Rings {
				for _, q := range ring {
					assert.True(t, q.X >= 0 && q.Y >= 0 && q.X <= s.Width && q.Y <= s.Height, "%s: %v", name, q)
				}
			}
			switch p.Kind {
			case drawing.Outline:
				outlines++
			case drawing.CutHalf, drawing.CutThird, drawing.CutFifth, drawing.CutLeast:
				cut++
			}
		}
		assert.Equal(t, len(plan.Walls), outlines, name)
		if name != "toy" {
			assert.Positive(t, cut, name)
		}
	}
}

func TestASmallPictureOfNothingIsEmpty(t *testing.T) {
	p := sample.Plan()
	p.Walls = nil
	assert.Empty(t, drawing.Thumb(p).Elements)
}

func TestBoxesSideBySideBecomeOne(t *testing.T) {
	at := func(x, y, u, v drawing.Micron) [4]drawing.Micron { return [4]drawing.Micron{x, y, u, v} }
	for _, c := range []struct{ in, want [][4]drawing.Micron }{
		{[][4]drawing.Micron{at(0, 0, 10, 5), at(12, 1, 22, 6), at(40, 0, 50, 5)}, [][4]drawing.Micron{at(0, 0, 22, 5), at(40, 0, 50, 5)}},
		{[][4]drawing.Micron{at(0, 0, 20, 9), at(0, 11, 20, 20), at(0, 22, 8, 31)}, [][4]drawing.Micron{at(0, 0, 20, 20), at(0, 22, 8, 31)}},
	} {
		assert.ElementsMatch(t, c.want, drawing.JoinedUp(c.in, 2))
	}
}
