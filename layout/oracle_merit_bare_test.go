package layout_test

import (
	"cmp"
	"math"
	"slices"
)

// reach is a stretch along an edge.
type reach struct{ from, to float64 }

// bareAlong is the length of a boundary edge that no kept piece comes near enough
// to for sealant, in sight and out of it.
func (j *judge) bareAlong(w *judgedWall, l limitEdge) (seen, low float64) {
	for _, r := range j.bareOn(w, l) {
		if l.low || j.besideUnseen(w, l, r) {
			low += r.to - r.from
		} else {
			seen += r.to - r.from
		}
	}
	return seen, low
}

// bareOn are the bare stretches of an edge: what is outline of the wall, less
// what the pieces cover.
func (j *judge) bareOn(w *judgedWall, l limitEdge) (out []reach) {
	if !l.meets {
		return nil
	}
	add := func(from, to float64) {
		switch last := len(out) - 1; {
		case to-from < same:
		case last >= 0 && from-out[last].to < same:
			out[last].to = to
		default:
			out = append(out, reach{from, to})
		}
	}
	covered := j.covered(w, l)
	for k := 1; k < len(l.chain); k++ {
		for _, open := range w.outlineOf(l, l.chain[k-1], l.chain[k]) {
			at := open.from
			for _, c := range covered {
				if c.to <= at || c.from >= open.to {
					continue
				}
				add(at, c.from)
				at = c.to
			}
			add(at, open.to)
		}
	}
	return out
}

// besideUnseen tells whether a bare stretch is only the end of an edge beside
// one out of sight: no longer than the strip that sealant may take there and a joint.
func (j *judge) besideUnseen(w *judgedWall, l limitEdge, r reach) bool {
	if r.to-r.from > max(0, l.slack)+j.joint+1 {
		return false
	}
	return slices.ContainsFunc(w.limits, func(other limitEdge) bool {
		return other.low && other.name != l.name && (other.touches(l.at(r.from)) || other.touches(l.at(r.to)))
	})
}

// at is the place of an edge at one value along it.
func (l limitEdge) at(along float64) xy {
	p := xy{along, between(l.chain, along)}
	if l.way == wayAcross {
		p = xy{p.y, p.x}
	}
	return p
}

// touches tells whether a place lies on an edge, within two units.
func (l limitEdge) touches(p xy) bool {
	for k := 1; k < len(l.chain); k++ {
		a, b := l.chain[k-1], l.chain[k]
		if l.way == wayAcross {
			a, b = xy{a.y, a.x}, xy{b.y, b.x}
		}
		if distance(p, a, b) <= 2 {
			return true
		}
	}
	return false
}

// covered are the stretches from which a kept piece is near enough, joints
// beside the pieces included, in order and apart.
func (j *judge) covered(w *judgedWall, l limitEdge) (out []reach) {
	for _, p := range w.pieces {
		slabs := p.cols
		if l.way == wayAcross {
			slabs = p.rows
		}
		out = append(out, j.nearEnough(slabs, l)...)
	}
	slices.SortFunc(out, func(a, b reach) int { return cmp.Compare(a.from, b.from) })
	var merged []reach
	for _, r := range out {
		if last := len(merged) - 1; last >= 0 && r.from <= merged[last].to {
			merged[last].to = max(merged[last].to, r.to)
			continue
		}
		merged = append(merged, r)
	}
	return merged
}

// nearEnough are the stretches from which one piece is near enough, across from it and as far aside of
// it as a joint is covered. What sealant fills is measured square to the edge.
func (j *judge) nearEnough(slabs []slab, l limitEdge) (out []reach) {
	for _, s := range slabs {
		for k := 1; k < len(l.chain); k++ {
			a, b := l.chain[k-1], l.chain[k]
			slack := l.slack + j.sealant*(math.Hypot(b.x-a.x, b.y-a.y)/(b.x-a.x)-1)
			aside := max(j.joint, slack)
			for _, c := range s.spans {
				ends := c.from
				if l.side < 0 {
					ends = c.to
				}
				for _, part := range [...][2]float64{{s.low - aside, s.low}, {s.low, s.high}, {s.high, s.high + aside}} {
					lo, hi := max(part[0], a.x), min(part[1], b.x)
					if hi-lo < 1e-6 {
						continue
					}
					off := func(at float64) float64 {
						piece := ends[0] + (ends[1]-ends[0])*(min(max(at, s.low), s.high)-s.low)/(s.high-s.low)
						return l.side*(piece-a.y-(b.y-a.y)*(at-a.x)/(b.x-a.x)) - slack
					}
					if behind := -slack - 2; off(lo) < behind && off(hi) < behind {
						continue // it stands on the far side of the edge, as over a tub beside its leg
					}
					if r, ok := under(lo, hi, off(lo), off(hi)); ok {
						out = append(out, r)
					}
				}
			}
		}
	}
	return out
}

// under is where a straight line from (lo, a) to (hi, b) is at most zero.
func under(lo, hi, a, b float64) (reach, bool) {
	const slight = 1e-4 // of a unit: less is no difference
	switch {
	case a > slight && b > slight:
		return reach{}, false
	case a <= slight && b <= slight:
		return reach{lo, hi}, true
	}
	at := lo + (hi-lo)*a/(a-b)
	if a > slight {
		return reach{at, hi}, true
	}
	return reach{lo, at}, true
}

// outlineOf is what of an edge from a to b is the outline of the wall: not
// beyond another edge, nor in an opening or a pipe's hole.
func (w *judgedWall) outlineOf(l limitEdge, a, b xy) []reach {
	const in = 0.25 // a quarter of a unit inside the wall
	a.y, b.y = a.y+l.side*in, b.y+l.side*in
	open := []reach{{a.x, b.x}}
	place := func(p xy) xy {
		if l.way == wayAcross {
			return xy{p.y, p.x}
		}
		return p
	}
	less := func(from, to float64) {
		var left []reach
		for _, o := range open {
			if o.from < from {
				left = append(left, reach{o.from, min(o.to, from)})
			}
			if o.to > to {
				left = append(left, reach{max(o.from, to), o.to})
			}
		}
		open = left
	}
	for _, block := range w.blocks {
		if s, t, ok := through(place(a), place(b), block.corners); ok {
			less(a.x+s*(b.x-a.x), a.x+t*(b.x-a.x))
		}
	}
	for _, p := range w.pipes {
		if s, t, ok := chordOf(place(a), place(b), p); ok {
			less(a.x+s*(b.x-a.x), a.x+t*(b.x-a.x))
		}
	}
	return open
}

// through is the part of a line from a to b inside a convex shape, as shares of the line.
func through(a, b xy, corners []xy) (from, to float64, ok bool) {
	from, to = 0, 1
	for i, p := range corners {
		q := corners[(i+1)%len(corners)]
		// Inside is to the left of p → q.
		over := (q.x-p.x)*(a.y-p.y) - (q.y-p.y)*(a.x-p.x)
		gain := (q.x-p.x)*(b.y-a.y) - (q.y-p.y)*(b.x-a.x)
		switch {
		case gain > 0:
			from = max(from, -over/gain)
		case gain < 0:
			to = min(to, -over/gain)
		case over <= 0:
			return 0, 0, false
		}
	}
	return from, to, to > from
}

// chordOf is the part of a line inside a pipe's hole.
func chordOf(a, b xy, p pipe) (from, to float64, ok bool) {
	dx, dy := b.x-a.x, b.y-a.y
	ex, ey := a.x-p.at.x, a.y-p.at.y
	long := dx*dx + dy*dy
	half, rest := (ex*dx+ey*dy)/long, (ex*ex+ey*ey-p.r*p.r)/long
	root := half*half - rest
	if root <= 0 {
		return 0, 0, false
	}
	from, to = max(0, -half-math.Sqrt(root)), min(1, -half+math.Sqrt(root))
	return from, to, to > from
}
