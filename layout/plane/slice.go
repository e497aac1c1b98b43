package plane

import (
	"slices"

	"coursewright/layout/length"
)

// Slices are the least and greatest level distances through a region.
type Slices struct {
	Least length.Length // between two plumb or leaning edges that see each other; Found is false where no two do
	Most  length.Length // between any two edges
	Found bool
}

// Across measures the region level, slice by slice between the heights of its
// corners, where every width changes in a straight line. An edge counts as
// plumb or leaning when it rises more than it runs. Widths are rounded to the
// unit only where a leaning edge is measured between its ends.
func (r Region) Across() Slices { return r.across(0) }

// across measures level between edges that rise more than they run, or, where one more unit
// is given them, as much.
func (r Region) across(more length.Length) Slices {
	var s Slices
	if box, is := r.upright(); is {
		return Slices{Least: box.Width(), Most: box.Width(), Found: true}
	}
	var (
		heights [24]length.Length
		flanks  [8]flank
	)
	ys := r.heights(heights[:0])
	for i := 1; i < len(ys); i++ {
		s.slab(r.spanning(ys[i-1], ys[i], more, flanks[:0]))
	}
	return s
}

// Upward measures the region plumb, as Across does level: an edge at 45° is a level one.
func (r Region) Upward() Slices {
	if box, is := r.upright(); is {
		return Slices{Least: box.Height(), Most: box.Height(), Found: true}
	}
	return r.Transposed().across(1)
}

// upright tells whether the region is an upright rectangle and nothing else.
func (r Region) upright() (Rect, bool) {
	if len(r) != 1 || len(r[0]) != 4 {
		return Rect{}, false
	}
	a, b, c, d := r[0][0].Point, r[0][1].Point, r[0][2].Point, r[0][3].Point
	level := a.Y == b.Y && b.X == c.X && c.Y == d.Y && d.X == a.X
	plumb := a.X == b.X && b.Y == c.Y && c.X == d.X && d.Y == a.Y
	box := r.Bounds()
	return box, (level || plumb) && !box.Empty()
}

// heights are those of all corners, ascending.
func (r Region) heights(ys []length.Length) []length.Length {
	for _, ring := range r {
		for _, c := range ring {
			ys = append(ys, c.Y)
		}
	}
	slices.Sort(ys)
	return slices.Compact(ys)
}

// flank is an edge as it passes one slab: x at its bottom and at its top.
type flank struct {
	low, high length.Length
	steep     bool
}

// spanning lists the edges that pass the slab between two heights, from left to right.
func (r Region) spanning(y0, y1, more length.Length, out []flank) []flank {
	for _, ring := range r {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)].Point
			p := a.Point
			if p.Y > b.Y {
				p, b = b, p
			}
			if p.Y <= y0 && b.Y >= y1 && p.Y < b.Y {
				out = append(out, flank{xAt(p, b, y0), xAt(p, b, y1), b.Y-p.Y+more > max(b.X-p.X, p.X-b.X)})
			}
		}
	}
	slices.SortFunc(out, func(a, b flank) int {
		return int(max(-1, min(1, a.low+a.high-b.low-b.high)))
	})
	return out
}

func xAt(a, b Point, y length.Length) length.Length {
	switch {
	case a.X == b.X, y == a.Y:
		return a.X
	case y == b.Y:
		return b.X
	}
	return a.X + share(b.X-a.X, int64(y-a.Y), int64(b.Y-a.Y))
}

func (s *Slices) slab(flanks []flank) {
	for i := 1; i < len(flanks); i += 2 {
		a, b := flanks[i-1], flanks[i]
		low, high := b.low-a.low, b.high-a.high
		s.Most = max(s.Most, low, high)
		if !a.steep || !b.steep {
			continue
		}
		if w := max(0, min(low, high)); !s.Found || w < s.Least {
			s.Least, s.Found = w, true
		}
	}
}

// HeightAt is the height of a chain that runs from left to right, at x, rounded
// as BendX rounds; outside the chain its end's height.
func HeightAt(chain []Point, x length.Length) length.Length {
	for i, p := range chain {
		if x > p.X {
			continue
		}
		if i == 0 || x == p.X {
			return p.Y
		}
		a := chain[i-1]
		if a.Y == p.Y {
			return p.Y
		}
		return cross(a, p, int64(a.X-x), int64(p.X-x)).Y
	}
	return chain[len(chain)-1].Y
}

// Steep tells whether the edge from a to b counts as plumb or leaning: it rises
// more than it runs.
func Steep(a, b Corner) bool { return (b.Y - a.Y).Abs() > (b.X - a.X).Abs() }
