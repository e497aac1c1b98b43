package plane

import (
	"math"
	"math/bits"

	"coursewright/layout/length"
)

// Within tells whether p is no farther than reach from the edge a–b. Exact.
func Within(p, a, b Point, reach length.Length) bool {
	along := dot(a, b, p)
	switch {
	case along <= 0:
		return apart(p, a) <= square(reach)
	case along >= dot(a, b, b):
		return apart(p, b) <= square(reach)
	}
	// The distance from the line is cross / |ab|.
	cross := Through(a, b).Side(p)
	return compare128(uint64(max(cross, -cross)), uint64(max(cross, -cross)), uint64(square(reach)), uint64(apart(a, b))) <= 0
}

func dot(a, b, p Point) int64 {
	return int64(b.X-a.X)*int64(p.X-a.X) + int64(b.Y-a.Y)*int64(p.Y-a.Y)
}

func apart(a, b Point) int64 { return square(b.X-a.X) + square(b.Y-a.Y) }

func square(l length.Length) int64 { return int64(l) * int64(l) }

// compare128 compares a·b with c·d.
func compare128(a, b, c, d uint64) int {
	h1, l1 := bits.Mul64(a, b)
	h2, l2 := bits.Mul64(c, d)
	switch {
	case h1 < h2 || h1 == h2 && l1 < l2:
		return -1
	case h1 == h2 && l1 == l2:
		return 0
	}
	return 1
}

// Apart is how far p is from the line through a and b, or from a where they are one
// point, rounded down to the unit.
func Apart(p, a, b Point) length.Length {
	if a == b {
		return length.Length(root(uint64(apart(p, a))))
	}
	off := Through(a, b).Side(p)
	n := uint64(max(off, -off))
	hi, lo := bits.Mul64(n, n)
	square, _ := bits.Div64(hi, lo, uint64(apart(a, b)))
	return length.Length(root(square))
}

// Distance is how far two points are apart, rounded down to the unit.
func Distance(a, b Point) length.Length { return length.Length(root(uint64(apart(a, b)))) }

// Root is the square root of n, rounded down; n is not under zero.
func Root(n length.Area) length.Length { return length.Length(root(uint64(n))) }

func root(n uint64) uint64 {
	r := uint64(math.Sqrt(float64(n)))
	for r*r > n {
		r--
	}
	for (r+1)*(r+1) <= n {
		r++
	}
	return r
}
