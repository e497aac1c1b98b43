package sheet

import (
	"regexp"
	"strings"
	"unicode"

	"coursewright/web/drawing"
)

// style is how words are written.
type style struct {
	size   drawing.Micron
	bold   bool
	colour drawing.Colour
	anchor drawing.Anchor
	up     bool
}

// The styles of the lists: body can be read from a metre away.
var (
	small   = style{size: 2600, colour: drawing.Grey}
	plain   = style{size: 3400}
	body    = style{size: 4200}
	strong  = style{size: 4200, bold: true}
	doing   = style{size: 4800, bold: true}
	large   = style{size: 5200, bold: true}
	heading = style{size: 7500, bold: true}
)

func (s style) in(c drawing.Colour) style {
	s.colour = c
	return s
}

func (s style) to(a drawing.Anchor) style {
	s.anchor = a
	return s
}

// leading is the distance from line to line.
func (s style) leading() drawing.Micron { return s.size * 5 / 4 }

// width is about how long a text runs, erring on the long side.
func (s style) width(text string) drawing.Micron {
	w := drawing.TextWidth(strings.ReplaceAll(text, hold, " "), s.size)
	if s.bold {
		w = w * 115 / 100
	}
	return w
}

// hold is a space at which no line is broken.
const hold = "\u00a0"

// held keeps the words of a text in one line.
func held(text string) string { return strings.ReplaceAll(text, " ", hold) }

// figured is the last digit of a figure with its unit, which stand together, as do the words of the unit.
var figured = regexp.MustCompile(`(\d) (%|m²|cm²|(?:mm|kg|l|ml|in|ft|sq ft|sq in|lb|gal|fl oz|hours)\b)`)

// mixed is a whole number with its fraction.
var mixed = regexp.MustCompile(`(\d) (\d+/\d)`)

// wrap breaks a text into lines no longer than wide. Words that are held together
// are parted only where they are longer than that, and other words are broken only
// then. A line break in the text stays.
func (s style) wrap(text string, wide drawing.Micron) []string {
	var lines []string
	text = figured.ReplaceAllStringFunc(text, held)
	text = mixed.ReplaceAllString(text, "$1"+hold+"$2")
	text = strings.ReplaceAll(text, " per ", " per"+hold) // and what it is per
	for paragraph := range strings.SplitSeq(text, "\n") {
		line := ""
		for word := range strings.SplitSeq(paragraph, " ") {
			for s.width(word) > wide {
				head, tail := s.part(word, wide)
				if line != "" {
					lines, line = append(lines, line), ""
				}
				lines, word = append(lines, head), tail
			}
			switch {
			case line == "":
				line = word
			case s.width(line+" "+word) <= wide:
				line += " " + word
			default:
				lines, line = append(lines, line), word
			}
		}
		lines = append(lines, line)
	}
	return lines
}

// part takes what fits off the front of words that are held together: as many as
// there is room for, or else letters of the first.
func (s style) part(word string, wide drawing.Micron) (head, tail string) {
	for at := len(word); ; {
		if at = strings.LastIndex(word[:at], hold); at <= 0 {
			return s.split(word, wide)
		}
		if s.width(word[:at]) <= wide {
			return word[:at], word[at+len(hold):]
		}
	}
}

// split takes what fits off the front of a word, at least one character.
func (s style) split(word string, wide drawing.Micron) (head, tail string) {
	at := 0
	for i := range word {
		if i > 0 && s.width(word[:i]) > wide {
			break
		}
		if i > 0 {
			at = i
		}
	}
	if at == 0 {
		return word, ""
	}
	return word[:at], word[at:]
}

// printable replaces what the font, or the PDF library, has no glyph for: what
// is not in Unicode's first plane, and what is no mark at all.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r > 0xfffe || r == unicode.ReplacementChar:
			return '□'
		case unicode.IsControl(r) || r == '\u00a0':
			return ' '
		}
		return r
	}, text)
}
