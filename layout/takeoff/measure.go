package takeoff

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Square measures, in the square unit of length.Area.
const (
	squareMM   = length.Area(length.Millimetre * length.Millimetre)
	squareInch = length.Area(length.Inch * length.Inch)
	squareFoot = 144 * squareInch
	squareM    = 1_000_000 * squareMM
)

// ceil divides and rounds up; it wants b above zero and a not below it.
func ceil[T ~int64](a, b T) T { return (a + b - 1) / b }

// covered is the area of wall that tile and its joints cover.
func (in Input) covered() length.Area {
	var twice length.Area
	for _, w := range in.Walls {
		twice += w.Shape.Region.Area2()
	}
	return twice / 2
}

// joints is the area of all grout joints: what the pieces leave of the walls, and
// those beside trim.
func (in Input) joints() length.Area {
	twice := 2 * in.covered()
	for _, w := range in.Walls {
		for _, p := range w.Pieces {
			twice -= p.Face.Area2()
		}
	}
	return max(twice/2, 0) + in.besideTrim()
}

// runs gives the lengths of the unbroken runs of a wall's edge on one side.
func runs(w plan.Wall, side plane.Side) []length.Length {
	var all []length.Length
	for _, ring := range w.Shape.Region {
		first := max(0, slices.IndexFunc(ring, func(c plane.Corner) bool { return c.On != side }))
		going := false
		for i := range ring {
			c, next := ring[(first+i)%len(ring)], ring[(first+i+1)%len(ring)]
			if c.On == side && !going {
				all = append(all, 0)
			}
			if going = c.On == side; going {
				all[len(all)-1] += distance(c.Point, next.Point)
			}
		}
	}
	return all
}

// distance is the length of an edge, rounded down to the unit.
func distance(a, b plane.Point) length.Length {
	dx, dy := (a.X - b.X).Abs(), (a.Y - b.Y).Abs()
	if dx == 0 || dy == 0 {
		return dx + dy
	}
	return length.Length(root(int64(dx)*int64(dx) + int64(dy)*int64(dy)))
}

// root is the whole square root, rounded down, by Newton's steps from above.
func root(n int64) int64 {
	x := n
	for y := (x + 1) / 2; y < x; y = (x + n/x) / 2 {
		x = y
	}
	return x
}

// areaText writes an area in whole square feet or tenths of a square metre.
func areaText(a length.Area, s length.System) string {
	if s == length.Metric {
		tenths := (10*a + squareM/2) / squareM
		return decimal(int64(tenths), 1) + " m²"
	}
	tenths := (10*a + squareFoot/2) / squareFoot
	return decimal(int64(tenths), 1) + " sq ft"
}

// sides calls f for every side of every wall that is of a kind.
func (in Input) sides(is func(survey.Boundary) bool, f func(plan.Wall, plane.Side, survey.Boundary)) {
	for _, w := range in.Walls {
		for i, b := range w.Shape.Sides {
			if i != int(survey.SideFactory) && is(b) {
				f(w, plane.Side(i), b)
			}
		}
	}
}
