package survey

import (
	"encoding/json"
	"errors"
	"reflect"
)

// MarshalJSON writes the mark as an object or the plain length as a text.
func (m Measure) MarshalJSON() ([]byte, error) {
	if m.Mark == nil {
		return json.Marshal(m.Plain)
	}
	if m.Plain != "" {
		return nil, errors.New("a measure is a mark or a plain length, not both")
	}
	return json.Marshal(m.Mark)
}

// UnmarshalJSON reads either form; the error is Faults.
func (m *Measure) UnmarshalJSON(data []byte) error {
	tree, bad := parse(data)
	if bad != nil {
		return bad
	}
	*m = Measure{}
	d := decoder{}
	d.into(reflect.ValueOf(m).Elem(), tree, "")
	if d.faults != nil {
		return d.faults
	}
	return nil
}
