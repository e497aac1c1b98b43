package length

import (
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// reader walks along a text.
type reader struct {
	text  string
	at    int    // byte offset
	comma *comma // where one was refused that may set thousands apart
}

// comma is one that may set thousands apart or be a decimal mark: 1,180.
type comma struct {
	at  int    // byte offset
	all string // the digits on both sides of it
}

// number is one number as written, with where it stands.
type number struct {
	value *big.Rat
	whole bool // digits alone
	at    int
}

func (r *reader) rest() string { return r.text[r.at:] }

func (r *reader) ended() bool { return r.at == len(r.text) }

// fail refuses the text at a byte.
func (r *reader) fail(at int, problem, want string) error {
	return &ParseError{Text: r.text, At: at, Problem: problem, Want: want}
}

// take steps over the next sign when it is one of set.
func (r *reader) take(set string) bool {
	c, size := utf8.DecodeRuneInString(r.rest())
	if size == 0 || !strings.ContainsRune(set, c) {
		return false
	}
	r.at += size
	return true
}

// spaces steps over spaces and tells whether there were any.
func (r *reader) spaces() bool {
	from := r.at
	for r.take(spaceMarks) {
	}
	return r.at > from
}

// digits takes a run of the digits 0 to 9, which may be empty.
func (r *reader) digits() string {
	from := r.at
	for r.take("0123456789") {
	}
	return r.text[from:r.at]
}

// letters takes a run of letters, which may be empty.
func (r *reader) letters() string {
	rest := r.rest()
	word := rest
	if end := strings.IndexFunc(rest, func(c rune) bool { return !unicode.IsLetter(c) }); end >= 0 {
		word = rest[:end]
	}
	r.at += len(word)
	return word
}

// number takes a whole number, a decimal, a fraction or a whole number with a
// fraction: 59, 59.5, 59,5, 1/2, ½, 59 1/2, 59-1/2, 59½.
func (r *reader) number() (number, error) {
	n := number{at: r.at}
	whole := r.digits()
	var err error
	switch {
	case r.decimalAhead():
		n.value, err = r.decimal(whole, n.at)
	case whole == "":
		n.value, err = r.fraction()
	case r.slashAhead():
		r.at = n.at
		n.value, err = r.fraction()
	case r.parted(n.at, whole) != nil:
		err = r.parted(n.at, whole)
	default:
		n.value = ratio(whole, "1")
		n.whole, err = r.addFraction(n.value)
	}
	if err == nil && n.value == nil {
		err = r.noNumber(n.at)
	}
	return n, err
}

// noNumber refuses what stands where a number is needed.
func (r *reader) noNumber(at int) error {
	if r.at = at; r.ended() {
		return r.fail(at, "ends where a number is needed", examples)
	}
	return r.fail(at, "has "+quote(r.rest())+" where a number is needed", examples)
}

func (r *reader) slashAhead() bool {
	ahead := *r
	return ahead.take(slashes)
}

// decimalAhead tells whether a decimal mark with a digit follows.
func (r *reader) decimalAhead() bool {
	ahead := *r
	return ahead.take(".,") && ahead.digits() != ""
}

// decimal takes the decimal mark and the digits after it. A comma that could
// set thousands apart is refused rather than guessed at.
func (r *reader) decimal(whole string, at int) (*big.Rat, error) {
	mark := r.at
	isComma := r.take(",")
	if !isComma {
		r.take(".")
	}
	part := r.digits()
	if isComma && len(part) == 3 && len(whole) <= 3 && strings.Trim(whole, "0") != "" {
		r.comma = &comma{mark, whole + part}
		return nil, r.fail(at, "may mean thousands or a decimal",
			whole+part+" or "+whole+"."+part)
	}
	return ratio(whole+part, "1"+strings.Repeat("0", len(part))), nil
}

// addFraction adds the fraction that may follow a whole number to its value
// and tells whether there was none. What is no fraction stays for the caller.
func (r *reader) addFraction(value *big.Rat) (none bool, err error) {
	back := r.at
	if !r.spaces() {
		r.take(dashes)
	}
	at := r.at
	part, err := r.fraction()
	if err != nil {
		return false, err
	}
	if part == nil {
		r.at = back
		return true, nil
	}
	if part.Cmp(big.NewRat(1, 1)) >= 0 {
		return false, r.fail(at, "has a fraction of one or more after a whole number", examples)
	}
	value.Add(value, part)
	return false, nil
}

// fraction takes ½ or 1/2; it gives nil where there is none.
func (r *reader) fraction() (*big.Rat, error) {
	c, size := utf8.DecodeRuneInString(r.rest())
	if num, den, ok := vulgar(c); ok {
		r.at += size
		return big.NewRat(num, den), nil
	}
	at := r.at
	num := r.digits()
	if num == "" {
		return nil, nil
	}
	if err := r.parted(at, num); err != nil {
		return nil, err
	}
	if !r.take(slashes) {
		r.at = at
		return nil, nil
	}
	below := r.at
	den := r.digits()
	if strings.Trim(den, "0") == "" {
		return nil, r.fail(below, "has a fraction without a number to divide by", examples)
	}
	return ratio(num, den), nil
}

// parted refuses a fraction that begins with num at a byte and has spaces round its line: "1/ 4"
// may be one fraction or a slip of the finger.
func (r *reader) parted(at int, num string) error {
	ahead := *r
	before := ahead.spaces()
	if !ahead.take(slashes) {
		return nil
	}
	after := ahead.spaces()
	den := ahead.digits()
	if !before && !after || den == "" {
		return nil
	}
	return r.fail(at, "has a space inside the fraction "+quote(r.text[at:ahead.at]), strings.TrimLeft(r.text[:at], spaceMarks)+num+"/"+den+", without the space")
}

// ratio gives num/den, two runs of decimal digits; den is not zero.
func ratio(num, den string) *big.Rat {
	n, _ := new(big.Int).SetString(num, 10)
	d, _ := new(big.Int).SetString(den, 10)
	return new(big.Rat).SetFrac(n, d)
}
