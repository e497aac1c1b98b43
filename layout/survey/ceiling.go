package survey

import (
	"slices"

	"coursewright/layout/length"
)

// underCeiling refuses an opening with an inside that stands out through the ceiling
// wherever it may stand, as a niche under a slope does whose upper corner is past it: its
// sides and its top could not be laid. What merely sticks out of the tile, and has no
// inside, is asked about (layout/doubt). What stands out by no more than readings may be
// wrong is left to that too.
func (r *resolver) underCeiling(p path, w WallFound, doubt length.Length) {
	if !w.Head.Meets {
		return
	}
	for i, o := range w.Openings {
		if o.Inside == nil {
			continue
		}
		at, ceiling := w.Head.highestFor(o)
		top := o.Bottom.From + o.Height.From
		if top <= ceiling+2*doubt {
			continue
		}
		r.faults.add(p.at(i).dot("bottom"), o.Called()+" with its top at "+top.Plain(r.units, r.units.FineStep()),
			"a top no higher than the ceiling over it, which is at "+ceiling.Plain(r.units, r.units.FineStep())+" where it stands best, from "+at.Plain(r.units, r.units.FineStep()))
	}
}

// highestFor is how high the ceiling is over an opening at its least width where it may
// stand best along the wall, and the left edge there. Between its readings the ceiling is
// straight, so that is at a limit of the range, at a reading with one of its edges, or
// where both edges are under the ceiling alike.
func (h HeadFound) highestFor(o OpeningFound) (left, ceiling length.Length) {
	wide := o.Width.From
	spots := []length.Length{o.Left.From, o.Left.To}
	for _, reading := range h.Readings {
		spots = append(spots, reading.At, reading.At-wide)
	}
	spots = slices.DeleteFunc(spots, func(x length.Length) bool { return x < o.Left.From || x > o.Left.To })
	slices.Sort(spots)
	for _, x := range level(h.Readings, spots, wide) {
		if y := lowest(h.Readings, x, x+wide); x == spots[0] || y > ceiling {
			left, ceiling = x, y
		}
	}
	return left, ceiling
}

// level adds to places, between which the ceiling over both edges of an opening is
// straight, those at which it is as high over the one as over the other.
func level(readings []Reading, places []length.Length, wide length.Length) []length.Length {
	out := places[:1:1]
	for i := 1; i < len(places); i++ {
		a, b := places[i-1], places[i]
		d, e := At(readings, a)-At(readings, a+wide), At(readings, b)-At(readings, b+wide)
		if d != e && (d < 0) != (e < 0) {
			out = append(out, a+length.Length(int64(b-a)*int64(d)/int64(d-e)))
		}
		out = append(out, b)
	}
	return out
}
