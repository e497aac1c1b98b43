package plane

import (
	"slices"

	"coursewright/layout/length"
)

// BendX puts a corner on every raked edge where it crosses one of the plumb
// lines at xs, ascending. Every crossing is rounded from the edge as given, so
// the result does not depend on the order of the lines, and cutting the region
// along any of them afterwards is exact.
func (r Region) BendX(xs []length.Length) Region {
	return r.bendAt(func(a, b Point) []Point {
		return crossings(xs, min(a.X, b.X), max(a.X, b.X), func(x length.Length) Point {
			return cross(a, b, int64(a.X-x), int64(b.X-x))
		})
	})
}

// BendY does the same at level lines.
func (r Region) BendY(ys []length.Length) Region {
	return r.bendAt(func(a, b Point) []Point {
		return crossings(ys, min(a.Y, b.Y), max(a.Y, b.Y), func(y length.Length) Point {
			return cross(a, b, int64(a.Y-y), int64(b.Y-y))
		})
	})
}

// crossings are the places at the lines strictly between low and high.
func crossings(lines []length.Length, low, high length.Length, at func(length.Length) Point) []Point {
	i, _ := slices.BinarySearch(lines, low+1)
	var out []Point
	for ; i < len(lines) && lines[i] < high; i++ {
		out = append(out, at(lines[i]))
	}
	return out
}

func (r Region) bendAt(places func(a, b Point) []Point) Region {
	out := r
	for i, ring := range r {
		bent := ring.bendAt(places)
		if len(bent) == len(ring) {
			continue
		}
		if &out[0] == &r[0] {
			out = slices.Clone(r)
		}
		out[i] = bent
	}
	return out
}

func (r Ring) bendAt(places func(a, b Point) []Point) Ring {
	var out Ring
	for i, a := range r {
		b := r[(i+1)%len(r)]
		if out != nil {
			out = append(out, a)
		}
		if a.X == b.X || a.Y == b.Y {
			continue
		}
		found := places(a.Point, b.Point)
		if len(found) == 0 {
			continue
		}
		if out == nil {
			out = append(make(Ring, 0, len(r)+len(found)), r[:i+1]...)
		}
		// Along the edge, whichever way it runs.
		slices.SortFunc(found, func(p, q Point) int { return ahead(a.Point, b.Point, p, q) })
		for _, p := range found {
			out = append(out, Corner{p, a.On})
		}
	}
	if out == nil {
		return r
	}
	return out.tidy()
}

// ahead orders p and q on the way from a to b.
func ahead(a, b, p, q Point) int {
	way := func(from, to, u, v length.Length) int {
		if to < from {
			u, v = v, u
		}
		return int(max(-1, min(1, u-v)))
	}
	if c := way(a.X, b.X, p.X, q.X); c != 0 {
		return c
	}
	return way(a.Y, b.Y, p.Y, q.Y)
}
