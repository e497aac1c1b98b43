package length

import "math/big"

// fractions is what would be right where a fraction is wanted.
const fractions = "a part of one such as 1/3, 0.25 or 33%"

// finestPart bounds the denominator of a fraction.
const finestPart = 1000

// ParseFraction reads a part of one, from 0 to 1, in lowest terms: 1/2, ½,
// 0.25, 33%. It is exact: 33% is 33/100, not a third. The error is a
// *ParseError.
func ParseFraction(text string) (num, den int64, err error) {
	r := &reader{text: text}
	if len(text) > longestText {
		return 0, 0, r.fail(longestText, "is too long", fractions)
	}
	r.spaces()
	n, err := r.number()
	if err != nil {
		err.(*ParseError).Want = fractions
		return 0, 0, err
	}
	r.spaces()
	if r.take("%") {
		n.value.Quo(n.value, big.NewRat(100, 1))
	}
	r.spaces()
	if !r.ended() {
		return 0, 0, r.fail(r.at, "has "+quote(r.rest())+" after a number", fractions)
	}
	return r.bounded(n.value)
}

// bounded bounds a fraction to 0 to 1 and its denominator to finestPart.
func (r *reader) bounded(value *big.Rat) (num, den int64, err error) {
	if value.Cmp(big.NewRat(1, 1)) > 0 {
		return 0, 0, r.fail(0, "is more than one", fractions)
	}
	if value.Denom().Cmp(big.NewInt(finestPart)) > 0 {
		return 0, 0, r.fail(0, "is too fine", fractions)
	}
	return value.Num().Int64(), value.Denom().Int64(), nil
}
