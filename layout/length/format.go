package length

import (
	"strconv"
	"strings"
)

// feetFrom is where feet begin to be shown: under 4 ft a tape is read in
// inches alone (common practice, no source).
const feetFrom = 4 * Foot

// Format gives what a tape of the system shows, rounded to the nearest step by
// RoundTo: 7 1/2" and -38 5/8", from 4 ft up 4'-7 1/2"; 1511 mm and 1510.5 mm.
// A step of zero gives l exactly, whatever fraction that needs.
func (l Length) Format(s System, step Length) string {
	l = l.RoundTo(step)
	switch {
	case s == Metric:
		return l.Plain(s, 0) + " mm"
	case l < 0:
		return "-" + (-l).Format(s, 0)
	case l >= feetFrom:
		return strconv.FormatInt(DivFloor(l, Foot), 10) + "'-" + overFeet(Mod(l, Foot)) + `"`
	}
	return l.Plain(s, 0) + `"`
}

// overFeet gives the inches that follow feet: 7 1/2, and 0 1/16, because
// 4'-1/16" is soon read as 4'-1".
func overFeet(l Length) string {
	if l > 0 && l < Inch {
		return "0 " + l.Plain(Imperial, 0)
	}
	return l.Plain(Imperial, 0)
}

// Plain gives the bare number in inches or millimetres, rounded to the nearest
// step: 55 1/2, 1510.5. It is what Parse reads back in the same system.
func (l Length) Plain(s System, step Length) string {
	l = l.RoundTo(step)
	if l < 0 {
		return "-" + (-l).Plain(s, 0)
	}
	unit := s.Unit()
	whole := DivFloor(l, unit)
	part := Mod(l, unit)
	if tenths := part * 1000; s == Metric && tenths%unit == 0 {
		return decimal(whole*1000+int64(tenths/unit), 3)
	}
	return mixed(whole, part, unit)
}

// Tape gives what a usual tape shows: 1/16 in or 1 mm.
func (l Length) Tape(s System) string { return l.Format(s, s.Step()) }

// Fine gives what the cut schedule shows: 1/32 in or 0.5 mm.
func (l Length) Fine(s System) string { return l.Format(s, s.FineStep()) }

// Both says how a length was read, in both systems, that of s first: 3/32" · 2.4 mm.
// In s it is exact to 1/64 in or 0.001 mm, so that nothing typed reads as
// something else; in the other system it is rounded to 0.1 mm or 1/32 in.
func (l Length) Both(s System) string {
	other, _ := l.Other(s)
	if s == Metric {
		return l.metric() + " · " + other
	}
	return l.Format(Imperial, Inch/64) + " · " + other
}

// Other says a length in the system that s is not, rounded to 0.1 mm or 1/32 in, and whether that is just what it is.
func (l Length) Other(s System) (text string, exact bool) {
	other, step := Imperial, Inch/32
	if s == Imperial {
		other, step = Metric, Millimetre/10
	}
	return l.Format(other, step), l.RoundTo(step) == l
}

// metric gives millimetres exactly where three decimals are enough, else to 0.1 mm.
func (l Length) metric() string {
	if 1000*l%Millimetre == 0 {
		return l.Format(Metric, 0)
	}
	return l.Format(Metric, Millimetre/10)
}

// Millimetres gives the length for a plan file, rounded to 0.001 mm.
func (l Length) Millimetres() float64 { return float64(l.micrometres()) / 1000 }

// MillimetreText gives the same as Millimetres in digits: 1511, 0.265.
func (l Length) MillimetreText() string { return decimal(l.micrometres(), 3) }

// micrometres gives the nearest whole micrometre: 25/24 of the unit.
func (l Length) micrometres() int64 { return int64((25 * l).RoundTo(24) / 24) }

// mixed writes a whole number with the fraction part/unit in lowest terms.
func mixed(whole int64, part, unit Length) string {
	if part == 0 {
		return strconv.FormatInt(whole, 10)
	}
	g := gcd(int64(part), int64(unit))
	fraction := strconv.FormatInt(int64(part)/g, 10) + "/" + strconv.FormatInt(int64(unit)/g, 10)
	if whole == 0 {
		return fraction
	}
	return strconv.FormatInt(whole, 10) + " " + fraction
}

// decimal writes n over ten to the places, without trailing zeros.
func decimal(n int64, places int) string {
	if n < 0 {
		return "-" + decimal(-n, places)
	}
	digits := strconv.FormatInt(n, 10)
	if missing := places + 1 - len(digits); missing > 0 {
		digits = strings.Repeat("0", missing) + digits
	}
	cut := len(digits) - places
	return strings.TrimSuffix(strings.TrimRight(digits[:cut]+"."+digits[cut:], "0"), ".")
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
