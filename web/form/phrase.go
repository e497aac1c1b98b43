package form

import (
	"reflect"
	"strconv"
	"strings"
	"unicode"

	"coursewright/layout/survey"
)

// inWords writes a field out for people, in one line; nothing where it holds nothing.
func inWords(v reflect.Value) string {
	const longest = 120
	out := []rune(phrase(v))
	if len(out) > longest {
		return string(out[:longest-1]) + "…"
	}
	return string(out)
}

func phrase(v reflect.Value) string {
	if v = resolve(v); !v.IsValid() {
		return ""
	}
	switch v.Kind() {
	case reflect.Struct:
		switch group := v.Interface().(type) {
		case survey.Held:
			return "as it stands"
		case survey.Bond:
			return bondPhrase(group)
		case survey.Box:
			return boxPhrase(group)
		}
		return groupPhrase(v)
	case reflect.Slice:
		if lean, is := v.Interface().([]survey.Lean); is && OneGap(lean) {
			return leanPhrase(lean[1])
		}
		var out []string
		for i := range v.Len() {
			out = append(out, elementPhrase(v.Index(i)))
		}
		return strings.Join(out, "; ")
	case reflect.Map:
		var out []string
		for _, key := range sorted(v) {
			out = append(out, key+": "+phrase(entry(v, key)))
		}
		return strings.Join(out, "; ")
	case reflect.Bool:
		return map[bool]string{true: "yes", false: "no"}[v.Bool()]
	}
	return text(v)
}

// elementPhrase names an element of a list by its own name where it has one.
func elementPhrase(v reflect.Value) string {
	if v.Kind() == reflect.Struct {
		if name := v.FieldByName("Name"); name.IsValid() && name.String() != "" {
			return name.String()
		}
	}
	return phrase(v)
}

func groupPhrase(v reflect.Value) string {
	var out []string
	for i := range v.NumField() {
		if v.Field(i).IsZero() {
			continue
		}
		out = append(out, Spaced(fieldName(v.Type(), i))+" "+phrase(v.Field(i)))
	}
	return strings.Join(out, ", ")
}

// boxPhrase says how tile is sold, as "10, at $42.50".
func boxPhrase(b survey.Box) string {
	out := strconv.Itoa(b.Count)
	if b.Area != "" {
		out += " on " + b.Area
	}
	if b.Price != "" {
		out += ", at " + b.Price
	}
	return out
}

// Spaced is the name of a field in words: depthIs is depth is.
func Spaced(name string) string {
	var out []rune
	for _, r := range name {
		if unicode.IsUpper(r) {
			out = append(out, ' ')
		}
		out = append(out, unicode.ToLower(r))
	}
	return string(out)
}

// bondPhrase says which bond it is, as people do: running bond 1/2 left, stack bond, herringbone at 45°.
func bondPhrase(b survey.Bond) string {
	out := []string{b.Kind}
	if b.Kind == "stack" || b.Kind == "running" {
		out = append(out, "bond")
	}
	for _, part := range []struct{ before, is, after string }{{"", b.Offset, ""}, {"", b.Hand, ""}, {"", b.Angle, "°"}, {"at ", b.Turn, "°"}} {
		if part.is != "" {
			out = append(out, part.before+part.is+part.after)
		}
	}
	if b.Along == "plumb" {
		out = append(out, "plumb")
	}
	return strings.Join(out, " ")
}
