package sheet

import (
	"testing"

	"coursewright/layout/cuts"
	"coursewright/layout/length"

	"github.com/stretchr/testify/assert"
)

// Found on a shower with a valve at the edge of a strip: a rip beside it had its hole's middle
// "-2 1/16 from left", where there is nothing to measure on.
func TestAHoleWhoseMiddleIsBesideThePieceIsMarkedInPlace(t *testing.T) {
	b := &book{}
	rip := cuts.Group{Kind: "rip and hole", Count: 1, Size: cuts.Size{Width: length.Inch, Height: 6 * length.Inch,
		Holes: []cuts.Hole{{Name: "valve", FromLeft: -2 * length.Inch, Up: 2 * length.Inch, Diameter: 5 * length.Inch}}}}
	_, small := b.holed(rip)
	assert.Equal(t, "then a hole, marked in place", small)
	rip.Size.Holes[0].FromLeft = length.Inch / 2
	_, small = b.holed(rip)
	assert.Contains(t, small, "middle ")
}
