package remedy

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/survey"
)

// Apply gives the job with the fields of a remedy written into it. The job itself
// is not changed. The error names a path that leads nowhere in a job file.
func Apply(job survey.Job, use []Use) (survey.Job, error) {
	document, err := survey.Write(job)
	if err != nil {
		return job, err
	}
	var tree any
	if err := json.Unmarshal(document, &tree); err != nil {
		return job, err
	}
	for _, u := range use {
		way, err := steps(u.Path)
		if err != nil {
			return job, err
		}
		if tree, err = put(tree, way, u.Text); err != nil {
			return job, fmt.Errorf("field %q: %w", u.Path, err)
		}
	}
	if document, err = json.Marshal(tree); err != nil {
		return job, err
	}
	return survey.Read(document)
}

// step is one part of a path: a name, or a place in a list.
type step struct {
	name  string
	index int
	list  bool
}

// steps splits a path. A name that holds a dot or a bracket is quoted, as in
// pins.walls["tub. side"].edge.
func steps(path string) ([]step, error) {
	var out []step
	for rest := path; rest != ""; {
		switch {
		case strings.HasPrefix(rest, `["`):
			text, err := strconv.QuotedPrefix(rest[1:])
			if err != nil || !strings.HasPrefix(rest[1+len(text):], "]") {
				return nil, fmt.Errorf("field %q: a quoted name does not end", path)
			}
			name, err := strconv.Unquote(text)
			if err != nil {
				return nil, fmt.Errorf("field %q: %w", path, err)
			}
			out, rest = append(out, step{name: name}), rest[len(text)+2:]
		case rest[0] == '[':
			digits, after, _ := strings.Cut(rest[1:], "]")
			n, err := strconv.Atoi(digits)
			if err != nil || n < 0 {
				return nil, fmt.Errorf("field %q: %q is no place in a list", path, digits)
			}
			out, rest = append(out, step{index: n, list: true}), after
		default:
			rest = strings.TrimPrefix(rest, ".")
			end := strings.IndexAny(rest, ".[")
			if end < 0 {
				end = len(rest)
			}
			out, rest = append(out, step{name: rest[:end]}), rest[end:]
		}
	}
	return out, nil
}

// put gives a value of a document with a text at the end of a way through it. What
// is not there yet is made, but no list grows by more than one.
func put(v any, way []step, text string) (any, error) {
	if len(way) == 0 {
		return text, nil
	}
	s := way[0]
	if s.list {
		list, _ := v.([]any)
		if s.index > len(list) {
			return nil, fmt.Errorf("the list ends before place %d", s.index)
		}
		list = slices.Clone(list)
		if s.index == len(list) {
			list = append(list, nil)
		}
		inner, err := put(list[s.index], way[1:], text)
		list[s.index] = inner
		return list, err
	}
	object, _ := v.(map[string]any)
	if object == nil {
		object = map[string]any{}
	}
	inner, err := put(object[s.name], way[1:], text)
	object[s.name] = inner
	return object, err
}

// under is a path to a field of what bears a name.
func under(group, name, field string) string {
	if name == "" || strings.ContainsAny(name, `.[]"\`) {
		return group + "[" + strconv.Quote(name) + "]." + field
	}
	return group + "." + name + "." + field
}
