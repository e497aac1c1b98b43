package form

import (
	"reflect"
	"sort"
	"strconv"

	"coursewright/layout/survey"
)

// Field is one field of a job by its path, with what was typed in it.
type Field struct{ Path, Value string }

// Fields lists every field of a job that holds something, in the order of the
// job file. Maps come sorted by key.
func Fields(job survey.Job) []Field {
	var out []Field
	walk(reflect.ValueOf(&job).Elem(), "", func(path string, leaf reflect.Value) {
		if value := text(leaf); value != "" {
			out = append(out, Field{path, value})
		}
	})
	return out
}

// Get gives what stands at a path, or nothing.
func Get(job survey.Job, path string) string {
	way, err := steps(path)
	if err != nil {
		return ""
	}
	v := reflect.ValueOf(&job).Elem()
	for _, s := range way {
		if v = descend(v, s); !v.IsValid() {
			return ""
		}
	}
	return text(resolve(v))
}

// descend goes one step down, or gives the zero Value.
func descend(v reflect.Value, s step) reflect.Value {
	if m := measureOf(v); m != nil && m.Mark == nil && s.name == "at" {
		return reflect.ValueOf(m.Plain) // a plain length is asked for as a mark that was measured
	}
	switch v = resolve(v); v.Kind() {
	case reflect.Struct:
		field, _ := member(v, s)
		return field
	case reflect.Slice:
		if s.index >= 0 && s.index < v.Len() {
			return v.Index(s.index)
		}
	case reflect.Map:
		return v.MapIndex(reflect.ValueOf(s.name))
	}
	return reflect.Value{}
}

// resolve follows a pointer, and a measure to the half of it that is set.
func resolve(v reflect.Value) reflect.Value {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return reflect.Value{}
		}
		return resolve(v.Elem())
	}
	if m := measureOf(v); m != nil {
		if m.Mark != nil {
			return reflect.ValueOf(m.Mark).Elem()
		}
		return reflect.ValueOf(m.Plain)
	}
	return v
}

var measureType = reflect.TypeFor[survey.Measure]()

// measureOf is the measure that a value is, or nil. Only a measure is copied, because jobs are large.
func measureOf(v reflect.Value) *survey.Measure {
	if v.Type() != measureType {
		return nil
	}
	m := v.Interface().(survey.Measure)
	return &m
}

func text(v reflect.Value) string {
	if !v.IsValid() {
		return ""
	}
	switch v.Kind() {
	case reflect.String:
		return v.String()
	case reflect.Bool:
		if v.Bool() {
			return "true"
		}
	case reflect.Int:
		if v.Int() != 0 {
			return strconv.FormatInt(v.Int(), 10)
		}
	}
	return ""
}

// walk visits every leaf below v with its path.
func walk(v reflect.Value, path string, visit func(string, reflect.Value)) {
	if v = resolve(v); !v.IsValid() {
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i, name := range membersOf(v.Type()) {
			walk(v.Field(i), join(path, name), visit)
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), At(path, i), visit)
		}
	case reflect.Map:
		for _, key := range sorted(v) {
			walk(v.MapIndex(reflect.ValueOf(key)), Key(path, key), visit)
		}
	default:
		visit(path, v)
	}
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

func sorted(m reflect.Value) []string {
	keys := make([]string, 0, m.Len())
	for _, k := range m.MapKeys() {
		keys = append(keys, k.String())
	}
	sort.Strings(keys)
	return keys
}
