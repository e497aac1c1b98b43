package count

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// feature is one boundary edge where arithmetic alone is sure of what is cut, in
// the frame of the rows: the clean spans of it, with nothing else within a tile.
// Along it runs u, away from it into the tile v.
type feature struct {
	edge   piece.Edge   // in the frame of the wall
	alone  []piece.Edge // the same, for a run of what it alone cuts
	facing piece.Facing
	edges  []straight // the edge whole
	spans  []span
	crests []crest
	low    length.Length // the range of v over the whole edge
	high   length.Length
	hidden length.Length // how much of a piece the next wall's tile covers
	deep   length.Length // how far a tile reaches away from the edge
	broad  length.Length // and along it
	joint  length.Length
	meets  bool
	reach  length.Length // how wide a strip sealant takes along the edge
	slant  length.Length // how much farther off it still reaches a tile, where the edge slants most
}

// straight is a straight edge whole: its number among the obstacles, and which of the
// clean spans are of it.
type straight struct {
	span
	mine, first, last int
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

// fills is how far off sealant still reaches a tile.
func (f *feature) fills() length.Length { return f.reach + f.slant }

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

// addEdge adds the straight edge a–b, which is the obstacle mine, with its clean spans: what
// no other comes near.
func (f *feature) addEdge(a, b plane.Point, obstacles []obstacle, mine int) {
	f.sway(a, b)
	e := straight{span: spanOf(f.facing, a, b), mine: mine, first: len(f.spans)}
	f.spans = append(f.spans, f.clean(&e, obstacles, max(e.v0, e.v1)+f.pitch())...)
	e.last = len(f.spans)
	f.edges = append(f.edges, e)
}

// clean lists the spans of a straight edge that no obstacle comes near between it and a
// distance from it.
func (f *feature) clean(e *straight, obstacles []obstacle, high length.Length) []span {
	var out []span
	var busy []stretch
	low := min(e.v0, e.v1)
	for k, o := range obstacles {
		if k == e.mine {
			continue
		}
		u0, u1, v0, v1 := rectUV(f.facing, o.Rect)
		if v1 > low && v0 < high && u1 >= e.from && u0 <= e.to {
			busy = append(busy, stretch{u0, u1})
		}
	}
	slices.SortFunc(busy, func(a, b stretch) int { return cmp.Compare(a.from, b.from) })
	at := e.from
	for _, s := range append(busy, stretch{e.to, e.to}) {
		if end := min(s.from, e.to); end > at {
			out = append(out, span{at, end, e.at(at), e.at(end)})
		}
		at = max(at, s.to)
	}
	return out
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

// pitch is from tile to tile away from the edge.
func (f *feature) pitch() length.Length { return f.deep + f.joint }

// guaranteed is how many slots of one size lie in a span wherever they begin, when
// they repeat every period.
func guaranteed(span, size, period length.Length) int {
	return int(max(0, span-size) / period)
}
