package drawing_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/length"
	"coursewright/web/drawing"
)

// A narrow wall between others, or the last, gives up its width over it, never half of its name.
func TestNarrowWallsBearTheirNames(t *testing.T) {
	for _, o := range []drawing.Options{{Wide: 360 * drawing.Pixel}, {Wide: 736 * drawing.Pixel}, {Wide: 1000 * drawing.Pixel},
		{Wide: 1000 * drawing.Pixel, Finish: true}, {High: 270 * drawing.Pixel}} {
		for _, job := range []string{"boxing", "half-wall"} {
			named(t, job, o)
		}
	}
}

func named(t *testing.T, job string, o drawing.Options) {
	t.Helper()
	plan := planOf(t, job)
	named := map[string]bool{}
	for _, e := range drawing.Wrap(plan, o).Elements {
		if l, ok := e.(drawing.Label); ok && l.Tag.Kind == drawing.Name {
			named[strings.Split(l.Text, "\u2002")[0]] = true
		}
	}
	for _, w := range plan.Walls {
		assert.True(t, named[w.Found.Name], "%s of %s on %+v: %v", w.Found.Name, job, o, named)
	}
}

// The walls of a bath go into the frame of a tablet at every width of it: what is written under
// them never takes so much room that they fall out of it.
func TestABathGoesIntoTheFrameOfATablet(t *testing.T) {
	for _, job := range []string{"alcove", "herringbone", "corner-shower"} {
		plan := planOf(t, job)
		for wide := drawing.Micron(680); wide <= 1000; wide += 4 {
			s := drawing.Wrap(plan, drawing.Options{Wide: wide * drawing.Pixel})
			assert.LessOrEqual(t, s.Width, (wide+1)*drawing.Pixel, "%s on %d", job, wide)
		}
	}
}

// Names of walls that end at one height stand on one line, also where the ends of one wall take two lines
// under it. Found in a narrow wrap of the alcove.
func TestNamesOfWallsStandOnOneLine(t *testing.T) {
	two := false
	for _, job := range []string{"alcove", "corner-shower", "herringbone"} {
		plan := planOf(t, job)
		for wide := drawing.Micron(320); wide <= 1000; wide += 40 {
			names, columns := map[drawing.Micron]bool{}, map[drawing.Micron]bool{}
			for _, e := range drawing.Wrap(plan, drawing.Options{Wide: wide * drawing.Pixel}).Elements {
				if l, ok := e.(drawing.Label); ok && l.Kind == drawing.Name {
					names[l.At.Y] = true
				} else if ok && l.Kind == drawing.Column {
					columns[l.At.Y] = true
				}
			}
			two = two || len(columns) > 1
			tops := map[length.Length]bool{}
			for _, w := range plan.Walls {
				tops[w.Shape.Region.Bounds().Top] = true
			}
			assert.Len(t, names, len(tops), "%s on %d", job, wide)
		}
	}
	assert.True(t, two, "nowhere two lines: the test shows nothing")
}
