package length

import "strings"

// plain reads the plainest lengths, as nearly all are: 59, -3.5, 1/2, 59 1/2, each bare or in mm or in. What
// else there is, and what cannot be kept, is not ok: that is the reader's, who reads numbers of
// any size and says what is wrong. Law: what is ok here, the reader reads as the same.
func plain(text string, s System) (l Length, ok bool) {
	rest, negative := strings.CutPrefix(text, "-")
	whole, rest, ok := digits(rest)
	if !ok {
		return 0, false
	}
	num, den := int64(0), int64(1)
	switch {
	case rest == "":
	case rest[0] == '/':
		num, whole = whole, 0
		if den, rest, ok = digits(rest[1:]); !ok {
			return 0, false
		}
	case rest[0] == '.':
		after := rest[1:]
		if num, rest, ok = digits(after); !ok {
			return 0, false
		}
		for range len(after) - len(rest) {
			den *= 10
		}
	case rest[0] == ' ' && len(rest) > 1 && '0' <= rest[1] && rest[1] <= '9':
		if num, rest, ok = digits(rest[1:]); !ok || rest == "" || rest[0] != '/' {
			return 0, false
		}
		if den, rest, ok = digits(rest[1:]); !ok || num >= den {
			return 0, false
		}
	}
	unit, ok := plainUnit(rest, s)
	if !ok || den == 0 || int64(unit)*num%den != 0 {
		return 0, false
	}
	if l = unit*Length(whole) + unit*Length(num)/Length(den); negative {
		l = -l
	}
	return l, l.Abs() <= Longest
}

// digits takes a run of one to six digits.
func digits(text string) (n int64, rest string, ok bool) {
	i := 0
	for i < len(text) && '0' <= text[i] && text[i] <= '9' {
		n = 10*n + int64(text[i]-'0')
		if i++; i > 6 {
			return 0, "", false
		}
	}
	return n, text[i:], i > 0
}

// plainUnit is the unit behind a number.
func plainUnit(text string, s System) (Length, bool) {
	switch text {
	case "":
		return s.Unit(), true
	case " mm", "mm":
		return Millimetre, true
	case " in", "in", `"`:
		return Inch, true
	}
	return 0, false
}
