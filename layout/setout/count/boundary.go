package count

import (
	"maps"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// boundary is what bounds the tile of a wall: the edges that stand, and where else
// something may cut it.
type boundary struct {
	w          *facts
	ends, beds []feature // by edge: what crosses rows, and what lies along them
	obstacles  []obstacle
	hullOf     []int // of the free openings, the number of its hull among the obstacles
}

// boundaryOf lists the clean spans of every boundary edge that stands.
func boundaryOf(w *facts) *boundary {
	b := &boundary{w: w}
	rings := w.frame.region(w.field.Solid)
	for _, ring := range rings {
		for i, a := range ring {
			c := ring[(i+1)%len(ring)]
			b.obstacles = append(b.obstacles, obstacle{edgeBox(a.Point, c.Point), w.frame.edge(piece.EdgeOf(a.On, facingOf(a, c)))})
		}
	}
	b.addHulls()
	found := map[piece.Edge]*feature{}
	n := 0
	for _, ring := range rings {
		for i, a := range ring {
			c := ring[(i+1)%len(ring)]
			mine := n
			n++
			if a.On == 0 || a.Point == c.Point || w.moves(a.On) {
				continue
			}
			f := facingOf(a, c)
			e := w.frame.edge(piece.EdgeOf(a.On, f))
			if found[e] == nil {
				found[e] = newFeature(w, e, f)
			}
			found[e].addEdge(a.Point, c.Point, b.obstacles, mine)
			found[e].slant = max(found[e].slant, piece.Slant(b.w.room.Sealant, a.Point, c.Point))
		}
	}
	for _, e := range slices.Sorted(maps.Keys(found)) {
		f := found[e]
		f.crests = b.crestsOf(f)
		if f.facing <= piece.OnRight {
			b.ends = append(b.ends, *f)
		} else {
			b.beds = append(b.beds, *f)
		}
	}
	return b
}

// addHulls adds where free ends, free heads and free openings may come to stand, and
// the holes of pipes.
func (b *boundary) addHulls() {
	const far = 100 * length.Metre
	add := func(r plane.Rect, edge piece.Edge) {
		b.obstacles = append(b.obstacles, obstacle{b.w.frame.rect(r), edge})
	}
	f := b.w.found
	if b.w.moves(survey.SideLeft) {
		add(plane.Rect{Left: f.Left.Stops.From, Right: f.Left.Stops.To, Bottom: -far, Top: far}, piece.EdgeOf(survey.SideLeft, piece.OnLeft))
	}
	if b.w.moves(survey.SideRight) {
		add(plane.Rect{Left: f.Right.Stops.From, Right: f.Right.Stops.To, Bottom: -far, Top: far}, piece.EdgeOf(survey.SideRight, piece.OnRight))
	}
	if b.w.moves(survey.SideHead) {
		add(plane.Rect{Left: -far, Right: far, Bottom: f.Head.Stops.From, Top: f.Head.Stops.To}, piece.EdgeOf(survey.SideHead, piece.Over))
	}
	for i, o := range f.Openings {
		switch {
		case o.Kind == survey.Pipe:
			add(b.w.boxOf(i, o, b.w.outer), pipe)
		case slices.Contains(b.w.free, i):
			b.hullOf = append(b.hullOf, len(b.obstacles))
			b.obstacles = append(b.obstacles, obstacle{b.w.hull(i), free})
		}
	}
}

// newFeature is an edge that faces so in the frame of the rows, without its spans yet.
func newFeature(w *facts, e piece.Edge, f piece.Facing) *feature {
	side := w.rule.Sides[e.Side()]
	out := &feature{edge: e, alone: []piece.Edge{e}, facing: f, meets: side.Meets, reach: w.room.Sealant - side.Gap, deep: w.rule.Along, broad: w.rule.Across, joint: w.room.Joint}
	if f >= piece.Under {
		out.deep, out.broad = out.broad, out.deep
	}
	switch end := w.found.Left; {
	case e.Side() == survey.SideLeft && end.Meets:
		out.hidden = max(0, end.Cover-end.Gap-end.Behind)
	case e.Side() == survey.SideRight && w.found.Right.Meets:
		end = w.found.Right
		out.hidden = max(0, end.Cover-end.Gap-end.Behind)
	}
	return out
}

// raked tells whether an edge that crosses the rows slants.
func (b *boundary) raked() bool {
	return slices.ContainsFunc(b.ends, func(f feature) bool { return f.drift() > 0 })
}

// own is the number of the hull of an opening among the obstacles; none where all its marks are pinned.
func (b *boundary) own(i int) int {
	if k := slices.Index(b.w.free, i); k >= 0 {
		return b.hullOf[k]
	}
	return -1
}
