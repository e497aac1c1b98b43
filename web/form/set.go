package form

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"

	"coursewright/layout/survey"
)

// listLimit is the longest list a form may build, so that a posted index
// cannot ask for memory. A practical bound, far over any real wall.
const listLimit = 500

// Set puts one value into the job at a path. A list grows by at most one
// element past its end. The error names the path.
func Set(job *survey.Job, path, value string) error {
	way, err := steps(path)
	if err != nil {
		return err
	}
	if err := set(reflect.ValueOf(job).Elem(), way, value); err != nil {
		return fmt.Errorf("field %q: %w", path, err)
	}
	return nil
}

func set(v reflect.Value, way []step, value string) error {
	if m, ok := v.Addr().Interface().(*survey.Measure); ok {
		return setMeasure(m, way, value)
	}
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		return set(v.Elem(), way, value)
	case reflect.Struct, reflect.Slice, reflect.Map:
		if len(way) == 0 {
			return fmt.Errorf("names a group, not one field")
		}
		return setInside(v, way, value)
	}
	if len(way) > 0 {
		return fmt.Errorf("goes deeper than the job file does")
	}
	return setLeaf(v, value)
}

func setInside(v reflect.Value, way []step, value string) error {
	switch v.Kind() {
	case reflect.Struct:
		field, ok := member(v, way[0])
		if !ok {
			return fmt.Errorf("the job file has no such field")
		}
		return set(field, way[1:], value)
	case reflect.Slice:
		return setElement(v, way, value)
	default:
		return setEntry(v, way, value)
	}
}

// member finds a struct's field by the name it has in the job file.
func member(v reflect.Value, s step) (reflect.Value, bool) {
	if s.index >= 0 {
		return reflect.Value{}, false
	}
	if i := slices.Index(membersOf(v.Type()), s.name); i >= 0 {
		return v.Field(i), true
	}
	return reflect.Value{}, false
}

// members are the names that the fields of a struct have in the job file, by the struct.
var members sync.Map

func membersOf(t reflect.Type) []string {
	if known, ok := members.Load(t); ok {
		return known.([]string)
	}
	names := make([]string, t.NumField())
	for i := range names {
		names[i], _, _ = strings.Cut(t.Field(i).Tag.Get("json"), ",")
	}
	members.Store(t, names)
	return names
}

func setElement(v reflect.Value, way []step, value string) error {
	at := way[0].index
	if at < 0 || at > v.Len() || at >= listLimit {
		return fmt.Errorf("there is no such place in the list")
	}
	if at == v.Len() {
		v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
	}
	return set(v.Index(at), way[1:], value)
}

func setEntry(v reflect.Value, way []step, value string) error {
	if way[0].index >= 0 {
		return fmt.Errorf("takes a name, not a place in a list")
	}
	key := reflect.ValueOf(way[0].name)
	entry := reflect.New(v.Type().Elem()).Elem()
	if old := v.MapIndex(key); old.IsValid() {
		entry.Set(old)
	}
	if err := set(entry, way[1:], value); err != nil {
		return err
	}
	if v.IsNil() {
		v.Set(reflect.MakeMap(v.Type()))
	}
	v.SetMapIndex(key, entry)
	return nil
}

// setMeasure writes a field that is a plain length in a pipe and a mark in a
// niche or window.
func setMeasure(m *survey.Measure, way []step, value string) error {
	if len(way) == 0 {
		*m = survey.Measure{Plain: value}
		return nil
	}
	if m.Mark == nil && m.Plain != "" && way[0].name == "at" && value == m.Plain {
		return nil // it was shown so, and stays as it was typed
	}
	if m.Mark == nil {
		m.Mark = &survey.Mark{}
	}
	m.Plain = ""
	return set(reflect.ValueOf(m.Mark).Elem(), way, value)
}

func setLeaf(v reflect.Value, value string) error {
	switch v.Kind() {
	case reflect.String:
		v.SetString(value)
	case reflect.Bool:
		v.SetBool(value == "true")
	case reflect.Int:
		n, err := strconv.Atoi(strings.TrimSpace(value))
		if err != nil && strings.TrimSpace(value) != "" {
			return &notWhole{value}
		}
		v.SetInt(int64(n))
	default:
		return fmt.Errorf("cannot be typed")
	}
	return nil
}

// notWhole is text in a field that holds a count.
type notWhole struct{ text string }

func (n *notWhole) Error() string { return strconv.Quote(n.text) + " is not a whole number" }
