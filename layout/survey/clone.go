package survey

import (
	"reflect"
	"strings"
	"unicode/utf8"
)

// Clone gives a job that shares nothing with this one, as Read would give it back once it was written:
// lists that are empty are absent, and what is no text is marked as such. Law: j.Clone() is what
// Read gives of what Write gives of j, for every j that Write takes.
func (j Job) Clone() Job {
	var out Job
	clone(reflect.ValueOf(&out).Elem(), reflect.ValueOf(&j).Elem())
	return out
}

// clone copies a value into one that is zero.
func clone(dst, src reflect.Value) {
	switch src.Kind() {
	case reflect.Pointer:
		if !src.IsNil() {
			dst.Set(reflect.New(src.Type().Elem()))
			clone(dst.Elem(), src.Elem())
		}
	case reflect.Struct:
		for i := range src.NumField() {
			clone(dst.Field(i), src.Field(i))
		}
	case reflect.Slice:
		if n := src.Len(); n > 0 {
			dst.Set(reflect.MakeSlice(src.Type(), n, n))
			for i := range n {
				clone(dst.Index(i), src.Index(i))
			}
		}
	case reflect.Map:
		if src.Len() > 0 {
			dst.Set(reflect.MakeMapWithSize(src.Type(), src.Len()))
			for _, key := range src.MapKeys() {
				value := reflect.New(src.Type().Elem()).Elem()
				clone(value, src.MapIndex(key))
				dst.SetMapIndex(reflect.ValueOf(written(key.String())), value)
			}
		}
	case reflect.String:
		dst.SetString(written(src.String()))
	default:
		dst.Set(src)
	}
}

// written is a text as JSON holds it: what is no UTF-8 is marked, byte by byte.
func written(text string) string {
	if utf8.ValidString(text) {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		b.WriteRune(r)
	}
	return b.String()
}
