package form

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/survey"
)

// Apply does what a button of the form asks for. The verbs:
//
//	add PATH [WHAT]    one more element in the list at PATH
//	remove PATH        drop the element at PATH
//	free PATHS         let the solver place the marks at PATHS
//	measure PATHS      type the marks at PATHS as one measured value each, of PATH=PLACE (query-escaped) at a place
//	ceiling PATHS      the tile of the walls at PATHS goes up to the ceiling
//	line PATHS         it stops at a line
//	set PATH=VALUE     write one field
//	pin WALL edge|joint|tile=VALUE   pin a start, whichever was pinned before
//	round PATH WALL    let the band at PATH run round a wall, or leave the wall out
//	release PATH       let go of a pin
//	hold               the set-out that is held stays so (a new one is held by the page that knows it)
//	letgo              let go of the set-out that is held
//	place WALL HANDLE=VALUE     put what was dragged there
//	stand PATH=VALUE   courses of the wall at PATH stand
//	forget PATH        drop a sample of tile, what stands on a wall, the inside of an opening, or a top
//	guess PATHS        the fields are not measured yet
//	confirm PATH       a reading that was doubted is so
//	use PATH=VALUE&…   write what would fit, query-escaped
//	close              the last wall of the room meets the first
//	open               both end by themselves again
//	spacers            of the usual spacers the one that fits best
//	fit PATH [second]  sizes of the tile with which the bond at PATH closes
//
// An empty verb changes nothing.
func Apply(job *survey.Job, do string) error {
	verb, rest, _ := strings.Cut(do, " ")
	act, known := verbs[verb]
	if !known {
		return fmt.Errorf("the button %q is not known", do)
	}
	met := endsMet(*job)
	if err := act(job, rest); err != nil {
		return fmt.Errorf("%s: %w", verb, err)
	}
	turnTogether(job, met)
	Tidy(job)
	return nil
}

var verbs = map[string]func(*survey.Job, string) error{
	"":        func(*survey.Job, string) error { return nil },
	"add":     add,
	"remove":  remove,
	"free":    each(free),
	"measure": each(measure),
	"ceiling": each(ceiling),
	"line":    each(line),
	"set":     setOne,
	"pin":     pin,
	"round":   round,
	"reach":   reach,
	"along":   along,
	"release": release,
	"hold":    hold,
	"letgo":   letGo,
	"place":   place,
	"stand":   stand,
	"forget":  forget,
	"guess":   guess,
	"confirm": confirm,
	"use":     use,
	"close":   closeRoom,
	"open":    openRoom,
	"spacers": spacers,
	"fit":     fit,
}

// each does to every path what is done to one.
func each(act func(*survey.Job, string) error) func(*survey.Job, string) error {
	return func(job *survey.Job, paths string) error {
		for _, path := range strings.Fields(paths) {
			if err := act(job, path); err != nil {
				return err
			}
		}
		return nil
	}
}

func setOne(job *survey.Job, rest string) error {
	path, value, _ := strings.Cut(rest, "=")
	return Set(job, path, value)
}

// remove drops one element of a list.
func remove(job *survey.Job, path string) error {
	way, err := steps(path)
	if err != nil {
		return err
	}
	last := way[len(way)-1]
	v := reflect.ValueOf(job).Elem()
	for _, s := range way[:len(way)-1] {
		if v = descend(v, s); !v.IsValid() {
			return fmt.Errorf("there is nothing at %q", path)
		}
	}
	v = resolve(v)
	if v.Kind() != reflect.Slice || last.index < 0 || last.index >= v.Len() {
		return fmt.Errorf("there is nothing at %q", path)
	}
	v.Set(reflect.AppendSlice(v.Slice(0, last.index), v.Slice(last.index+1, v.Len())))
	shift(job, strings.TrimSuffix(path, "["+strconv.Itoa(last.index)+"]"), last.index, -1)
	if len(way) == 4 && way[2].name == "base" { // walls[i].base[k]
		goOn(job, way[1].index)
	}
	return nil
}

func pin(job *survey.Job, rest string) error {
	at, value, found := cutLast(rest, "=")
	name, is, _ := cutLast(at, " ")
	if !found || !slices.Contains(wallNames(*job), name) {
		return fmt.Errorf("there is no wall %q", name)
	}
	held := job.Pins.Walls[name]
	switch is {
	case "joint":
		held.Edge, held.Joint, held.Tile = "", value, ""
	case "tile":
		held.Edge, held.Joint, held.Tile = "", "", value
	case "edge":
		held.Edge, held.Joint, held.Tile = value, "", ""
	default:
		return fmt.Errorf("a start is an edge, a joint or a tile, not %q", is)
	}
	if job.Pins.Walls == nil {
		job.Pins.Walls = map[string]survey.WallPin{}
	}
	job.Pins.Walls[name] = held
	return nil
}

// release empties a pin: the course line, a start, or one mark.
func release(job *survey.Job, path string) error {
	if !strings.HasPrefix(path, "pins.") {
		return fmt.Errorf("%q is not a pin", path)
	}
	return Set(job, path, "")
}

func cutLast(s, sep string) (before, after string, found bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+len(sep):], true
}
