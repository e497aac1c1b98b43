package length

import "strings"

// unit is a unit as a person writes it after a number, smaller ones first in
// each system.
type unit uint8

const (
	millimetre unit = iota
	centimetre
	metre
	inch
	foot
)

func (u unit) size() Length { return [...]Length{Millimetre, Centimetre, Metre, Inch, Foot}[u] }

func (u unit) String() string { return [...]string{"mm", "cm", "m", "in", "ft"}[u] }

func (u unit) system() System {
	if u >= inch {
		return Imperial
	}
	return Metric
}

// ofSystem gives the unit of a bare number.
func ofSystem(s System) unit {
	if s == Metric {
		return millimetre
	}
	return inch
}

// unitWord gives the unit a word stands for, in any case.
func unitWord(word string) (unit, bool) {
	switch strings.ToLower(word) {
	case "ft", "foot", "feet":
		return foot, true
	case "in", "inch", "inches":
		return inch, true
	case "m", "metre", "metres", "meter", "meters":
		return metre, true
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return centimetre, true
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return millimetre, true
	}
	return 0, false
}

// The signs that people and their keyboards put for one another.
const (
	dashes     = "-−–‐‑" // hyphen, minus, en dash, the two typographic hyphens
	footMarks  = "'′’‘´`"
	inchMarks  = "\"″”“"
	slashes    = "/⁄∕／"                      // of fractions, of division, and the broad one of Chinese and Japanese keyboards
	spaceMarks = " \t\n\r\u00a0\u2009\u202f" // no-break and thin spaces too
)

// vulgar gives the fraction that a single sign stands for.
func vulgar(r rune) (num, den int64, ok bool) {
	switch r {
	case '½':
		return 1, 2, true
	case '⅓':
		return 1, 3, true
	case '⅔':
		return 2, 3, true
	case '¼':
		return 1, 4, true
	case '¾':
		return 3, 4, true
	case '⅙':
		return 1, 6, true
	case '⅚':
		return 5, 6, true
	case '⅛':
		return 1, 8, true
	case '⅜':
		return 3, 8, true
	case '⅝':
		return 5, 8, true
	case '⅞':
		return 7, 8, true
	}
	return vulgarOdd(r)
}

// vulgarOdd gives the fractions that no tape shows; they are read so that the
// refusal can say what is near.
func vulgarOdd(r rune) (num, den int64, ok bool) {
	switch r {
	case '⅕':
		return 1, 5, true
	case '⅖':
		return 2, 5, true
	case '⅗':
		return 3, 5, true
	case '⅘':
		return 4, 5, true
	case '⅐':
		return 1, 7, true
	case '⅑':
		return 1, 9, true
	case '⅒':
		return 1, 10, true
	}
	return 0, 0, false
}
