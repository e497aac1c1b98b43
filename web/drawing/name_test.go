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

// What a leg is wide is read off the widths under its wall, and its floor is named where nothing
// covers it. Found on a bath: the cut list had pieces of 4 3/8 in, the drawing no such figure, and
// of floor two arrows left "oor".
func TestALegSaysWhereItBeginsAndItsFloor(t *testing.T) {
	plan := planOf(t, "alcove")
	for wall, front := range map[int]string{0: "4 3/8", 2: "30 5/8"} {
		for _, o := range []drawing.Options{{Wide: 1000 * drawing.Pixel}, {Wide: 366 * drawing.Pixel}, {Wide: 1000 * drawing.Pixel, Handles: true}} {
			var figure, floors []string
			for _, e := range drawing.Elevation(plan, wall, o).Elements {
				l, ok := e.(drawing.Label)
				if ok && strings.HasPrefix(l.Text, front) {
					figure = append(figure, l.Text)
				}
				if ok && strings.HasPrefix(l.Text, "floor") {
					floors = append(floors, l.Text)
				}
			}
			assert.NotEmpty(t, figure, "wall %d on %+v", wall, o)
			assert.Len(t, floors, 1, "wall %d on %+v", wall, o)
			assert.NotEqual(t, "floor", strings.Join(floors, ""), "with its height, under the leg")
		}
	}
}

// Where the widths of a wall go beside each other only with shorter names, they have these.
func TestNamesOfWidthsAreShortBeforeTheyReadUp(t *testing.T) {
	plan := planOf(t, "alcove")
	short := false
	for wide := drawing.Micron(300); wide <= 700; wide += 20 {
		for _, e := range drawing.Elevation(plan, 0, drawing.Options{Wide: wide * drawing.Pixel}).Elements {
			if l, ok := e.(drawing.Label); ok && l.Text == "front" {
				short = true
				assert.False(t, l.Up, "on %d", wide)
			}
		}
	}
	assert.True(t, short, "nowhere short")
}
