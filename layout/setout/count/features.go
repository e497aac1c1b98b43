package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// feature is one boundary edge where arithmetic alone is sure of what is cut, in
// the frame of the rows: the clean spans of it, with nothing else within a tile.
// Along it runs u, away from it into the tile v.
type feature struct {
	edge   piece.Edge // in the frame of the wall
	facing piece.Facing
	edges  []span // the edge whole
	spans  []span
	crests []crest
	low    length.Length // the range of v over the whole edge
	high   length.Length
	hidden length.Length // how much of a piece the next wall's tile covers
	meets  bool
	reach  length.Length // from the edge to the farthest tile that sealant reaches
}

// span is a stretch of a straight edge, from u to u, with v at both.
type span struct{ from, to, v0, v1 length.Length }

func (s span) at(u length.Length) length.Length {
	if s.v0 == s.v1 {
		return s.v0
	}
	n, d := 2*(u-s.from)*(s.v1-s.v0)+(s.to-s.from), 2*(s.to-s.from)
	return s.v0 + length.Length(length.DivFloor(n, d))
}

// spanOf is a whole straight edge.
func spanOf(f piece.Facing, a, b plane.Point) span {
	u0, v0 := uv(f, a)
	u1, v1 := uv(f, b)
	if u0 > u1 {
		u0, v0, u1, v1 = u1, v1, u0, v0
	}
	return span{u0, u1, v0, v1}
}

// obstacle is where something else than an edge of the wall may cut its tile: the
// box of another edge, or where a free mark may come to stand.
type obstacle struct {
	plane.Rect
	edge piece.Edge // the edge, one that stands or a free one, or pipe or free
}

// What an obstacle is that is no edge of the wall.
const (
	free piece.Edge = -1 - iota // a free opening may come to stand here
	pipe
)

// depth is how far a tile reaches away from the edge, and breadth how far along it.
func (w *Wall) depth(f *feature) length.Length {
	if f.facing >= piece.Under {
		return w.rule.Across
	}
	return w.rule.Along
}

func (w *Wall) breadth(f *feature) length.Length {
	if f.facing >= piece.Under {
		return w.rule.Along
	}
	return w.rule.Across
}

// uv gives a point as seen from an edge: v grows away from the boundary.
func uv(f piece.Facing, p plane.Point) (u, v length.Length) {
	switch f {
	case piece.OnLeft:
		return p.Y, p.X
	case piece.OnRight:
		return p.Y, -p.X
	case piece.Under:
		return p.X, p.Y
	}
	return p.X, -p.Y
}

func rectUV(f piece.Facing, r plane.Rect) (u0, u1, v0, v1 length.Length) {
	switch f {
	case piece.OnLeft:
		return r.Bottom, r.Top, r.Left, r.Right
	case piece.OnRight:
		return r.Bottom, r.Top, -r.Right, -r.Left
	case piece.Under:
		return r.Left, r.Right, r.Bottom, r.Top
	}
	return r.Left, r.Right, -r.Top, -r.Bottom
}

func facingOf(a, b plane.Corner) piece.Facing {
	switch {
	case plane.Steep(a, b) && b.Y < a.Y:
		return piece.OnLeft
	case plane.Steep(a, b):
		return piece.OnRight
	case b.X > a.X:
		return piece.Under
	}
	return piece.Over
}

func edgeBox(a, b plane.Point) plane.Rect {
	return plane.Rect{Left: min(a.X, b.X), Right: max(a.X, b.X), Bottom: min(a.Y, b.Y), Top: max(a.Y, b.Y)}
}

// findFeatures lists the clean spans of every boundary edge that stands.
func (w *Wall) findFeatures() {
	for _, ring := range w.fixed {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			w.obstacles = append(w.obstacles, obstacle{edgeBox(a.Point, b.Point), w.wallEdge(piece.EdgeOf(a.On, facingOf(a, b)))})
		}
	}
	hulls := w.hulls()
	n := len(w.obstacles) + len(hulls)
	for i := len(w.Found.Openings) - 1; i >= 0; i-- {
		switch {
		case w.Found.Openings[i].Kind == survey.Pipe:
			n--
		case slices.Contains(w.free, i):
			n--
			w.hullOf = append([]int{n}, w.hullOf...)
		}
	}
	w.obstacles = append(w.obstacles, hulls...)
	found := map[piece.Edge]*feature{}
	n = 0
	for _, ring := range w.fixed {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			mine := n
			n++
			if a.On == 0 || a.Point == b.Point || w.moves(a.On) {
				continue
			}
			f := facingOf(a, b)
			e := w.wallEdge(piece.EdgeOf(a.On, f))
			if found[e] == nil {
				found[e] = w.newFeature(e, f)
			}
			w.addSpans(found[e], a.Point, b.Point, func(k int) bool { return k == mine })
			found[e].sway(a.Point, b.Point)
			found[e].edges = append(found[e].edges, spanOf(f, a.Point, b.Point))
		}
	}
	edges := make([]piece.Edge, 0, len(found))
	for e := range found {
		edges = append(edges, e)
	}
	slices.Sort(edges)
	for _, e := range edges {
		f := found[e]
		f.crests = w.crestsOf(f)
		if f.facing <= piece.OnRight {
			w.ends = append(w.ends, *f)
		} else {
			w.beds = append(w.beds, *f)
		}
	}
}

func (w *Wall) wallEdge(e piece.Edge) piece.Edge {
	if w.plumb {
		return e.Transposed()
	}
	return e
}

// moves tells whether the side is a free end or head, which may stand elsewhere.
func (w *Wall) moves(side plane.Side) bool {
	switch f := w.Found; side {
	case survey.SideLeft:
		return !f.Left.Meets && f.Left.Stops.Free()
	case survey.SideRight:
		return !f.Right.Meets && f.Right.Stops.Free()
	case survey.SideHead:
		return !f.Head.Meets && f.Head.Stops.Free()
	}
	return false
}

func (w *Wall) newFeature(e piece.Edge, f piece.Facing) *feature {
	side := w.rule.Sides[e.Side()]
	out := &feature{edge: e, facing: f, meets: side.Meets, reach: w.room.Sealant - side.Gap}
	switch end := w.Found.Left; {
	case e.Side() == survey.SideLeft && end.Meets:
		out.hidden = max(0, end.Cover-end.Gap-end.Behind)
	case e.Side() == survey.SideRight && w.Found.Right.Meets:
		end = w.Found.Right
		out.hidden = max(0, end.Cover-end.Gap-end.Behind)
	}
	return out
}

// hulls are where free ends, free heads and free openings may come to stand, and
// the holes of pipes, in the frame of the rows.
func (w *Wall) hulls() []obstacle {
	far := 100 * length.Metre
	var out []obstacle
	add := func(r plane.Rect, edge piece.Edge) {
		if w.plumb {
			r = r.Transposed()
		}
		out = append(out, obstacle{r, edge})
	}
	f := w.Found
	if w.moves(survey.SideLeft) {
		add(plane.Rect{Left: f.Left.Stops.From, Right: f.Left.Stops.To, Bottom: -far, Top: far}, piece.EdgeOf(survey.SideLeft, piece.OnLeft))
	}
	if w.moves(survey.SideRight) {
		add(plane.Rect{Left: f.Right.Stops.From, Right: f.Right.Stops.To, Bottom: -far, Top: far}, piece.EdgeOf(survey.SideRight, piece.OnRight))
	}
	if w.moves(survey.SideHead) {
		add(plane.Rect{Left: -far, Right: far, Bottom: f.Head.Stops.From, Top: f.Head.Stops.To}, piece.EdgeOf(survey.SideHead, piece.Over))
	}
	for i, o := range f.Openings {
		switch {
		case o.Kind == survey.Pipe:
			add(w.boxOf(i, o, w.outer), pipe)
		case slices.Contains(w.free, i):
			add(plane.Rect{Left: o.Left.From, Right: o.Left.To + o.Width.To, Bottom: o.Bottom.From, Top: o.Bottom.To + o.Height.To}, free)
		}
	}
	return out
}

// sway widens the range of v by the edge a–b.
func (f *feature) sway(a, b plane.Point) {
	_, p := uv(f.facing, a)
	_, q := uv(f.facing, b)
	if f.low == f.high && f.low == 0 {
		f.low, f.high = min(p, q), max(p, q)
		return
	}
	f.low, f.high = min(f.low, p, q), max(f.high, p, q)
}

func (f *feature) drift() length.Length { return f.high - f.low }

// addSpans adds the clean spans of the edge a–b, except those of the obstacles
// that skip names.
func (w *Wall) addSpans(f *feature, a, b plane.Point, skip func(int) bool) {
	whole := spanOf(f.facing, a, b)
	u0, u1, v0, v1 := whole.from, whole.to, whole.v0, whole.v1
	depth := w.depth(f) + w.room.Joint
	type stretch struct{ from, to length.Length }
	var busy []stretch
	for k, o := range w.obstacles {
		if skip(k) {
			continue
		}
		p0, p1, q0, q1 := rectUV(f.facing, o.Rect)
		if q1 > min(v0, v1) && q0 < max(v0, v1)+depth && p1 >= u0 && p0 <= u1 {
			busy = append(busy, stretch{p0, p1})
		}
	}
	slices.SortFunc(busy, func(a, b stretch) int { return int(max(-1, min(1, a.from-b.from))) })
	at := u0
	for _, s := range append(busy, stretch{u1, u1}) {
		if end := min(s.from, u1); end > at {
			f.spans = append(f.spans, span{at, end, whole.at(at), whole.at(end)})
		}
		at = max(at, s.to)
	}
}
