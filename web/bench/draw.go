package bench

import (
	"fmt"

	"github.com/a-h/templ"

	"coursewright/web/drawing"
	"coursewright/web/page"
)

// draw puts the drawings of its plan on a page: the wall in front or the wrap,
// and where it is told of a slide curve for every wall shown.
func draw(b *Bench) {
	if len(b.Plan.Walls) == 0 {
		return
	}
	o := drawing.Options{Handles: true, Finish: b.Finish, Wide: b.Wide}
	if b.Wall >= 0 {
		b.Drawing = page.DrawWalls(b.front(o), "drawing")
	} else {
		b.Drawing = page.DrawWalls(drawing.Wrap(b.Plan, o), "drawing")
	}
	b.Insides = insideDrawings(*b)
	if b.Told {
		drawSlides(b)
	}
}

// cardEdges is what padding and border of a wall's card leave a slide curve less than the drawing has.
const cardEdges = 37 * drawing.Pixel

func drawSlides(b *Bench) {
	wide := drawing.Micron(0)
	if b.narrow() {
		wide = b.Wide - cardEdges
	}
	b.Slides = make([]templ.Component, len(b.Plan.Walls))
	for _, i := range b.Walls() {
		b.Slides[i] = page.Picture(drawing.Slide(b.Plan, i, wide), fmt.Sprintf("slide-%d", i))
	}
}
