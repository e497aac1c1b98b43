package length

import "strings"

// ParseError says what in a text did not read as a length or a fraction.
type ParseError struct {
	Text    string // what was written
	At      int    // the byte at which reading stopped
	Problem string // what is wrong: `has no unit “yd”`
	Want    string // what would be right, as it would follow “write”
}

// Error gives one sentence: what was written, what is wrong, what would be right.
func (e *ParseError) Error() string {
	return quote(e.Text) + " " + e.Problem + "; write " + e.Want
}

// quote sets a text between curly quotes, so that the straight ones of feet
// and inches stay readable, and cuts it to a length that fits a message.
func quote(text string) string {
	const most = 40
	runes := []rune(strings.ToValidUTF8(text, "?"))
	if len(runes) > most {
		runes = append(runes[:most], '…')
	}
	return "“" + string(runes) + "”"
}
