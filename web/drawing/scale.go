package drawing

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Scale is a distance on paper over the same distance on the wall, both in
// one unit: {1, 10} is one to ten. The zero Scale means "fit the screen".
type Scale struct{ Paper, Real int64 }

// On gives the distance on paper, rounded to the micrometre.
func (s Scale) On(l length.Length) Micron {
	n, d := int64(l)*1000*s.Paper, int64(length.Millimetre)*s.Real
	if n < 0 {
		return -Micron((-n + d/2) / d)
	}
	return Micron((n + d/2) / d)
}

// fit is the scale at which l takes w on paper.
func fit(l length.Length, w Micron) Scale {
	mm := max(1, int64(l/length.Millimetre))
	return Scale{Paper: int64(w), Real: mm * 1000}
}

// or gives the smaller of two scales.
func (s Scale) or(t Scale) Scale {
	if t.Paper*s.Real < s.Paper*t.Real {
		return t
	}
	return s
}

// frame lays one wall on paper: origin is where x = 0 on the level line falls.
type frame struct {
	wall   int
	origin Point
	scale  Scale
}

// exact is a distance on paper in micrometres, not rounded to whole ones.
func (f frame) exact(l length.Length) float64 {
	return float64(l) * 1000 * float64(f.scale.Paper) / (float64(length.Millimetre) * float64(f.scale.Real))
}

func (f frame) at(x, y length.Length) Point {
	return Point{f.origin.X + f.scale.On(x), f.origin.Y - f.scale.On(y)}
}

// rings lays a region on paper. Each ring begins at its leftmost corner, the
// highest of those, wherever the region begins it.
func (f frame) rings(r plane.Region) [][]Point {
	rings := make([][]Point, 0, len(r))
	for _, ring := range r {
		var pts []Point
		for _, c := range ring {
			if q := f.at(c.X, c.Y); len(pts) == 0 || pts[len(pts)-1] != q {
				pts = append(pts, q)
			}
		}
		rings = append(rings, fromFirst(pts))
	}
	return rings
}

func fromFirst(pts []Point) []Point {
	first := 0
	for i, p := range pts {
		if q := pts[first]; p.X < q.X || p.X == q.X && p.Y < q.Y {
			first = i
		}
	}
	return append(append([]Point{}, pts[first:]...), pts[:first]...)
}

func (f frame) rect(r plane.Rect) []Point {
	return corners(f.at(r.Left, r.Top), f.at(r.Right, r.Bottom))
}

// corners are the four corners of a box on paper.
func corners(a, b Point) []Point {
	return []Point{a, {b.X, a.Y}, b, {a.X, b.Y}}
}
