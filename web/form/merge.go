package form

import (
	"reflect"
	"slices"

	"coursewright/layout/survey"
)

// Merged is two edits of one job laid together, field by field.
type Merged struct {
	Job     survey.Job
	Clashes []Clash  // fields both changed, each to something else
	Changes []Change // fields only one of the two changed, or both alike on one side
}

// Clash is a field that both edits changed: what it held before, and what each made of it.
type Clash struct {
	Path, Was, Saved, Yours string
	Guessed                 bool // what it held before was a guess
}

// Change is a field that one edit changed.
type Change struct {
	Path, Was, Is string
	Yours         bool // by the later edit
}

// Merge lays two edits of base together. What only one of them changed is taken from it. Where both
// changed a field, the later edit counts if yours says so of its path, the saved one otherwise. A
// list that grew or shrank on both sides, a mark, and a group whose kind changed are one field. A
// change of units or of a wall's name on one side is carried over to the other first, so that it
// clashes with nothing. The jobs given stay as they are. Laws:
//
//  1. An edit merged with an unchanged job is that edit.
//  2. Two edits that changed different fields both come through whole.
//  3. A value that is in neither edit is never in the outcome.
//  4. Who has measured a figure has changed it, also where it is the one that was guessed. A figure is
//     a guess in the outcome where it is one in the edit that it was taken from. A guess that was made
//     anew gives way to what was measured.
func Merge(base, saved, later survey.Job, yours func(path string) bool) (Merged, error) {
	var jobs [3]survey.Job
	for i, job := range []survey.Job{base, saved, later} {
		jobs[i] = job.Clone()
		jobs[i].Format = survey.Format
	}
	b, s, l := &jobs[0], &jobs[1], &jobs[2]
	if err := sameUnits(b, s, l); err != nil {
		return Merged{}, err
	}
	renamed := sameNames(b, s, l)
	m := merger{yours: yours, guesses: threeGuesses{base: b.Guess, saved: s.Guess, later: l.Guess}}
	b.Guess, s.Guess, l.Guess = nil, nil, nil
	job := m.merge("", reflect.ValueOf(*b), reflect.ValueOf(*s), reflect.ValueOf(*l))
	m.out.Job = job.Interface().(survey.Job)
	m.out.Job.Guess = m.guesses.outcome()
	m.out.Changes = slices.Concat(m.guesses.changes(), renamed, m.out.Changes)
	return m.out, nil
}

// sameUnits writes the old unit behind the bare numbers of those that still count in it, where one
// edit has changed the units.
func sameUnits(base, saved, later *survey.Job) error {
	if saved.Units == later.Units || saved.Units != base.Units && later.Units != base.Units {
		return nil
	}
	units := base.Units
	for _, job := range []*survey.Job{base, saved, later} {
		if job.Units != units {
			continue
		}
		if err := keepUnit(job, units); err != nil {
			return err
		}
	}
	return nil
}

// sameNames gives a wall that one edit has renamed its new name on the other side too, and in the base: so it is
// the one that tells of it.
func sameNames(base, saved, later *survey.Job) (renamed []Change) {
	if len(base.Walls) != len(saved.Walls) || len(base.Walls) != len(later.Walls) {
		return nil
	}
	was := wallNames(*base)
	now := slices.Clone(was)
	for i := range now {
		s, l := saved.Walls[i].Name, later.Walls[i].Name
		switch was[i] {
		case l:
			now[i] = s
		case s:
			now[i] = l
		}
		if now[i] != was[i] {
			renamed = append(renamed, Change{Path: At("walls", i) + ".name", Was: was[i], Is: now[i], Yours: now[i] == l})
		}
	}
	if sorted := slices.Sorted(slices.Values(now)); len(slices.Compact(sorted)) < len(now) {
		return nil // two walls of one name: the pins of one would take the place of the other's
	}
	for _, job := range []*survey.Job{base, saved, later} {
		before := wallNames(*job)
		for i := range job.Walls {
			if before[i] == was[i] {
				job.Walls[i].Name = now[i]
			}
		}
		rename(job, before)
	}
	return renamed
}

type merger struct {
	yours   func(string) bool
	guesses threeGuesses
	out     Merged
}

// merge gives the outcome for one field and everything below it.
func (m *merger) merge(path string, base, saved, later reflect.Value) reflect.Value {
	g := m.guesses.under(path)
	switch {
	case same(saved, later) && slices.Equal(g.saved, g.later):
		return m.takeSaved(saved, g)
	case same(base, later) && slices.Equal(g.base, g.later):
		m.changed(path, base, saved, false)
		return m.takeSaved(saved, g)
	case same(base, saved) && slices.Equal(g.base, g.saved):
		m.changed(path, base, later, true)
		return m.takeLater(later, g)
	case alike(base, saved) && alike(base, later):
		return m.inside(path, base, saved, later)
	case same(saved, later): // one is sure of what the other left a guess, or made one of
		if len(g.saved) < len(g.later) {
			return m.takeSaved(saved, g)
		}
		return m.takeLater(later, g)
	case g.measuredOnlyIn(g.later, g.saved, path):
		m.changed(path, base, later, true)
		return m.takeLater(later, g)
	case g.measuredOnlyIn(g.saved, g.later, path):
		m.changed(path, base, saved, false)
		return m.takeSaved(saved, g)
	}
	m.out.Clashes = append(m.out.Clashes, Clash{
		Path: path, Was: inWords(base), Saved: inWords(saved), Yours: inWords(later), Guessed: len(g.base) > 0,
	})
	if m.yours != nil && m.yours(path) {
		return m.takeLater(later, g)
	}
	return m.takeSaved(saved, g)
}

func (m *merger) takeSaved(saved reflect.Value, g threeGuesses) reflect.Value {
	m.guesses.kept = append(m.guesses.kept, g.saved...)
	return saved
}

func (m *merger) takeLater(later reflect.Value, g threeGuesses) reflect.Value {
	m.guesses.kept = append(m.guesses.kept, g.later...)
	return later
}

// inside merges the members of a group, list or map.
func (m *merger) inside(path string, base, saved, later reflect.Value) reflect.Value {
	out := reflect.New(base.Type()).Elem()
	switch base.Kind() {
	case reflect.Pointer:
		out.Set(reflect.New(base.Type().Elem()))
		out.Elem().Set(m.merge(path, base.Elem(), saved.Elem(), later.Elem()))
	case reflect.Struct:
		for i := range base.NumField() {
			out.Field(i).Set(m.merge(join(path, fieldName(base.Type(), i)), base.Field(i), saved.Field(i), later.Field(i)))
		}
	case reflect.Slice:
		out.Set(reflect.MakeSlice(base.Type(), base.Len(), base.Len()))
		for i := range base.Len() {
			out.Index(i).Set(m.merge(At(path, i), base.Index(i), saved.Index(i), later.Index(i)))
		}
	case reflect.Map:
		for _, key := range keys(base, saved, later) {
			one := m.merge(Key(path, key), entry(base, key), entry(saved, key), entry(later, key))
			put(out, key, one)
		}
	}
	return out
}

// changed notes what one edit made of a field, as deep as the two can be held side by side.
func (m *merger) changed(path string, was, is reflect.Value, yours bool) {
	if same(was, is) {
		return
	}
	if !alike(was, is) {
		m.out.Changes = append(m.out.Changes, Change{path, inWords(was), inWords(is), yours})
		return
	}
	switch was.Kind() {
	case reflect.Pointer:
		m.changed(path, was.Elem(), is.Elem(), yours)
	case reflect.Struct:
		for i := range was.NumField() {
			m.changed(join(path, fieldName(was.Type(), i)), was.Field(i), is.Field(i), yours)
		}
	case reflect.Slice:
		for i := range was.Len() {
			m.changed(At(path, i), was.Index(i), is.Index(i), yours)
		}
	case reflect.Map:
		for _, key := range keys(was, is) {
			m.changed(Key(path, key), entry(was, key), entry(is, key), yours)
		}
	}
}

func same(a, b reflect.Value) bool { return reflect.DeepEqual(a.Interface(), b.Interface()) }
