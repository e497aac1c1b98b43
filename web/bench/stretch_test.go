package bench

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// By hand: whether a corner leans is measured up to where that end of the wall is, also under a ceiling that falls
// from 56 at the left to 40 at the right.
func TestALeaningCornerIsShownUpToItsOwnEnd(t *testing.T) {
	w := survey.WallFound{Width: 60, Base: []survey.SegmentFound{{Readings: []survey.Reading{{At: 0, Value: -40}, {At: 60, Value: -41}}}},
		Head: survey.HeadFound{Meets: true, Readings: []survey.Reading{{At: 0, Value: 56}, {At: 60, Value: 40}}}}
	for end, top := range map[string]plane.Point{"left": {X: 0, Y: 56}, "right": {X: 60, Y: 40}} {
		from, to, known := stretchOf(w, form.Parts("walls[0]." + end + ".lean[1].off")[2:])
		assert.True(t, known)
		assert.Equal(t, plane.Point{X: top.X}, from)
		assert.Equal(t, top, to, end)
	}
}
