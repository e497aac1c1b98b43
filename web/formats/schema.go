// Package formats describes the files that go between this program and others: the job file, the plan
// file and the two tables, each by a JSON Schema (draft 2020-12, json-schema.org) at an address that
// stays. The schemas are worked out from the types that read and write the files, so they cannot fall
// behind them.
package formats

import (
	"reflect"
	"strings"

	"coursewright/layout/survey"
)

// object is a JSON object.
type object = map[string]any

const draft = "https://json-schema.org/draft/2020-12/schema"

// describer works out schemas, each struct once.
type describer struct {
	closed bool   // fields that are not known are refused
	lists  bool   // every field that is always written is wanted
	defs   object // by name of type
}

// describe gives the schema of a type, with the schemas it refers to.
func (d *describer) describe(title, about, id string, t reflect.Type) object {
	d.defs = object{}
	out := object{"$schema": draft, "$id": "urn:coursewright:" + id, "title": title, "description": about}
	for key, value := range d.of(t) {
		out[key] = value
	}
	if len(d.defs) > 0 {
		out["$defs"] = d.defs
	}
	return out
}

// of gives the schema of a type; that of a struct stands under its name.
func (d *describer) of(t reflect.Type) object {
	if t == reflect.TypeFor[survey.Measure]() {
		return object{"oneOf": []object{{"type": "string"}, d.of(reflect.TypeFor[survey.Mark]())}}
	}
	switch t.Kind() {
	case reflect.Pointer:
		return d.of(t.Elem())
	case reflect.Struct:
		if _, known := d.defs[t.Name()]; !known {
			d.defs[t.Name()] = nil // in work: a type may hold itself
			d.defs[t.Name()] = d.fields(t)
		}
		return object{"$ref": "#/$defs/" + t.Name()}
	case reflect.Slice:
		return object{"type": "array", "items": d.of(t.Elem())}
	case reflect.Array:
		return object{"type": "array", "items": d.of(t.Elem()), "minItems": t.Len(), "maxItems": t.Len()}
	case reflect.Map:
		return object{"type": "object", "additionalProperties": d.of(t.Elem())}
	case reflect.String:
		return object{"type": "string"}
	case reflect.Bool:
		return object{"type": "boolean"}
	case reflect.Int, reflect.Int64:
		return object{"type": "integer"}
	case reflect.Float64:
		return object{"type": "number"}
	}
	return object{} // an interface: whatever it holds
}

// fields gives the schema of a struct by the names in its json tags.
func (d *describer) fields(t reflect.Type) object {
	properties, wanted := object{}, []string{}
	for _, f := range reflect.VisibleFields(t) {
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "" || name == "-" {
			continue // a struct that lends its fields, or what is not written
		}
		properties[name] = d.of(f.Type)
		if d.lists && options == "" {
			wanted = append(wanted, name)
		}
	}
	out := object{"type": "object", "properties": properties}
	if len(wanted) > 0 {
		out["required"] = wanted
	}
	if d.closed {
		out["additionalProperties"] = false
	}
	return out
}

// rows gives the schema of a table whose rows are read as objects by the names in its first row.
func rows(title, about, id string, columns []string) object {
	properties := object{}
	for _, name := range columns {
		properties[name] = object{"type": "string"}
	}
	return object{"$schema": draft, "$id": "urn:coursewright:" + id, "title": title, "description": about,
		"type": "array", "items": object{"type": "object", "properties": properties, "required": columns, "additionalProperties": false}}
}
