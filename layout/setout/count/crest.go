package count

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// crest is a place of an edge at which, wherever the tiles stand, a tile lies or
// ends in the joint beside it that nothing else cuts in the same direction but what
// runs beside the edge. What is left of that tile is never more than is left there,
// so a run of what cuts it has at most that: also where no span is as long as a tile.
type crest struct {
	v      length.Length
	over   length.Length // how much more may be left where a joint stands at the place
	beside []parallel
}

// parallel is another edge that cuts in the same direction within a tile of a crest.
type parallel struct {
	edge      piece.Edge
	low, high length.Length // how far it stands from where v is 0
	opposite  bool          // it faces the crest, farther off than sealant fills, and cuts the tile there wherever it comes into it
}

// cutWith is the edge that cuts a tile at a crest from the other side, where one does and how far
// from the crest it stands at most; it is false where it is not sure what cuts the tile that lies
// from low to high.
func (c *crest) cutWith(low, high length.Length) (other *parallel, sure bool) {
	for i := range c.beside {
		switch o := &c.beside[i]; {
		case o.high <= low || o.low >= high:
		case other == nil && o.opposite && o.high < high:
			other = o
		default:
			return nil, false
		}
	}
	return other, true
}

// crestsOf lists the crests among the corners and the middles of an edge.
func (b *boundary) crestsOf(f *feature) []crest {
	var out []crest
	margin := b.w.margin()
	for _, e := range f.edges {
		for _, u := range [...]length.Length{e.from, e.from + margin, (e.from + e.to).Half(), e.to - margin, e.to} {
			if u < e.from || u > e.to {
				continue
			}
			v := e.at(u)
			if beside, clear := b.clearAt(f, u, v); clear {
				out = append(out, crest{v, f.steepest(), beside})
			}
		}
	}
	return out
}

// steepest is how much an edge rises at most over a joint.
func (f *feature) steepest() length.Length {
	most := length.Length(0)
	for _, e := range f.edges {
		if rise := (e.v1 - e.v0).Abs(); rise > 0 && e.to > e.from {
			most = max(most, length.Length(length.DivFloor(rise*f.joint, e.to-e.from))+3)
		}
	}
	return most
}

// clearAt tells whether the tile at a place of an edge, and that on the other side
// of a joint there, are cut in that direction by nothing else but what runs beside the
// edge, and stand farther from the edges that cross than those hide or sealant fills.
func (b *boundary) clearAt(f *feature, u, v length.Length) (near []parallel, clear bool) {
	broad, deep, margin := f.broad+2*f.joint, f.pitch(), b.w.margin()
	for _, o := range b.obstacles {
		u0, u1, v0, v1 := rectUV(f.facing, o.Rect)
		if v1 < v-deep || v0 > v+deep || u1 < u-broad || u0 > u+broad {
			continue
		}
		switch {
		case o.edge == f.edge:
		case o.edge == pipe && max(o.Width(), o.Height()) < min(b.w.rule.Along, b.w.rule.Across):
		case o.edge < 0, o.edge.Across() == f.edge.Across() && b.w.moves(o.edge.Side()):
			return nil, false
		case o.edge.Across() == f.edge.Across():
			opposite := o.edge.Facing()^f.edge.Facing() == 1 && v0 > v+margin && u0 <= u-margin && u1 >= u+margin
			near = append(near, parallel{o.edge, v0, v1, opposite})
		case u1 > u-margin && u0 < u+margin:
			return nil, false
		}
	}
	return near, true
}
