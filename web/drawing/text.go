package drawing

import (
	"strings"
	"unicode/utf8"
)

// Text heights on paper. On a screen 300 mm of paper take about 1200 px.
type texts struct {
	size, least, dim, letter, note Micron
	ids                            bool // cut pieces carry their id
}

var (
	screenTexts = texts{size: 3600, least: 2500, dim: 2900, letter: 7000, note: 2900}
	sheetTexts  = texts{size: 5000, least: 2500, dim: 3000, letter: 10000, note: 3000, ids: true}
)

// TextWidth is about how long a text runs in DejaVu Sans Condensed, erring on
// the long side.
func TextWidth(s string, size Micron) Micron {
	var w Micron
	for _, r := range s {
		w += advance(r)
	}
	return w * size / 1000
}

// width is about how long a label runs.
func (l Label) width() Micron {
	w := TextWidth(l.Text, l.Size)
	if l.Bold {
		w = w * 115 / 100
	}
	return w
}

// advance is a character's width in thousandths of the text height.
func advance(r rune) Micron {
	switch {
	case r >= '0' && r <= '9':
		return 573
	case r == ' ' || r == '.' || r == ',' || r == '·' || r == '\u2002':
		return 290
	case r == '\'' || r == 'i' || r == 'l' || r == 'j' || r == 'I':
		return 270
	case r == '-' || r == '/' || r == '"' || r == 't' || r == 'f' || r == 'r':
		return 390
	case r == 'm' || r == 'w' || r == 'M' || r == 'W':
		return 880
	case r >= 'a' && r <= 'z':
		return 560
	case r >= 'A' && r <= 'Z':
		return 650
	case r < utf8.RuneSelf:
		return 760
	}
	return 900
}

// short cuts a text that runs longer than the space there is, and says so.
func short(s string, size, space Micron) string {
	if TextWidth(s, size) <= space {
		return s
	}
	for r := []rune(s); len(r) > 0; r = r[:len(r)-1] {
		if cut := strings.TrimRight(string(r), " ") + "…"; TextWidth(cut, size) <= space {
			return cut
		}
	}
	return "…"
}

// apart keeps a figure and its name apart; two spaces would run together in SVG.
const apart = "\u2002"

// drop is how far the baseline lies under the middle of a text's capitals.
func drop(size Micron) Micron { return size * 365 / 1000 }
