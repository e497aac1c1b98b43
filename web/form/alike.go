package form

import (
	"reflect"
	"slices"

	"coursewright/layout/survey"
)

// alike tells whether two values of one type have the same members, so that they can be held side
// by side member by member. Plain values and marks have none.
func alike(a, b reflect.Value) bool {
	switch a.Kind() {
	case reflect.Pointer:
		return !a.IsNil() && !b.IsNil() && alike(a.Elem(), b.Elem())
	case reflect.Slice:
		return a.Len() == b.Len() && !oneGap(a) && !oneGap(b)
	case reflect.Map:
		return true
	case reflect.Struct:
		return !whole(a) && kind(a) == kind(b)
	}
	return false
}

// oneGap tells of a list whose readings are one gap.
func oneGap(v reflect.Value) bool {
	lean, is := v.Interface().([]survey.Lean)
	return is && OneGap(lean)
}

// whole tells of groups that only make sense together: a place or a range, not half of each.
func whole(v reflect.Value) bool {
	switch v.Interface().(type) {
	case survey.Mark, survey.Measure:
		return true
	}
	return false
}

// kind is the word that decides which fields a group has.
func kind(v reflect.Value) string {
	switch v := v.Interface().(type) {
	case survey.End:
		return v.Meets
	case survey.Head:
		return v.Meets
	case survey.Opening:
		return v.Kind
	case survey.Bond:
		return v.Kind
	}
	return ""
}

// SameFields tells whether the form has the same fields for two jobs. It has none for a set-out that is held,
// and none that says which figures are guessed.
func SameFields(a, b survey.Job) bool {
	a.Guess, b.Guess = nil, nil
	return a.Units == b.Units && a.Bond.Along == b.Bond.Along && sameFields(reflect.ValueOf(a), reflect.ValueOf(b))
}

func sameFields(a, b reflect.Value) bool {
	switch x := a.Interface().(type) {
	case *survey.Held:
		return true
	case survey.Mark:
		return (x.At == "") == (b.Interface().(survey.Mark).At == "")
	case survey.Measure:
		return sameFields(reflect.ValueOf(x.Mark), reflect.ValueOf(b.Interface().(survey.Measure).Mark))
	}
	switch a.Kind() {
	case reflect.Pointer:
		if a.IsNil() || b.IsNil() {
			return a.IsNil() == b.IsNil()
		}
		return sameFields(a.Elem(), b.Elem())
	case reflect.Struct, reflect.Slice:
		return alike(a, b) && sameMembers(a, b)
	case reflect.Map:
		return slices.Equal(keys(a), keys(b)) && !slices.ContainsFunc(keys(a), func(key string) bool {
			return !sameFields(entry(a, key), entry(b, key))
		})
	}
	return true
}

func sameMembers(a, b reflect.Value) bool {
	if a.Kind() == reflect.Struct {
		for i := range a.NumField() {
			if !sameFields(a.Field(i), b.Field(i)) {
				return false
			}
		}
		return true
	}
	for i := range a.Len() {
		if !sameFields(a.Index(i), b.Index(i)) {
			return false
		}
	}
	return true
}

func fieldName(t reflect.Type, i int) string { return membersOf(t)[i] }

// keys lists the keys of maps, sorted.
func keys(maps ...reflect.Value) []string {
	var out []string
	for _, m := range maps {
		out = append(out, sorted(m)...)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// entry gives a map's value, the zero one where there is none.
func entry(m reflect.Value, key string) reflect.Value {
	if v := m.MapIndex(reflect.ValueOf(key)); v.IsValid() {
		return v
	}
	return reflect.Zero(m.Type().Elem())
}

// put sets a map's value; a zero one is none.
func put(m reflect.Value, key string, v reflect.Value) {
	if v.IsZero() {
		return
	}
	if m.IsNil() {
		m.Set(reflect.MakeMap(m.Type()))
	}
	m.SetMapIndex(reflect.ValueOf(key), v)
}
