package cuts

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
)

// Slanted tells whether the tile that is cut is made with slanted ends, as a chevron's: what is
// cut parallel to an end is told by its marks, because no fence holds a point.
func (g Group) Slanted() bool {
	n := len(g.Outline)
	if n != 4 {
		return false
	}
	a, b, c := g.Outline[0].Point, g.Outline[1].Point, g.Outline[2].Point
	dot := (b.X - a.X).Times(c.X-b.X) + (b.Y - a.Y).Times(c.Y-b.Y)
	square := plane.Distance(a, b).Times(plane.Distance(b, c))
	return max(dot, -dot) > square/100
}

// Pointed tells whether the tile that is cut has more than four sides, as a hexagon and a picket: lying on one it
// has points at its ends.
func (g Group) Pointed() bool { return len(g.Outline) > 4 }

// bases are the edges of an outline on which the tile may lie and look the same;
// the longest where some are longer than others. Without turning it is only one.
func bases(outline plane.Ring, turn bool) []int {
	n := len(outline)
	long := func(i int) length.Length { return plane.Distance(outline[i%n].Point, outline[(i+1)%n].Point) }
	first := 0
	for i := range n {
		if long(i) > long(first)+2 {
			first = i
		}
	}
	all := []int{first}
	for k := 1; turn && k < n; k++ {
		same := true
		for i := range n {
			same = same && (long(first+i)-long(first+k+i)).Abs() <= 4 &&
				(diagonal(outline, first+i)-diagonal(outline, first+k+i)).Abs() <= 4
		}
		if same {
			all = append(all, (first+k)%n)
		}
	}
	return all
}

// diagonal is from a corner to the next but one.
func diagonal(r plane.Ring, i int) length.Length {
	return plane.Distance(r[i%len(r)].Point, r[(i+2)%len(r)].Point)
}

// frame is a tile's own frame: its origin is a corner, and x runs along an edge.
type frame struct {
	origin, along plane.Point
	long          length.Length
}

func frameOf(outline plane.Ring, base int) frame {
	a, b := outline[base].Point, outline[(base+1)%len(outline)].Point
	return frame{a, plane.Point{X: b.X - a.X, Y: b.Y - a.Y}, plane.Distance(a, b)}
}

// in gives a place on the wall as it is on the tile, to the unit.
func (f frame) in(p plane.Point) plane.Point {
	x, y := p.X-f.origin.X, p.Y-f.origin.Y
	over := func(a length.Area) length.Length {
		return length.Length(length.DivFloor(length.Length(2*a)+f.long, 2*f.long))
	}
	return plane.Point{X: over(f.along.X.Times(x) + f.along.Y.Times(y)), Y: over(f.along.X.Times(y) - f.along.Y.Times(x))}
}

func (f frame) region(r plane.Region) plane.Region {
	out := make(plane.Region, len(r))
	for i, ring := range r {
		out[i] = make(plane.Ring, len(ring))
		for k, c := range ring {
			out[i][k] = plane.Corner{Point: f.in(c.Point), On: c.On}
		}
	}
	return out
}

// lying is a piece of a pattern as it lies on the saw: in its tile's own frame, on
// whichever of the edges that look the same makes its corners come first, so that
// pieces which are alike when they are turned are one line.
func lying(p piece.Piece, turn bool, step length.Length) (piece.Piece, frame) {
	var best piece.Piece
	var in frame
	var text string
	for _, base := range bases(p.Outline, turn) {
		f := frameOf(p.Outline, base)
		q := p
		q.Face = f.region(p.Face.Straight())
		q.Outline = append(slices.Clone(p.Outline[base:]), p.Outline[:base]...)
		q.Outline = f.region(plane.Region{q.Outline})[0]
		q.Tile = plane.Region{q.Outline}.Bounds()
		var key []byte
		for _, c := range fromLowest(q.Face[0]) {
			key = appendLengths(key, c.X.RoundTo(step), c.Y.RoundTo(step))
		}
		if in.long == 0 || string(key) < text {
			best, in, text = q, f, string(key)
		}
	}
	return best, in
}

// around is the tile of a piece of a pattern, where its face is.
func (w work) around() plane.Ring {
	if w.own == nil {
		return nil
	}
	out := slices.Clone(w.piece.Outline)
	for i, c := range out {
		out[i].Point = plane.Point{X: c.X - w.box.Left, Y: c.Y - w.box.Bottom}
	}
	return out
}

// barely tells whether all that is cut off the tile of a piece of a pattern is under a step wide: no corner of
// the tile is as far as that from the piece.
func (w work) barely(step length.Length) bool {
	if len(w.piece.Face) != 1 {
		return false
	}
	ring := w.piece.Face[0]
	for _, c := range w.piece.Outline {
		near := false
		for i, a := range ring {
			near = near || plane.Within(c.Point, a.Point, ring[(i+1)%len(ring)].Point, step-1)
		}
		if !near {
			return false
		}
	}
	return true
}
