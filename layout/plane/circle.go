package plane

import "coursewright/layout/length"

// octant holds (cos, sin) of 0, 1/64, … 8/64 of a turn, times 2^20 and divided
// by the cosine of half a step, so that the ring stands outside the circle.
var octant = [9][2]int64{
	{1049841, 0}, {1044786, 102903}, {1029669, 204814}, {1004635, 304753},
	{969927, 401757}, {925877, 494892}, {872911, 583261}, {811538, 666012},
	{742350, 742350},
}

// Circle is a ring of 64 sides round the circle of the given diameter: never
// inside it, and at most 0.13 % of the radius plus one unit outside.
func Circle(centre Point, diameter length.Length, on Side) Ring {
	ring := make(Ring, 0, 64)
	for i := range 64 {
		x, y := unit(i)
		ring = append(ring, Corner{Point{centre.X + out(x, diameter), centre.Y + out(y, diameter)}, on})
	}
	return ring
}

func unit(i int) (x, y int64) {
	switch q := i % 16; {
	case q <= 8:
		x, y = octant[q][0], octant[q][1]
	default:
		x, y = octant[16-q][1], octant[16-q][0]
	}
	for range i / 16 {
		x, y = -y, x
	}
	return x, y
}

// out is half the diameter times v/2^20, away from zero.
func out(v int64, diameter length.Length) length.Length {
	const den = 1 << 21
	n := v * int64(diameter)
	if n < 0 {
		return -length.Length((-n + den - 1) / den)
	}
	return length.Length((n + den - 1) / den)
}
