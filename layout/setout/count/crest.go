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
func (w *Wall) crestsOf(f *feature) []crest {
	var out []crest
	margin := w.margin()
	for _, e := range f.edges {
		for _, u := range [...]length.Length{e.from, e.from + margin, (e.from + e.to).Half(), e.to - margin, e.to} {
			if u < e.from || u > e.to {
				continue
			}
			if v := e.at(u); w.clearAt(f, u, v) {
				out = append(out, crest{v, f.steepest(w.room.Joint)})
			}
		}
	}
	return out
}

// margin is how far from an edge that crosses this one a piece is sure to be seen,
// and wider than sealant fills.
func (w *Wall) margin() length.Length {
	return max(w.Found.Left.Cover, w.Found.Right.Cover) + w.room.Sealant + w.room.Joint + 4
}

// steepest is how much an edge rises at most over a joint.
func (f *feature) steepest(joint length.Length) length.Length {
	most := length.Length(0)
	for _, e := range f.edges {
		if rise := (e.v1 - e.v0).Abs(); rise > 0 && e.to > e.from {
			most = max(most, length.Length(length.DivFloor(rise*joint, e.to-e.from))+3)
		}
	}
	return most
}

// clearAt tells whether the tile at a place of an edge, and that on the other side
// of a joint there, are cut in that direction by nothing else, and stand farther
// from the edges that cross than those hide or sealant fills.
func (w *Wall) clearAt(f *feature, u, v length.Length) bool {
	broad, deep := w.breadth(f)+2*w.room.Joint, w.depth(f)+w.room.Joint
	for _, o := range w.obstacles {
		u0, u1, v0, v1 := rectUV(f.facing, o.Rect)
		if v1 < v-deep || v0 > v+deep || u1 < u-broad || u0 > u+broad {
			continue
		}
		switch {
		case o.edge == f.edge:
		case o.edge == pipe && max(o.Width(), o.Height()) < min(w.rule.Along, w.rule.Across):
		case o.edge < 0:
			return false
		case o.edge.Across() == f.edge.Across():
			return false
		case u1 > u-w.margin() && u0 < u+w.margin():
			return false
		}
	}
	return true
}

// crest lowers least to what is left at the crests of an edge. It counts no piece: the
// one at a crest may stand in a corner, and be counted by the other edge there.
func (s *sure) crest(f *feature, first, tile length.Length, least *length.Length) {
	joint := s.w.room.Joint
	for _, c := range f.crests {
		is, left, _ := f.slot(first, tile, tile+joint, joint, c.v, c.v)
		if is != kept {
			continue
		}
		if left += c.over; *least == absent || left < *least {
			*least = left
		}
	}
}
