package form

import (
	"cmp"
	"errors"
	"maps"
	"net/url"
	"slices"
	"strconv"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Fields of the form that are no fields of the job.
const (
	Revision = "revision" // the revision the form was filled from
	Do       = "do"       // the button pressed: a verb of Apply
	Filled   = "filled"   // the job file the form was filled from
)

// usualColours are shown where a job names none, because a box for a colour cannot be empty.
var usualColours = map[string]survey.Colour{"tile.colour": survey.UsualTile, "grout": survey.UsualGrout}

// Decode lays the posted fields over a job, in the order of the job file, and
// keeps everything the form does not carry. A renamed wall takes its pins and
// its place in the setting order along, and a changed width the readings at its
// end; a range typed into one box is read as one; when the units change, bare numbers keep the unit they were typed in.
// The job given must be the one the form was filled from (see Base). Text that
// no field of the job can hold comes back as survey.Faults; the rest is laid
// over the job all the same.
func Decode(job *survey.Job, posted url.Values) error {
	names, trims, wide, units := wallNames(*job), trimNames(*job), widths(*job), job.Units
	met, bands, bonds := endsMet(*job), slices.Clone(job.Bands), bondsOf(*job)
	readRanges(*job, posted)
	var faults survey.Faults
	for _, path := range inOrder(posted) {
		values := posted[path]
		if usual, colour := usualColours[path]; colour && Get(*job, path) == "" && values[len(values)-1] == usual.String() {
			continue // shown, but nobody has named it
		}
		err := Set(job, path, values[len(values)-1])
		var odd *notWhole
		switch {
		case errors.As(err, &odd):
			faults = append(faults, survey.Fault{Path: path, Found: strconv.Quote(odd.text), Want: "a whole number, such as 60"})
		case err != nil:
			return err
		}
	}
	rename(job, names)
	followBands(job, bands)
	pickedAnew(job, bonds)
	followPick(job, bonds["bond"])
	renameTrims(job, trims)
	follow(job, wide)
	turnTogether(job, met)
	if job.Units != units {
		if err := keepUnit(job, units); err != nil {
			return err
		}
	}
	Tidy(job)
	if len(faults) > 0 {
		return faults
	}
	return nil
}

// Base gives the job a posted form was filled from: what was shown when it was
// typed in, which is not the stored job while a fault keeps it from being
// saved. A form that does not say was filled from the stored job.
func Base(stored survey.Job, posted url.Values) (survey.Job, error) {
	shown := posted.Get(Filled)
	if shown == "" {
		return stored, nil
	}
	return survey.Read([]byte(shown))
}

// Shown is the job to fill a form from after an edit that was not saved: as
// typed, but a wall whose width does not read yet keeps the last that did, so
// that the readings at its end can still follow it.
func Shown(typed, before survey.Job) survey.Job {
	if len(typed.Walls) != len(before.Walls) {
		return typed
	}
	system, _ := System(typed.Units)
	typed.Walls = slices.Clone(typed.Walls)
	for i := range typed.Walls {
		if _, err := length.Parse(typed.Walls[i].Width, system); err != nil {
			typed.Walls[i].Width = before.Walls[i].Width
		}
	}
	return typed
}

// inOrder gives the names of the posted job fields, lists in ascending order.
func inOrder(posted url.Values) []string {
	paths := slices.DeleteFunc(slices.Collect(maps.Keys(posted)), func(p string) bool {
		return p == Revision || p == Do || p == Filled
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
	renameBands(job, now)
	for _, walls := range allPins(job) {
		*walls = renamed(*walls, now)
	}
}

// allPins gives the pins of the walls: those of the job and of its other choices, and of the set-outs that they hold.
func allPins(job *survey.Job) []*map[string]survey.WallPin {
	all := append([]*map[string]survey.WallPin{&job.Pins.Walls}, heldPins(job.Held)...)
	for i := range job.Choices {
		c := &job.Choices[i]
		all = append(append(all, &c.Pins.Walls), heldPins(c.Held)...)
	}
	return all
}

func heldPins(h *survey.Held) []*map[string]survey.WallPin {
	if h == nil {
		return nil
	}
	all := []*map[string]survey.WallPin{&h.Walls}
	for i := range h.Bands {
		all = append(all, &h.Bands[i].Walls)
	}
	return all
}

func renamed(pins map[string]survey.WallPin, now map[string]string) map[string]survey.WallPin {
	if pins == nil {
		return nil
	}
	out := make(map[string]survey.WallPin, len(pins))
	for name, pin := range pins {
		out[cmp.Or(now[name], name)] = pin
	}
	return out
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
	"offset", "hand", "along", "meets", "finish", "chosen",
	"turn", "breakage", "allowance", "notch", "back", "trim", "holds",
	"use", "tiles", "joints", "course", "is", "sight", "area", "engine",
	"place", "corners", // of trim
	"leg", "corner",
	"sizes", "depthIs", "front", "behind", "cased", // of the inside of an opening
	"courses", "toHead", "upon", // of bands
	"columns", "mostColumns", // of strips
	"flush", // of soap dishes
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
	if len(way) > 2 && way[0].name == "choices" {
		way = way[2:]
	}
	if len(way) == 3 && way[0].name == "work" && way[1].name == "hours" {
		return false
	}
	// A pinned mark is filed under a name of the person's own.
	if len(way) == 5 && (way[0].name == "pins" || way[0].name == "held") && way[3].name == "marks" {
		return true
	}
	return !slices.Contains(words, last.name)
}
