package count

import "coursewright/layout/length"

// crest is a place of an edge at which, wherever the tiles stand, a tile lies or
// ends in the joint beside it that nothing else cuts in the same direction. What
// is left of that tile is never more than the edge leaves there, so a run of the
// edge has at most that: also where no span is as long as a tile.
type crest struct {
	v    length.Length
	over length.Length // how much more may be left where a joint stands at the place
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
			if v := e.at(u); b.clearAt(f, u, v) {
				out = append(out, crest{v, f.steepest()})
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
// of a joint there, are cut in that direction by nothing else, and stand farther
// from the edges that cross than those hide or sealant fills.
func (b *boundary) clearAt(f *feature, u, v length.Length) bool {
	broad, deep := f.broad+2*f.joint, f.pitch()
	for _, o := range b.obstacles {
		u0, u1, v0, v1 := rectUV(f.facing, o.Rect)
		if v1 < v-deep || v0 > v+deep || u1 < u-broad || u0 > u+broad {
			continue
		}
		switch {
		case o.edge == f.edge:
		case o.edge == pipe && max(o.Width(), o.Height()) < min(b.w.rule.Along, b.w.rule.Across):
		case o.edge < 0:
			return false
		case o.edge.Across() == f.edge.Across():
			return false
		case u1 > u-b.w.margin() && u0 < u+b.w.margin():
			return false
		}
	}
	return true
}
