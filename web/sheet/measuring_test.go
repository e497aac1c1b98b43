package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout"
	"coursewright/web/drawing"
	"coursewright/web/shapes"
)

// A box to write in lies over no other box, no words and no line of a wall, nor does the ring with its number: those at
// corners once lay over both walls, and those under legs over their feet.
func TestNoBoxOfTheMeasuringSheetLiesOverTheDrawing(t *testing.T) {
	for _, shape := range shapes.All() {
		job := jobOf(t, "shape/"+shape.Key)
		plan, err := layout.Now(job)
		assert.NoError(t, err)
		for _, paper := range Papers() {
			l := newBook(plan, Options{Kinds: []Kind{Measuring}, Paper: paper}).leaves[0]
			name := shape.Key + " on " + paper.Name
			var boxes, rings []drawing.Path
			var walls [][]drawing.Point
			for _, e := range l.own.Elements {
				switch p, disc := rectOf(e); {
				case disc:
					rings = append(rings, p)
				case p.Rings != nil && p.Fill == drawing.White && high(p) == boxHigh:
					boxes = append(boxes, p)
				case p.Rings != nil && !p.Open && p.Width == 700:
					walls = append(walls, p.Rings[0])
				}
			}
			assert.NotEmpty(t, boxes, name)
			assert.Len(t, rings, len(boxes), name)
			assert.Len(t, walls, len(plan.Walls), name)
			for i, box := range boxes {
				lo, hi := spanOf(box)
				assert.GreaterOrEqual(t, hi.X-lo.X, drawing.Micron(20*mmPaper), "%s: box %d is too narrow to write in", name, i+1)
				for k, other := range boxes {
					assert.False(t, k != i && (meet(box, other) || meet(rings[k], box)), "%s: box %d lies over box %d", name, i+1, k+1)
				}
				for _, wall := range walls {
					for j, a := range wall {
						side := drawing.Path{Rings: [][]drawing.Point{{a, wall[(j+1)%len(wall)]}}}
						assert.False(t, meet(box, side) || meet(rings[i], side), "%s: box %d lies over a line of a wall", name, i+1)
					}
				}
				for _, x := range texts(l) {
					from, to := x.Room()
					if words := (drawing.Path{Rings: [][]drawing.Point{{from, to}}}); x.Text != number(i+1) {
						assert.False(t, meet(box, words), "%s: box %d lies over %q", name, i+1, x.Text)
					}
				}
			}
		}
	}
}

// rectOf is what an element covers, and whether it is a disc.
func rectOf(e drawing.Element) (p drawing.Path, disc bool) {
	if d, is := e.(drawing.Disc); is {
		r := d.Radius
		return drawing.Path{Rings: [][]drawing.Point{{{X: d.Centre.X - r, Y: d.Centre.Y - r}, {X: d.Centre.X + r, Y: d.Centre.Y + r}}}}, true
	}
	p, _ = e.(drawing.Path)
	return p, false
}

func high(p drawing.Path) drawing.Micron {
	lo, hi := spanOf(p)
	return hi.Y - lo.Y
}

func spanOf(p drawing.Path) (lo, hi drawing.Point) {
	lo, hi = p.Rings[0][0], p.Rings[0][0]
	for _, q := range p.Rings[0] {
		lo.X, lo.Y, hi.X, hi.Y = min(lo.X, q.X), min(lo.Y, q.Y), max(hi.X, q.X), max(hi.Y, q.Y)
	}
	return lo, hi
}

// meet tells whether the upright boxes round two paths have a place in common.
func meet(p, q drawing.Path) bool {
	a, z := spanOf(p)
	from, to := spanOf(q)
	return from.X < z.X && a.X < to.X && from.Y < z.Y && a.Y < to.Y
}
