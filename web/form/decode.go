package form

import (
	"cmp"
	"maps"
	"net/url"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Fields of the form that are no fields of the job.
const (
	Revision = "revision" // the revision the form was filled from
	Do       = "do"       // the button pressed: a verb of Apply
)

// Decode lays the posted fields over a job, in the order of the job file, and
// keeps everything the form does not carry. A renamed wall takes its pins and
// its place in the setting order along, and a changed width the readings at its
// end; when the units change, bare numbers keep the unit they were typed in.
func Decode(job *survey.Job, posted url.Values) error {
	names, wide, units := wallNames(*job), widths(*job), job.Units
	for _, path := range inOrder(posted) {
		values := posted[path]
		if err := Set(job, path, values[len(values)-1]); err != nil {
			return err
		}
	}
	rename(job, names)
	follow(job, wide)
	if job.Units != units {
		if err := keepUnit(job, units); err != nil {
			return err
		}
	}
	Tidy(job)
	return nil
}

// inOrder gives the names of the posted job fields, lists in ascending order.
func inOrder(posted url.Values) []string {
	paths := slices.DeleteFunc(slices.Collect(maps.Keys(posted)), func(p string) bool {
		return p == Revision || p == Do
	})
	slices.SortFunc(paths, func(a, b string) int {
		left, _ := steps(a)
		right, _ := steps(b)
		return slices.CompareFunc(left, right, func(x, y step) int {
			return cmp.Or(cmp.Compare(x.index, y.index), cmp.Compare(x.name, y.name))
		})
	})
	return paths
}

func wallNames(job survey.Job) []string {
	names := make([]string, len(job.Walls))
	for i, w := range job.Walls {
		names[i] = w.Name
	}
	return names
}

// rename moves what is filed under a wall's old name to its new one.
func rename(job *survey.Job, before []string) {
	now := map[string]string{}
	for i, old := range before {
		if i < len(job.Walls) && job.Walls[i].Name != "" {
			now[old] = job.Walls[i].Name
		}
	}
	for i, name := range job.SetOrder {
		job.SetOrder[i] = cmp.Or(now[name], name)
	}
	if job.Pins.Walls == nil {
		return
	}
	pins := make(map[string]survey.WallPin, len(job.Pins.Walls))
	for name, pin := range job.Pins.Walls {
		pins[cmp.Or(now[name], name)] = pin
	}
	job.Pins.Walls = pins
}

// keepUnit writes the old unit behind every bare number, so that a change of
// units changes no measurement.
func keepUnit(job *survey.Job, units string) error {
	old, ok := System(units)
	if !ok {
		return nil
	}
	for _, f := range Fields(*job) {
		if !IsLength(f.Path) {
			continue
		}
		if err := Set(job, f.Path, withUnit(f.Value, old)); err != nil {
			return err
		}
	}
	return nil
}

// withUnit adds the unit when the text would mean another length without it.
func withUnit(typed string, old length.System) string {
	was, err := length.Parse(typed, old)
	if err != nil {
		return typed
	}
	if now, err := length.Parse(typed, old.Other()); err == nil && now == was {
		return typed
	}
	return typed + " " + old.String()
}

// System reads the units of a job file.
func System(units string) (length.System, bool) {
	switch units {
	case "in":
		return length.Imperial, true
	case "mm":
		return length.Metric, true
	}
	return length.Imperial, false
}

// words are the fields of the job file that hold text or a count, by name.
var words = []string{
	"format", "title", "units", "name", "grain", "count", "price", "kind",
	"offset", "hand", "along", "meets", "finish",
}

// IsLength tells whether the field at a path holds a length.
func IsLength(path string) bool {
	way, err := steps(path)
	if err != nil {
		return false
	}
	last := way[len(way)-1]
	if last.index >= 0 { // only the setting order is a list of plain texts
		return false
	}
	// A pinned mark is filed under a name of the person's own.
	if len(way) == 5 && way[0].name == "pins" && way[3].name == "marks" {
		return true
	}
	return !slices.Contains(words, last.name)
}
