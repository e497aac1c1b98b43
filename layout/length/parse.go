package length

import (
	"math/big"
	"strconv"
	"strings"
)

// Longest is the greatest distance Parse reads, either way of zero: two such
// lengths multiply into an Area.
const Longest = 100 * Metre

// longestText bounds what Parse looks at, in bytes.
const longestText = 80

// examples is what would be right when nothing better is known.
const examples = `a length such as 59 1/2, 4' 11-1/2" or 1511 mm`

// part is a number with the unit behind it, if there is one.
type part struct {
	number
	unit unit
	bare bool
}

// Parse reads a length as a person writes it; a bare number is in the unit of s.
//
//	59 1/2   59-1/2   59½   59.5   59,5   1/2   -3/8   +2
//	4' 11-1/2"   4'-11 1/2"   4 ft 11 1/2 in   5'   5' 6
//	1511 mm   151.1 cm   1.511 m   1 m 20 cm
//
// Curly quotes, primes, typographic dashes and fraction signs count as the
// plain ones. Laws:
//
//  1. It reads exactly or not at all: what is not a whole number of 1/960 mm
//     is refused, and the two nearest readings are named.
//  2. Parse(l.Format(s, 0), s) == l for every l within Longest.
//  3. Every refusal is a *ParseError.
func Parse(text string, s System) (Length, error) {
	if l, ok := plain(text, s); ok {
		return l, nil
	}
	return parse(text, s)
}

// parse is Parse for whatever a person writes.
func parse(text string, s System) (Length, error) {
	r := &reader{text: text}
	parts, total, err := r.all(s)
	if err != nil {
		return 0, r.eitherWay(err, s)
	}
	return r.keep(total, parts[0].unit.system())
}

// eitherWay completes the refusal of a comma that may set thousands apart: where the length it would give as a
// decimal mark cannot be kept, the readings next to that are named, since the same with a point is refused too.
func (r *reader) eitherWay(refused error, s System) error {
	if r.comma == nil {
		return refused
	}
	pointed := &reader{text: r.text[:r.comma.at] + "." + r.text[r.comma.at+1:]}
	parts, total, err := pointed.all(s)
	if err != nil || total.IsInt() {
		return refused
	}
	low, high := beside(total, parts[0].unit.system())
	return r.fail(refused.(*ParseError).At, refused.(*ParseError).Problem, r.comma.all+", or "+low+" or "+high+" where the comma is a decimal")
}

// ParsePrinted reads what Parse reads, and besides what MillimetreText prints:
// a number of millimetres with up to three decimals is read as the unit nearest
// to it. Units lie 1/960 mm apart and none is printed more than 0.0005 mm off,
// so the law is ParsePrinted(l.MillimetreText()+" mm", s) == l.
func ParsePrinted(text string, s System) (Length, error) {
	r := &reader{text: text}
	parts, total, err := r.all(s)
	if err != nil {
		return 0, err
	}
	if len(parts) == 1 && parts[0].unit == millimetre {
		micrometres := new(big.Rat).Mul(total, big.NewRat(1000, int64(Millimetre)))
		if micrometres.IsInt() {
			total = nearest(total)
		}
	}
	return r.keep(total, parts[0].unit.system())
}

// nearest gives the whole number nearest to a sum; a tie goes up.
func nearest(total *big.Rat) *big.Rat {
	raised := new(big.Rat).Add(total, big.NewRat(1, 2))
	return new(big.Rat).SetInt(new(big.Int).Div(raised.Num(), raised.Denom()))
}

// all reads the whole text: its parts and their sum.
func (r *reader) all(s System) ([]part, *big.Rat, error) {
	if len(r.text) > longestText {
		return nil, nil, r.fail(longestText, "is too long", examples)
	}
	negative := r.sign()
	if r.ended() {
		return nil, nil, r.fail(r.at, "is empty", examples)
	}
	parts, err := r.parts(s)
	if err != nil {
		return nil, nil, err
	}
	total := sum(parts)
	if negative {
		total.Neg(total)
	}
	return parts, total, nil
}

// sign takes the spaces and the sign before a length.
func (r *reader) sign() (negative bool) {
	r.spaces()
	if negative = r.take(dashes); !negative {
		r.take("+")
	}
	r.spaces()
	return negative
}

// parts takes all numbers with their units up to the end of the text.
func (r *reader) parts(s System) ([]part, error) {
	var parts []part
	for {
		p, err := r.part()
		if err != nil {
			return nil, err
		}
		if p.bare {
			if p, err = r.nameUnit(p, parts, s); err != nil {
				return nil, err
			}
		}
		if err := r.follows(p, parts); err != nil {
			return nil, err
		}
		parts = append(parts, p)
		if r.between(p) {
			return parts, nil
		}
	}
}

// part takes one number and the unit behind it.
func (r *reader) part() (part, error) {
	n, err := r.number()
	if err != nil {
		return part{}, err
	}
	p := part{number: n}
	r.spaces()
	switch {
	case r.take(inchMarks):
		p.unit = inch
	case !r.take(footMarks):
		p.unit, p.bare, err = r.word()
	case r.take(footMarks): // two foot marks are an inch mark
		p.unit = inch
	default:
		p.unit = foot
	}
	return p, err
}

const twoLengths = "holds two lengths"

// word takes a unit written out and the full stop after it; bare tells that
// there is none.
func (r *reader) word() (u unit, bare bool, err error) {
	at := r.at
	if strings.HasPrefix(r.rest(), "×") {
		return 0, false, r.fail(at, twoLengths, "one of them")
	}
	word := r.letters()
	switch word {
	case "":
		return 0, true, nil
	case "x", "X", "by": // 20 x 10, as it stands on a box of tile
		return 0, false, r.fail(at, twoLengths, "one of them")
	}
	u, known := unitWord(word)
	if !known {
		return 0, false, r.fail(at, "has no unit "+quote(word), "ft, in, m, cm or mm")
	}
	r.take(".")
	return u, false, nil
}

// nameUnit gives a bare number its unit: that of the system when it stands
// alone, inches behind feet. It must be the last.
func (r *reader) nameUnit(p part, before []part, s System) (part, error) {
	if !r.ended() {
		return p, r.fail(r.at, "has "+quote(r.rest())+" after a number", examples)
	}
	switch {
	case len(before) == 0:
		p.unit = ofSystem(s)
	case before[len(before)-1].unit == foot:
		p.unit = inch
	default:
		return p, r.fail(p.at, "has a number without its unit at the end", "a unit after every number: 1 m 20 cm")
	}
	return p, nil
}

// follows tells whether p may stand behind the parts before it: a smaller
// unit of the same system, less than one of the unit before, which is whole.
func (r *reader) follows(p part, before []part) error {
	if len(before) == 0 {
		return nil
	}
	last := before[len(before)-1]
	switch {
	case last.unit.system() != p.unit.system():
		return r.fail(p.at, "mixes "+last.unit.String()+" with "+p.unit.String(), "one system only")
	case last.unit.size() <= p.unit.size():
		return r.fail(p.at, "has "+p.unit.String()+" after "+last.unit.String(), "the larger unit first")
	case !last.whole:
		return r.fail(last.at, "has a fraction before the last number", "a fraction in the last number only")
	case p.in().Cmp(rat(last.unit.size())) >= 0:
		return r.fail(p.at, "has a full "+last.unit.String()+" or more in its "+p.unit.String(),
			"the full ones as "+last.unit.String())
	}
	return nil
}

// between steps over what may stand between two parts and tells whether the
// text has ended.
func (r *reader) between(p part) (ended bool) {
	r.spaces()
	if r.ended() {
		return true
	}
	if !r.take(",") && p.unit == foot {
		r.take(dashes)
	}
	r.spaces()
	return false
}

// in gives the part in units of 1/960 mm.
func (p part) in() *big.Rat { return new(big.Rat).Mul(p.value, rat(p.unit.size())) }

func rat(l Length) *big.Rat { return big.NewRat(int64(l), 1) }

func sum(parts []part) *big.Rat {
	total := new(big.Rat)
	for _, p := range parts {
		total.Add(total, p.in())
	}
	return total
}

// keep turns a sum into a length when it is one.
func (r *reader) keep(total *big.Rat, s System) (Length, error) {
	if new(big.Rat).Abs(total).Cmp(rat(Longest)) > 0 {
		return 0, r.fail(0, "is out of bounds", "a length within 100 m (328 ft)")
	}
	if total.IsInt() {
		return floor(total), nil
	}
	low, high := beside(total, s)
	nearest := "the nearest reading, " + low + " or " + high
	if all, is := r.thousands(); is {
		nearest += ", or " + all + " where the point sets thousands apart"
	}
	return 0, r.fail(0, "cannot be kept exactly", nearest)
}

// floor is the greatest whole number not over a sum.
func floor(total *big.Rat) Length {
	return Length(new(big.Int).Div(total.Num(), total.Denom()).Int64()) // rounds down: the divisor is positive
}

// beside writes the two readings between which a sum lies.
func beside(total *big.Rat, s System) (low, high string) {
	step, unit := s.finest(), " "+s.String()
	under := floor(total).FloorTo(step)
	return under.Plain(s, step) + unit, (under+step).Plain(s, step) + unit
}

// thousands gives the digits of a text that may be a whole number whose thousands a point sets apart: 1.006.
func (r *reader) thousands() (all string, may bool) {
	whole, part, _ := strings.Cut(r.text, ".")
	n, err := strconv.Atoi(whole)
	_, not := strconv.ParseUint(part, 10, 64)
	return whole + part, err == nil && not == nil && n > 0 && len(whole) <= 3 && len(part) == 3
}
