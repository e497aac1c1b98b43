package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// headPlace is a free head with the courses that it cuts.
type headPlace struct{ head, across length.Length }

// headAt is what is sure of the pieces that a free head cuts where it is placed at y,
// with level courses that stand at across. It is worked out once.
func (b *Bounds) headAt(y, across length.Length) merit.Merit {
	return b.heads.of(headPlace{y, phase(b.w, across)}, func() merit.Merit { return b.underHead(y, across) })
}

func (b *Bounds) underHead(y, across length.Length) merit.Merit {
	s := b.zones.sure()
	f := b.boundary.freeHead(y)
	t := f.tiled(across)
	pitch := f.broad + f.joint
	for _, p := range f.spans {
		if b.boundary.wallUnder(p, y) {
			s.slots(&t, p, guaranteed(p.to-p.from, f.broad, pitch), pitch)
		}
	}
	s.run(&t, 0)
	return s.merit()
}

// bestHead is what no place of a free head can beat with courses that stand at across. It is
// worked out once.
func (b *Bounds) bestHead(across length.Length) merit.Merit {
	if b.w.frame.plumb || !b.w.moves(survey.SideHead) {
		return merit.Merit{}
	}
	return b.best.of(across, func() (best merit.Merit) {
		for i, y := range b.places.Heads(across) {
			if m := b.headAt(y, across); i == 0 || b.w.order.Better(&m, &best) {
				best = m
			}
		}
		return best
	})
}

// freeHead is a free head that is placed at y, as a boundary edge from end to end.
func (b *boundary) freeHead(y length.Length) *feature {
	f := newFeature(b.w, piece.EdgeOf(survey.SideHead, piece.Over), piece.Over)
	box := b.w.box()
	mine := slices.IndexFunc(b.obstacles, func(o obstacle) bool {
		return o.edge == f.edge && o.Left < box.Left && o.Right > box.Right
	})
	f.addEdge(plane.Point{X: box.Left, Y: y}, plane.Point{X: box.Right, Y: y}, b.obstacles, mine)
	return f
}

// wallUnder tells whether the wall goes on right under the middle of a span of its head at y.
func (b *boundary) wallUnder(p span, y length.Length) bool {
	return b.w.field.Solid.Contains(plane.Point{X: (p.from + p.to).Half(), Y: y - 1})
}

// mostHeads bounds for how many heads on how many lines it is kept.
const mostHeads = 4096
