package survey

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
)

// mostPaths bounds the lists of paths a job may carry.
const mostPaths = 1000

// Texts gives what was typed in every field that holds a text, by its path. A
// field that is left out is not in it.
func (j Job) Texts() map[string]string {
	texts := map[string]string{}
	gather(reflect.ValueOf(j), "", texts)
	return texts
}

// gather walks through a value of the document that stands at p.
func gather(v reflect.Value, p path, texts map[string]string) {
	if v.IsZero() {
		return
	}
	if m, ok := v.Interface().(Measure); ok {
		if m.Mark == nil {
			v = reflect.ValueOf(m.Plain)
		} else {
			v = reflect.ValueOf(*m.Mark)
		}
	}
	switch v.Kind() {
	case reflect.String:
		texts[string(p)] = v.String()
	case reflect.Pointer:
		gather(v.Elem(), p, texts)
	case reflect.Struct:
		for i := range v.NumField() {
			name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			gather(v.Field(i), p.dot(name), texts)
		}
	case reflect.Slice:
		for i := range v.Len() {
			gather(v.Index(i), p.at(i), texts)
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			gather(v.MapIndex(key), p.dot(key.String()), texts)
		}
	}
}

// guesses keeps the paths of fields that are there, each once, in their order.
func (r *resolver) guesses(j Job) []string {
	if len(j.Guess) == 0 {
		return nil
	}
	texts := j.Texts()
	var found []string
	for _, p := range j.Guess {
		if _, there := texts[p]; there && !slices.Contains(found, p) {
			found = append(found, p)
		}
	}
	return found
}

// paths bounds a list of paths.
func (r *resolver) paths(p path, list []string) {
	if len(list) > mostPaths {
		r.faults.add(p, fmt.Sprintf("%d paths", len(list)), fmt.Sprintf("at most %d", mostPaths))
		return
	}
	for i, text := range list {
		r.label(value{p.at(i), text}, longestTitle)
	}
}
