package doubt

import (
	"strings"

	"coursewright/layout/length"
)

// slip is a way in which a figure goes wrong between tape and page.
type slip uint8

const (
	noSlip    slip = iota
	signSlip       // over the line for under it
	pairSlip       // two figures swapped
	pointSlip      // the point at another place, or left out
	footSlip       // a foot, or 100 mm, more or less
)

// mend looks for a slip that makes of a typed length one within reach of what
// is expected, and gives it as it should have been typed. Of several the one
// that comes nearest is taken, and the simplest of those.
func mend(text string, want, reach length.Length, s length.System) (string, slip) {
	best, kind, off := "", noSlip, reach+1
	try := func(text string, k slip) {
		if l, err := length.Parse(text, s); err == nil && (l-want).Abs() < off {
			best, kind, off = text, k, (l - want).Abs()
		}
	}
	try(turned(text), signSlip)
	digit := func(i int) bool { return i < len(text) && text[i] >= '0' && text[i] <= '9' }
	for i := range len(text) {
		if digit(i) && digit(i+1) && text[i] != text[i+1] {
			try(text[:i]+string(text[i+1])+string(text[i])+text[i+2:], pairSlip)
		}
	}
	try(text+"0", pointSlip)
	for i := range len(text) {
		if text[i] == '.' || text[i] == ',' {
			try(text[:i]+text[i+1:], pointSlip)
		}
		if digit(i) && digit(i+1) && !strings.ContainsAny(text, ".,/ ") {
			try(text[:i+1]+"."+text[i+1:], pointSlip)
		}
	}
	if l, err := length.Parse(text, s); err == nil {
		step := length.Foot
		if s == length.Metric {
			step = 10 * length.Centimetre
		}
		try((l+step).Plain(s, 0), footSlip)
		try((l-step).Plain(s, 0), footSlip)
	}
	return best, kind
}

// turned is the text with the other sign.
func turned(text string) string {
	text = strings.TrimSpace(text)
	for _, dash := range []string{"-", "−", "–"} {
		if rest, ok := strings.CutPrefix(text, dash); ok {
			return strings.TrimSpace(rest)
		}
	}
	return "-" + strings.TrimPrefix(text, "+")
}
