package survey

import (
	"encoding/json"
	"strings"
)

// doubled finds the keys that stand twice in one object of a sound JSON value,
// of which a reader could take either.
func doubled(data []byte) Faults {
	d := doubles{data: data}
	d.value("")
	return d.faults
}

// doubles walks along a document that is known to be sound.
type doubles struct {
	data   []byte
	at     int
	faults Faults
}

// value walks past the value that follows, which stands at p, and what separates it from the next.
func (d *doubles) value(p path) {
	switch d.next() {
	case '{':
		d.object(p)
	case '[':
		d.at++
		for i := 0; d.next() != ']'; i++ {
			d.value(p.at(i))
		}
		d.at++
	case '"':
		d.text()
	default: // a number or a word
		for d.at < len(d.data) && !strings.ContainsRune(",]} \t\r\n", rune(d.data[d.at])) {
			d.at++
		}
	}
}

func (d *doubles) object(p path) {
	d.at++
	seen := map[string]bool{}
	for d.next() != '}' {
		name := d.text()
		if seen[name] {
			d.faults.add(p.dot(name), "the field a second time", "each field once")
		}
		seen[name] = true
		d.value(p.dot(name))
	}
	d.at++
}

// next is the first byte of the next value or name, or what closes the list or object.
func (d *doubles) next() byte {
	for strings.IndexByte(",: \t\r\n", d.data[d.at]) >= 0 {
		d.at++
	}
	return d.data[d.at]
}

// text walks past a text and gives it.
func (d *doubles) text() string {
	from, escaped := d.at, false
	for d.at++; d.data[d.at] != '"'; d.at++ {
		if d.data[d.at] == '\\' {
			d.at++
			escaped = true
		}
	}
	d.at++
	plain := string(d.data[from+1 : d.at-1])
	if !escaped {
		return plain
	}
	var out string
	if err := json.Unmarshal(d.data[from:d.at], &out); err != nil {
		return plain // cannot be: the document is sound
	}
	return out
}
