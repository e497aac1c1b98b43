package length

import (
	"math/big"
	"strings"
)

// areas is what would be right where an area is wanted.
const areas = "an area such as 11.63 sq ft, 1080 sq in or 1.08 m²"

// largestArea bounds ParseArea: ten thousand square metres.
const largestArea = 100 * Area(Metre) * 100 * Area(Metre)

// ParseArea reads an area as it stands on a box: a number and a unit, sq ft,
// sq in or m². A bare number is in the unit usual on boxes, sq ft or m². It is
// rounded to the nearest square unit, far under anything printed. The error is
// a *ParseError.
func ParseArea(text string, s System) (Area, error) {
	r := &reader{text: text}
	if len(text) > longestText {
		return 0, r.fail(longestText, "is too long", areas)
	}
	r.spaces()
	n, err := r.number()
	if err != nil {
		err.(*ParseError).Want = areas
		return 0, err
	}
	r.spaces()
	at := r.at
	unit, known := areaUnit(r.rest(), s)
	if !known {
		return 0, r.fail(at, "has no unit of area "+quote(r.rest()), "sq ft, sq in or m²")
	}
	total := nearest(new(big.Rat).Mul(n.value, new(big.Rat).SetInt64(int64(unit.Times(unit)))))
	if total.Cmp(new(big.Rat).SetInt64(int64(largestArea))) > 0 {
		return 0, r.fail(0, "is out of bounds", "an area within 10 000 m²")
	}
	return Area(total.Num().Int64()), nil
}

// areaUnit gives the side of the square that a unit of area is.
func areaUnit(word string, s System) (side Length, known bool) {
	word = strings.ToLower(strings.TrimRight(word, spaceMarks+"."))
	word = strings.NewReplacer(".", "", "²", "2", "^2", "2", "square ", "sq ", "  ", " ").Replace(word)
	switch word {
	case "":
		if s == Metric {
			return Metre, true
		}
		return Foot, true
	case "sq ft", "sqft", "ft2", "sf", "sq feet", "sq foot":
		return Foot, true
	case "sq in", "sqin", "in2", "sq inches":
		return Inch, true
	case "m2", "sq m", "sqm", "sq metres", "sq meters", "qm":
		return Metre, true
	}
	return 0, false
}
