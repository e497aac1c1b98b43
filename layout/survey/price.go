package survey

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Money is the sign of a currency as it was typed with a price, and on which side of the figure
// it stood. The zero Money is a price without a sign.
type Money struct {
	Sign   string
	Behind bool
}

// Of writes an amount with its sign, as "$42.50" and "42.50 €".
func (m Money) Of(amount string) string {
	switch {
	case m.Sign == "":
		return amount
	case m.Behind:
		return amount + " " + m.Sign
	}
	return m.Sign + amount
}

// price reads a price such as 74.50, $74.50 or 1,250.00 €: whole hundredths, with the sign it has.
func price(text string) (int64, Money, bool) {
	text = strings.TrimSpace(text)
	var m Money
	if r, n := utf8.DecodeRuneInString(text); unicode.Is(unicode.Sc, r) {
		m, text = Money{Sign: string(r)}, strings.TrimSpace(text[n:])
	} else if r, n := utf8.DecodeLastRuneInString(text); unicode.Is(unicode.Sc, r) {
		m, text = Money{Sign: string(r), Behind: true}, strings.TrimSpace(text[:len(text)-n])
	}
	cents, ok := hundredths(text)
	return cents, m, ok
}

// thousands is a figure whose thousands are set off, by one mark, and whose hundredths by the other:
// without both, a comma before three digits might be either.
var thousands = regexp.MustCompile(`^\d{1,3}(,\d{3})+\.\d{2}$|^\d{1,3}(\.\d{3})+,\d{2}$`)

// hundredths reads digits with at most two more after a point or comma.
func hundredths(text string) (int64, bool) {
	const longest = 9
	if thousands.MatchString(text) {
		end := len(text) - len(".00")
		text = strings.NewReplacer(",", "", ".", "").Replace(text[:end]) + "." + text[end+1:]
	}
	whole, part, _ := strings.Cut(strings.Replace(text, ",", ".", 1), ".")
	digits := whole + (part + "00")[:2]
	if whole == "" || len(whole) > longest || len(part) > 2 || strings.Trim(digits, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.ParseInt(digits, 10, 64)
	return n, err == nil
}
