package survey

import (
	"regexp"
	"strings"

	"coursewright/layout/length"
)

// alike are letters and signs that are typed for a figure or a mark they look
// like or stand beside.
var alike = strings.NewReplacer("O", "0", "o", "0", "l", "1", "I", "1", "|", "1", "S", "5", "s", "5", "B", "8", "Z", "2", "\\", "/", ";", ".", ":", ".")

// mistyped are figures as people mistype them, with what they meant: a slash
// left out or typed as something else, a mark typed twice, sixteenths that lost
// a figure, and a fraction run into the whole inches.
var mistyped = []struct {
	found *regexp.Regexp
	meant string
}{
	{regexp.MustCompile(`^(.*)([.,/])[.,/]+(.*)$`), "$1$2$3"},
	{regexp.MustCompile(`^(.*\d)[ -]+(\d{1,2})[ -]+(2|4|8|16|32|64)$`), "$1 $2/$3"},
	{regexp.MustCompile(`^(.*/)6$`), "${1}16"},
	{regexp.MustCompile(`^(.*/)61$`), "${1}16"},
	{regexp.MustCompile(`^(.*/)23$`), "${1}32"},
	{regexp.MustCompile(`^(.*\d)([1357])([248])$`), "$1 $2/$3"},
	{regexp.MustCompile(`^(.*\d)(\d)(16|32)$`), "$1 $2/$3"},
	{regexp.MustCompile(`^[-−–](.+)$`), "$1"},
	{regexp.MustCompile(`^(.*\d) ?(i|inn|ins|inc|inch\w+|')$`), "$1 in"},
	{regexp.MustCompile(`^(.*\d) ?(m|mmm|nm|mn|mil\w*)$`), "$1 mm"},
	{regexp.MustCompile(`^(.*\d) ?(c|cn|vm|ccm|cen\w*)$`), "$1 cm"},
	{regexp.MustCompile(`^(.*\d) ?(f|fet|feets|foots|fo\w*)$`), "$1 ft"},
}

// meant is what was probably meant by a text that does not read as a length
// within bounds, or empty where nothing near it does.
func (r *resolver) meant(text string, b bounds) string {
	text = strings.TrimSpace(text)
	fits := func(text string) bool {
		l, err := length.Parse(text, r.units)
		return err == nil && b.low <= l && l <= b.high
	}
	for _, try := range []string{text, alike.Replace(text)} {
		if try != text && fits(try) {
			return try
		}
		for _, m := range mistyped {
			if meant := m.found.ReplaceAllString(try, m.meant); meant != try && fits(meant) {
				return meant
			}
		}
	}
	return ""
}
