package drawing

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plane"

	"github.com/stretchr/testify/assert"
)

// A piece of a pattern is drawn in its tile with every corner named that its marks speak of, and without an arrow: on the
// saw it lies as it does not on the wall. A piece of a course stands upright, beside an arrow.
func TestAPieceOfAPatternIsDrawnInItsTileWithTheCornersNamed(t *testing.T) {
	const in = length.Inch
	ring := func(at ...[2]length.Length) (r plane.Ring) {
		for _, p := range at {
			r = append(r, plane.Corner{Point: plane.Point{X: p[0] * in, Y: p[1] * in}})
		}
		return r
	}
	hexagon := ring([2]length.Length{0, 0}, [2]length.Length{7, 0}, [2]length.Length{10, 6}, [2]length.Length{7, 12}, [2]length.Length{0, 12}, [2]length.Length{-3, 6})
	tile := ring([2]length.Length{0, 0}, [2]length.Length{12, 0}, [2]length.Length{12, 3}, [2]length.Length{0, 3})
	face := ring([2]length.Length{0, 0}, [2]length.Length{4, 0}, [2]length.Length{4, 3}, [2]length.Length{0, 3})
	for _, c := range []struct {
		tile    plane.Ring
		letters string
	}{{hexagon, "ABCDEF"}, {tile, "ABCD"}, {nil, ""}} {
		s := CutSketch(plane.Region{face}, c.tile, 50*Millimetre, 22*Millimetre, "")
		letters, dashed := "", 0
		for _, e := range s.Elements {
			switch e := e.(type) {
			case Label:
				letters += e.Text
				at := e.box()
				assert.True(t, at.from.X >= 0 && at.from.Y >= 0 && at.to.X <= s.Width && at.to.Y <= s.Height, "%s: %v", e.Text, at)
			case Path:
				if e.Dash == Hidden {
					dashed++
				}
			}
		}
		assert.Equal(t, c.letters, letters)
		assert.Equal(t, len(c.tile) > 0, dashed == 1)
	}
	assert.Empty(t, CutSketch(nil, tile, 50*Millimetre, 22*Millimetre, "").Elements)
}
