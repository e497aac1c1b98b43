package survey

import "coursewright/layout/length"

// Overlap is how far two openings reach into each other, at their largest,
// rounded up: the least way that would part them. It is zero or less where they
// touch at most.
func (a OpeningFound) Overlap(b OpeningFound) length.Length {
	switch {
	case a.Kind == Pipe && b.Kind == Pipe:
		return half(a.Diameter + b.Diameter - root(a.At-b.At, a.Up-b.Up))
	case a.Kind == Pipe:
		return a.into(b.Reach())
	case b.Kind == Pipe:
		return b.into(a.Reach())
	}
	e, f := a.Reach(), b.Reach()
	return min(e.Right-f.Left, f.Right-e.Left, e.Top-f.Bottom, f.Top-e.Bottom)
}

// into is how far a pipe reaches into a rectangle.
func (o OpeningFound) into(e Edges) length.Length {
	x, y := o.At-min(max(o.At, e.Left), e.Right), o.Up-min(max(o.Up, e.Bottom), e.Top)
	if x != 0 || y != 0 {
		return half(o.Diameter - root(x, y))
	}
	return half(o.Diameter) + min(o.At-e.Left, e.Right-o.At, o.Up-e.Bottom, e.Top-o.Up)
}

// root is twice the straight way along x and y, rounded down.
func root(x, y length.Length) length.Length {
	x, y = 2*x, 2*y
	n := x.Times(x) + y.Times(y)
	low, high := length.Length(0), x.Abs()+y.Abs()+1
	for low+1 < high {
		if mid := (low + high) / 2; mid.Times(mid) <= n {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// half is half a length, rounded up.
func half(l length.Length) length.Length { return length.Length(length.DivFloor(l+1, 2)) }
