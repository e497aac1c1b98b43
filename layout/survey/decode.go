package survey

import (
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// decoder copies a JSON tree into a document type and notes every field that
// is unknown or of the wrong kind, with its path.
type decoder struct{ faults Faults }

// into copies v into dst.
func (d *decoder) into(dst reflect.Value, v any, p path) {
	switch dst.Kind() {
	case reflect.Pointer:
		dst.Set(reflect.New(dst.Type().Elem()))
		d.into(dst.Elem(), v, p)
	case reflect.Struct:
		d.object(dst, v, p)
	case reflect.Slice:
		d.list(dst, v, p)
	case reflect.Map:
		d.table(dst, v, p)
	case reflect.String:
		text, ok := v.(string)
		d.want(ok, v, p, "a text in quotes")
		dst.SetString(text)
	case reflect.Bool:
		truth, ok := v.(bool)
		d.want(ok, v, p, "true or false")
		dst.SetBool(truth)
	case reflect.Int:
		number, _ := v.(json.Number)
		n, err := strconv.Atoi(string(number))
		d.want(err == nil, v, p, "a whole number")
		dst.SetInt(int64(n))
	}
}

// want notes a value of the wrong kind.
func (d *decoder) want(ok bool, v any, p path, want string) {
	if !ok {
		d.faults.add(orDocument(p), describe(v), want)
	}
}

func orDocument(p path) path {
	if p == "" {
		return "document"
	}
	return p
}

// object fills a struct by the names in its json tags, in order.
func (d *decoder) object(dst reflect.Value, v any, p path) {
	if dst.Type() == reflect.TypeFor[Measure]() {
		d.measure(dst, v, p)
		return
	}
	fields, ok := v.(map[string]any)
	d.want(ok, v, p, "an object { }")
	known := make([]string, dst.NumField())
	for i := range known {
		known[i], _, _ = strings.Cut(dst.Type().Field(i).Tag.Get("json"), ",")
		if value, there := fields[known[i]]; there {
			d.into(dst.Field(i), value, p.dot(known[i]))
		}
	}
	for _, name := range sortedKeys(fields) {
		if !slices.Contains(known, name) {
			d.faults.add(p.dot(name), "a field that is not known", "one of "+strings.Join(known, ", "))
		}
	}
}

// measure fills a Measure: a text is a plain length, anything else a mark.
func (d *decoder) measure(dst reflect.Value, v any, p path) {
	m := dst.Addr().Interface().(*Measure)
	switch v := v.(type) {
	case string:
		m.Plain = v
	case map[string]any:
		m.Mark = new(Mark)
		d.into(reflect.ValueOf(m.Mark).Elem(), v, p)
	default:
		d.want(false, v, p, "a length in quotes or a mark { }")
	}
}

func (d *decoder) list(dst reflect.Value, v any, p path) {
	items, ok := v.([]any)
	d.want(ok, v, p, "a list [ ]")
	if len(items) == 0 {
		return
	}
	dst.Set(reflect.MakeSlice(dst.Type(), len(items), len(items)))
	for i, item := range items {
		d.into(dst.Index(i), item, p.at(i))
	}
}

// table fills a map from names to values.
func (d *decoder) table(dst reflect.Value, v any, p path) {
	items, ok := v.(map[string]any)
	d.want(ok, v, p, "an object { }")
	if len(items) == 0 {
		return
	}
	dst.Set(reflect.MakeMapWithSize(dst.Type(), len(items)))
	for _, name := range sortedKeys(items) {
		value := reflect.New(dst.Type().Elem()).Elem()
		d.into(value, items[name], p.dot(name))
		dst.SetMapIndex(reflect.ValueOf(name), value)
	}
}

func sortedKeys[K ~string, V any](m map[K]V) []K { return slices.Sorted(maps.Keys(m)) }

// describe says what a JSON value is.
func describe(v any) string {
	switch v := v.(type) {
	case string:
		if v == "" {
			return "an empty text"
		}
		return quote(v)
	case json.Number:
		return "the number " + clip(v.String())
	case bool:
		return strconv.FormatBool(v)
	case []any:
		return "a list"
	case map[string]any:
		return "an object"
	}
	return "null"
}
