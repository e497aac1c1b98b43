package bond

import (
	"math/bits"

	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Sines, cosines and roots in parts of a thousand million, to the nearest part;
// over 3 m that is a third of a unit at most.
const (
	whole             = 1_000_000_000
	rootThird         = 577_350_269 // 1/√3
	rootThreeQuarters = 866_025_404 // √3/2, the cosine of 30°
	rootHalfParts     = 707_106_781 // 1/√2, the cosine of 45°
)

// parts is l times n/whole, rounded down, or up where it is not whole.
func parts(l length.Length, n int64, up bool) length.Length { return fraction(l, n, whole, up) }

// over is l divided by n/whole, rounded down or up.
func over(l length.Length, n int64, up bool) length.Length { return fraction(l, whole, n, up) }

// fraction is l·num/den for l of zero or more.
func fraction(l length.Length, num, den int64, up bool) length.Length {
	hi, lo := bits.Mul64(uint64(l), uint64(num))
	q, rest := bits.Div64(hi, lo, uint64(den))
	if up && rest > 0 {
		q++
	}
	return length.Length(q)
}

// rootHalf is l/√2 and rootTwo is l·√2, rounded up.
func rootHalf(l length.Length, up bool) length.Length { return parts(l, rootHalfParts, up) }

func rootTwo(l length.Length) length.Length { return over(l, rootHalfParts, true) }

// slope is the cosine and the sine of the angles that chevrons are made with.
func slope(degrees int) (cos, sin int64) {
	switch degrees {
	case 30:
		return rootThreeQuarters, whole / 2
	case 60:
		return whole / 2, rootThreeQuarters
	}
	return rootHalfParts, rootHalfParts
}

// LeastWidth is the smallest distance between two parallel lines that hold a
// convex ring, rounded down to the unit. One of the two runs along an edge.
func LeastWidth(r plane.Ring) length.Length {
	least := length.Length(-1)
	for i, a := range r {
		b := r[(i+1)%len(r)]
		if a.Point == b.Point {
			continue
		}
		wide := length.Length(0)
		for _, c := range r {
			wide = max(wide, plane.Apart(c.Point, a.Point, b.Point))
		}
		if least < 0 || wide < least {
			least = wide
		}
	}
	return max(0, least)
}
