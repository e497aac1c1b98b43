package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/drawing/sample"
)

func TestAnOpeningIsNotCalledByItsKindTwice(t *testing.T) {
	for _, c := range []struct{ kind, name, want string }{
		{"niche", "shelf", "niche shelf"}, {"niche", "niche", "niche"}, {"pipe", "pipe 2", "pipe 2"}, {"pipe", "pipeline", "pipe pipeline"},
	} {
		assert.Equal(t, c.want, OpeningName(c.kind, c.name))
	}
}

// A niche is as wide on the drawing as in the answers and on the sheets: 12 7/32 reads 12 1/4 everywhere,
// while a piece of that size is cut to 12 3/16.
func TestAnOpeningIsToldToTheNearestMark(t *testing.T) {
	p := sample.Plan()
	p.Room.Units = length.Imperial
	b := newBoard(p, wrapTexts)
	l := 12*length.Inch + 7*length.Inch/32
	assert.Equal(t, "12 1/4", b.plain(l))
	assert.Equal(t, "12 3/16", b.bare(l))
	for i, o := range p.Walls[1].Found.Openings {
		if e := &p.Walls[1].Start.Placed.Openings[i]; o.Kind == survey.Niche {
			e.Right, e.Top = e.Left+l, e.Bottom+l
		}
	}
	var said []string
	for _, e := range Elevation(p, 1, Options{}).Elements {
		if l, is := e.(Label); is {
			said = append(said, l.Text)
		}
	}
	assert.Contains(t, said, "× 12 1/4")
}

// The name of a pipe can be read while the hand is on its handle.
func TestAHandleCoversNoNameOfAPipe(t *testing.T) {
	scene := Wrap(sample.Plan(), Options{Handles: true})
	pipes := 0
	for _, h := range scene.Handles {
		for _, e := range scene.Elements {
			l, is := e.(Label)
			if !is || l.Kind != Hole || l.Wall != h.Wall || h.Axis != "xy" {
				continue
			}
			pipes++
			grip := box{Point{h.At.X - handleReach, h.At.Y - handleReach}, Point{h.At.X + handleReach, h.At.Y + handleReach}}
			assert.False(t, l.box().meets(grip), "%q under its handle", l.Text)
		}
	}
	assert.NotZero(t, pipes)
}
