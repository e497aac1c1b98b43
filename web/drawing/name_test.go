package drawing_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/web/drawing"
)

// A narrow wall between others gives up its width over it, never half of its name.
func TestNarrowWallsBearTheirNames(t *testing.T) {
	for _, wide := range []drawing.Micron{360 * drawing.Pixel, 736 * drawing.Pixel, 1000 * drawing.Pixel} {
		plan := planOf(t, "boxing")
		named := map[string]bool{}
		for _, e := range drawing.Wrap(plan, drawing.Options{Wide: wide}).Elements {
			if l, ok := e.(drawing.Label); ok && l.Tag.Kind == drawing.Name {
				named[strings.Split(l.Text, "\u2002")[0]] = true
			}
		}
		for _, w := range plan.Walls {
			assert.True(t, named[w.Found.Name], "%s on %d: %v", w.Found.Name, wide/drawing.Pixel, named)
		}
	}
}
