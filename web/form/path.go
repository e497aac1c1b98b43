// Package form turns a posted form into a job and back. The name of every
// field is the path the job file itself uses (walls[1].base[0].readings[2].drop),
// so a fault found in the job names the field it belongs to.
package form

import (
	"fmt"
	"strconv"
	"strings"
)

// step is one part of a path: a field or key by name, or an index.
type step struct {
	name  string
	index int // -1 where the step is a name
}

// steps splits a path. A key that holds a dot or a bracket is quoted the way
// Go quotes it: pins.walls["tub. side"].joint.
func steps(path string) ([]step, error) {
	var out []step
	for rest := path; rest != ""; {
		s, after, err := first(rest)
		if err != nil {
			return nil, fmt.Errorf("field %q: %w", path, err)
		}
		out, rest = append(out, s), after
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("a field without a name")
	}
	return out, nil
}

// Part is one part of a path: a name, or a place in a list counted from 0.
type Part struct {
	Name  string
	Index int // -1 where the part is a name
}

// Parts splits a path; one that is no path has no parts but itself.
func Parts(path string) []Part {
	way, err := steps(path)
	if err != nil {
		return []Part{{path, -1}}
	}
	out := make([]Part, len(way))
	for i, s := range way {
		out[i] = Part{s.name, s.index}
	}
	return out
}

// first takes the first step off a path and gives what follows it.
func first(path string) (step, string, error) {
	switch {
	case strings.HasPrefix(path, `["`):
		return quoted(path)
	case strings.HasPrefix(path, "["):
		return indexed(path)
	}
	end := strings.IndexAny(path, ".[")
	if end < 0 {
		end = len(path)
	}
	if end == 0 {
		return step{}, "", fmt.Errorf("a name is missing before %q", path)
	}
	rest, err := separator(path[end:])
	return step{name: path[:end], index: -1}, rest, err
}

func quoted(path string) (step, string, error) {
	literal, err := strconv.QuotedPrefix(path[1:])
	if err != nil {
		return step{}, "", fmt.Errorf("the quoted name does not end in %q", path)
	}
	name, err := strconv.Unquote(literal)
	after, closed := strings.CutPrefix(path[1+len(literal):], "]")
	if err != nil || !closed {
		return step{}, "", fmt.Errorf("a bracket is missing after %s", literal)
	}
	rest, err := separator(after)
	return step{name: name, index: -1}, rest, err
}

func indexed(path string) (step, string, error) {
	digits, after, closed := strings.Cut(path[1:], "]")
	n, err := strconv.Atoi(digits)
	if err != nil || !closed || n < 0 {
		return step{}, "", fmt.Errorf("%q is not a place in a list", digits)
	}
	rest, err := separator(after)
	return step{index: n}, rest, err
}

// separator drops the dot between two steps.
func separator(rest string) (string, error) {
	if rest == "" || rest[0] == '[' {
		return rest, nil
	}
	if rest[0] != '.' || len(rest) == 1 {
		return "", fmt.Errorf("a dot and a name are expected at %q", rest)
	}
	return rest[1:], nil
}

// Key joins a map's path and one of its keys into a path.
func Key(path, key string) string {
	if key == "" || strings.ContainsAny(key, `.[]"`) {
		return path + "[" + strconv.Quote(key) + "]"
	}
	return path + "." + key
}

// At joins a list's path and an index into a path.
func At(path string, index int) string {
	return path + "[" + strconv.Itoa(index) + "]"
}
