package survey

import (
	"bytes"
	"encoding/json"
)

// doubled finds the keys that stand twice in one object of a sound JSON value,
// of which a reader could take either.
func doubled(data []byte) Faults {
	d := doubles{Decoder: json.NewDecoder(bytes.NewReader(data))}
	d.value("")
	return d.faults
}

// doubles walks along the tokens of a document.
type doubles struct {
	*json.Decoder
	faults Faults
}

// value walks through the value that follows, which stands at p. What does not
// read ends the walk; the decoder has said so already.
func (d *doubles) value(p path) {
	token, err := d.Token()
	if err != nil {
		return
	}
	switch token {
	case json.Delim('{'):
		d.object(p)
	case json.Delim('['):
		for i := 0; d.More(); i++ {
			d.value(p.at(i))
		}
		_, _ = d.Token()
	}
}

func (d *doubles) object(p path) {
	seen := map[string]bool{}
	for d.More() {
		token, err := d.Token()
		name, ok := token.(string)
		if err != nil || !ok {
			return
		}
		if seen[name] {
			d.faults.add(p.dot(name), "the field a second time", "each field once")
		}
		seen[name] = true
		d.value(p.dot(name))
	}
	_, _ = d.Token()
}
