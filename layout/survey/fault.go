package survey

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

// Fault is one thing in a job that cannot be taken as it stands.
type Fault struct {
	Path  string // the field: walls[1].base[0].readings[2].drop
	Found string // what stood there, with what is wrong with it
	Want  string // what would be right, as it would follow “write”
	Meant string // what was probably meant, as it would be typed, or empty
}

// String gives the fault as one line.
func (f Fault) String() string {
	text := fmt.Sprintf("%s: found %s; write %s", f.Path, f.Found, f.Want)
	if f.Meant != "" {
		text += "; perhaps " + quote(f.Meant) + " was meant"
	}
	return text
}

// Faults are all faults of a job in the order of the document.
type Faults []Fault

// Error gives one line a fault.
func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, fault := range f {
		lines[i] = fault.String()
	}
	return strings.Join(lines, "\n")
}

// mostFaults bounds the list: nobody reads on from there.
const mostFaults = 200

// add notes a fault.
func (f *Faults) add(p path, found, want string) {
	if len(*f) < mostFaults {
		*f = append(*f, Fault{Path: string(p), Found: found, Want: want})
	}
}

// path names a field from the top of the document.
type path string

// dot gives the path of a field within p.
func (p path) dot(field string) path {
	if p == "" {
		return path(clip(field))
	}
	return p + "." + path(clip(field))
}

// at gives the path of an item of the list p.
func (p path) at(i int) path { return p + "[" + path(strconv.Itoa(i)) + "]" }

// unseen tells of control characters, ends of line, and those that turn the text around them from
// right to left, so that a page or a sheet would read differently from what it says.
func unseen(c rune) bool {
	return unicode.IsControl(c) || unicode.In(c, unicode.Bidi_Control, unicode.Zl, unicode.Zp)
}

// clip makes a person's text fit for a message.
func clip(text string) string {
	const most = 80
	if len(text) <= most && plain(text) {
		return text
	}
	clean := []rune(strings.Map(func(c rune) rune {
		if unseen(c) {
			return '?'
		}
		return c
	}, text))
	if len(clean) > most {
		clean = append(clean[:most], '…')
	}
	return string(clean)
}

// plain tells whether a text is printable ASCII alone, as most are.
func plain(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}

// quote sets what stood in a field between quotes; empty reads as nothing.
func quote(text string) string {
	if text == "" {
		return "nothing"
	}
	return "“" + clip(text) + "”"
}
